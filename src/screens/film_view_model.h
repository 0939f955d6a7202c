// screens/film_view_model.h: film readings of one panel, spot by spot, and what they say of its
// clear.
//
// Typing:  type(value) takes the digits of the pad: whole micrometres, or tenths of a mil. A number
//          that no gauge shows is refused in words; the other readings stand. What was typed and
//          not kept stays while the program runs. keep() writes the readings of the spot, three or
//          more, and goes on to the next one; a refused act leaves them as they are.
// Places:  xMm, yMm on the panel as it is drawn upright, y up. A first spot stands at the worst
//          open mark, until it is tapped elsewhere.
// Said:    worked out from folds/film_of_panel.h for the whole sequence; openSum() opens it.
// Threads: GUI thread.
#pragma once

#include <QObject>
#include <QStringList>
#include <map>
#include <optional>
#include <qqmlregistration.h>

#include "folds/film_of_panel.h"
#include "job/body_shape.h"
#include "screens/film_words.h"
#include "screens/row_list.h"
#include "screens/session.h"
#include "screens/sum_rows.h"

namespace jambline::screens {

class FilmViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  // what the panel's clear allows
  Q_PROPERTY(QString panel READ panel NOTIFY changed)  // the entry's word; "" none
  Q_PROPERTY(QString panelTitle READ panelTitle NOTIFY changed)
  Q_PROPERTY(QString panelFacts READ panelFacts NOTIFY changed)
  Q_PROPERTY(int wordShape READ wordShape NOTIFY changed)
  Q_PROPERTY(QString wordText READ wordText NOTIFY changed)
  Q_PROPERTY(QString rangeWords READ rangeWords NOTIFY changed)
  Q_PROPERTY(QString restsWords READ restsWords NOTIFY changed)
  Q_PROPERTY(QString limitWords READ limitWords NOTIFY changed)
  Q_PROPERTY(QString askedWords READ askedWords NOTIFY changed)  // "" no reading is asked for
  Q_PROPERTY(bool known READ known NOTIFY changed)               // the numbers below stand
  Q_PROPERTY(double clearUm READ clearUm NOTIFY changed)
  Q_PROPERTY(double afterUm READ afterUm NOTIFY changed)
  Q_PROPERTY(double keepUm READ keepUm NOTIFY changed)
  Q_PROPERTY(QString afterWords READ afterWords NOTIFY changed)
  Q_PROPERTY(QString keepWords READ keepWords NOTIFY changed)
  Q_PROPERTY(jambline::screens::SumRows* sum READ sum CONSTANT)
  // what is read, and with what
  Q_PROPERTY(int when READ when NOTIFY changed)
  Q_PROPERTY(int gauge READ gauge NOTIFY changed)
  Q_PROPERTY(QStringList whens READ whens CONSTANT)
  Q_PROPERTY(QStringList gauges READ gauges CONSTANT)
  Q_PROPERTY(QString gaugeWords READ gaugeWords NOTIFY changed)  // why it reads nothing; or ""
  Q_PROPERTY(QString hintWords READ hintWords NOTIFY changed)    // before the first reading
  // the spot
  // Roles: key (number), placed, xMm, yMm, chosen, words, spoken.
  Q_PROPERTY(QAbstractItemModel* spots READ spots CONSTANT)
  Q_PROPERTY(int spot READ spot NOTIFY changed)
  Q_PROPERTY(QString spotWords READ spotWords NOTIFY changed)
  // Roles: key (place in the list), words, chosen, spoken.
  Q_PROPERTY(QAbstractItemModel* readings READ readings CONSTANT)
  Q_PROPERTY(int readingCount READ readingCount NOTIFY changed)
  Q_PROPERTY(QString meanWords READ meanWords NOTIFY changed)
  Q_PROPERTY(int digits READ digits NOTIFY changed)  // that the pad takes before it goes on
  Q_PROPERTY(bool tenths READ tenths NOTIFY changed)
  Q_PROPERTY(QString unitWords READ unitWords NOTIFY changed)
  Q_PROPERTY(QString unitKey READ unitKey NOTIFY changed)
  Q_PROPERTY(bool thick READ thick NOTIFY changed)
  Q_PROPERTY(QString thickWords READ thickWords NOTIFY changed)
  Q_PROPERTY(QString wrong READ wrong NOTIFY changed)
  // Digits on the pad that did not go on by themselves; -1 none. The main act takes them first.
  Q_PROPERTY(int pending READ pending WRITE setPending NOTIFY changed)
  Q_PROPERTY(QString mainText READ mainText NOTIFY changed)
  Q_PROPERTY(QString mainSecond READ mainSecond NOTIFY changed)
  Q_PROPERTY(bool mainWaits READ mainWaits NOTIFY changed)
  // what was kept; Roles: key (hex), title, words, mean, note, chosen, spoken.
  Q_PROPERTY(QAbstractItemModel* kept READ kept CONSTANT)
  Q_PROPERTY(int keptCount READ keptCount NOTIFY changed)
  Q_PROPERTY(QString correcting READ correcting NOTIFY changed)  // "" nothing is typed again

 public:
  explicit FilmViewModel(Session& session, QObject* parent = nullptr);

  QString panel() const;
  QString panelTitle() const;
  QString panelFacts() const;
  int wordShape() const { return shape_of(said_.state); }
  QString wordText() const { return said_.word; }
  QString rangeWords() const { return said_.range; }
  QString restsWords() const { return said_.rests; }
  QString limitWords() const { return said_.limit; }
  QString askedWords() const;
  bool known() const { return result_.has_value(); }
  double clearUm() const { return result_ ? result_->clear.mean_um : 0; }
  double afterUm() const;
  double keepUm() const { return film_.budget.leave_um; }
  QString afterWords() const;
  QString keepWords() const;
  SumRows* sum() { return &sum_; }
  const folds::FilmOfPanel& film() const { return film_; }  // as the calculation took it

  int when() const { return static_cast<int>(when_); }
  int gauge() const { return static_cast<int>(gauge_); }
  QStringList whens() const;
  QStringList gauges() const;
  QString gaugeWords() const;
  QString hintWords() const;

  QAbstractItemModel* spots() { return &spots_; }
  int spot() const { return spot_; }
  QString spotWords() const;
  QAbstractItemModel* readings() { return &readings_; }
  int readingCount() const { return static_cast<int>(typed().size()); }
  QString meanWords() const;
  int digits() const;
  bool tenths() const { return unit_ == job::FilmUnit::Mil; }
  QString unitWords() const;
  QString unitKey() const;
  bool thick() const { return thick_; }
  QString thickWords() const;
  QString wrong() const { return wrong_; }
  int pending() const { return pending_; }
  void setPending(int pending);
  QString mainText() const;
  QString mainSecond() const;
  bool mainWaits() const;
  QAbstractItemModel* kept() { return &kept_; }
  int keptCount() const { return kept_.rowCount(); }
  QString correcting() const;

  Q_INVOKABLE void openPanel(const QString& panel);
  Q_INVOKABLE void chooseWhen(int when);
  Q_INVOKABLE void chooseGauge(int gauge);
  Q_INVOKABLE void chooseSpot(int spot);
  Q_INVOKABLE void placeSpot(double xMm, double yMm);  // on a spot: chooses it
  Q_INVOKABLE void type(int value);
  Q_INVOKABLE void typeRow(const QString& text);  // "112 115 118": all of the spot, and keeps it
  Q_INVOKABLE void chooseReading(int reading);    // the next number takes its place
  Q_INVOKABLE void dropReading();                 // the chosen one, or the last
  Q_INVOKABLE void switchUnit();
  Q_INVOKABLE void switchThick();
  Q_INVOKABLE void mainAct();  // takes what is pending, else keeps the spot
  Q_INVOKABLE void keep();
  Q_INVOKABLE void correct(const QString& reading);  // again: lets go of it
  // The kept reading that is typed again; one that was typed again stands as it was before.
  Q_INVOKABLE void takeBack();
  Q_INVOKABLE void openSum();

 signals:
  void changed();
  void taken();     // a number of the pad is among the readings
  void rowTaken();  // the readings of the spot are on disk
  void sumOpened();

 private:
  using Place = std::pair<double, double>;  // on the panel laid flat
  const folds::PanelView* view() const;
  const job::PatternPanel* drawing() const;
  std::vector<double>& typed();
  const std::vector<double>& typed() const;
  QString typed_key() const;
  std::optional<Place> place_of(int spot) const;
  std::optional<Place> worst_mark() const;
  bool has_reading(int spot) const;  // of this gauge at this time
  std::vector<int> known_spots() const;
  int next_spot(int after) const;
  const folds::FilmView* corrected() const;
  double in_um(double typed) const { return job::in_um(typed, unit_); }
  double mean_um() const;
  QString typed_words(double typed) const;
  QString taken_words(const folds::FilmView& film) const;
  QString unreadable(double typed) const;
  QString others_words() const;
  bool take(double typed);
  bool may_keep() const;
  void guess();
  void work_out();
  void refresh();
  void show_rows();
  void tell_wrong(const QString& words);

  Session& session_;
  SumRows sum_;
  RowList spots_;
  RowList readings_;
  RowList kept_;
  std::optional<JobId> job_;
  std::optional<job::Panel> panel_;
  std::vector<folds::LearnedSequence> learned_;
  const void* lessons_seen_ = nullptr;
  folds::FilmOfPanel film_;
  Result<trade::FilmBudgetResult> result_;
  FilmSaid said_;
  job::FilmWhen when_{};
  job::FilmGauge gauge_{};
  job::FilmUnit unit_{};
  bool thick_ = false;
  int pending_ = -1;
  int spot_ = 1;
  std::map<QString, std::vector<double>> typed_;  // by panel, spot, time, gauge and unit
  std::map<int, Place> places_;                   // tapped and not kept yet
  std::optional<int> chosen_;                     // reading that is typed again
  std::optional<ReadingId> corrects_;
  QString wrong_;
};

}  // namespace jambline::screens
