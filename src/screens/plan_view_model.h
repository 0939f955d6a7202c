// screens/plan_view_model.h: the correction before it begins: the rounds in order, what each needs,
// what is left out and why, and from when it may be sanded.
//
// begin() asks, in this order, what is still to be known: who works, from when it may be sanded
// (only where no cure clock says it), the check before cutting; then the person's clock goes to the
// operation and walkAsked() is sent. Before the clock's time earlyAsked() is sent: sayEarly() notes
// the reason on the car and goes on.
// One that may not begin yet gives `refusal` and no signal but refused(). Minutes: the usual table
// beside the shop's own, which are hidden under ten areas. Threads: GUI thread. Errors go to
// Session::failed.
#pragma once

#include <QObject>
#include <QStringList>
#include <QtQml/qqmlregistration.h>

#include "screens/correction_work.h"
#include "screens/round_areas.h"
#include "screens/row_list.h"

namespace jambline::screens {

class PlanViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  Q_PROPERTY(bool here READ here NOTIFY changed)  // there is something to work on
  Q_PROPERTY(QString title READ title NOTIFY changed)
  Q_PROPERTY(QString total READ total NOTIFY changed)
  Q_PROPERTY(QString emptyWords READ emptyWords NOTIFY changed)
  // Roles: key, title, panels, facts, state (State), stateWords, between, chosen.
  Q_PROPERTY(QAbstractItemModel* rounds READ rounds CONSTANT)
  // Of the panels in the plan. Roles: key, title, facts, film, filmStops.
  Q_PROPERTY(QAbstractItemModel* panels READ panels CONSTANT)
  // Marks that are left out. Roles: key (hex), title, why, canAdd.
  Q_PROPERTY(QAbstractItemModel* leftOut READ leftOut CONSTANT)
  Q_PROPERTY(int leftOutCount READ leftOutCount NOTIFY changed)
  // Where minutes come from. Roles: key, title, usual, own.
  Q_PROPERTY(QAbstractItemModel* times READ times CONSTANT)
  // Kinds of mark with the round they start at. Roles: key, title, start, proved.
  Q_PROPERTY(QAbstractItemModel* starts READ starts CONSTANT)
  // What the shop's own cars say, beside the usual table; hidden under ten.
  Q_PROPERTY(QStringList learned READ learned NOTIFY changed)
  Q_PROPERTY(QStringList advice READ advice NOTIFY changed)
  Q_PROPERTY(bool byPanel READ byPanel NOTIFY changed)
  Q_PROPERTY(bool heavyFilmIsHard READ heavyFilmIsHard NOTIFY changed)
  Q_PROPERTY(bool sandSaid READ sandSaid NOTIFY changed)
  Q_PROPERTY(QString sandWords READ sandWords NOTIFY changed)
  Q_PROPERTY(bool byClock READ byClock NOTIFY changed)             // a cure clock says it
  Q_PROPERTY(QString windowWords READ windowWords NOTIFY changed)  // polish until; "" not known
  Q_PROPERTY(QStringList earlyReasons READ earlyReasons CONSTANT)
  Q_PROPERTY(jambline::screens::RoundAreas* areas READ areas CONSTANT)  // of the car's pattern
  Q_PROPERTY(QString mapWords READ mapWords NOTIFY changed)
  Q_PROPERTY(QString mainText READ mainText NOTIFY changed)
  Q_PROPERTY(QString mainSecond READ mainSecond NOTIFY changed)
  Q_PROPERTY(bool mainWaits READ mainWaits NOTIFY changed)
  Q_PROPERTY(QString refusal READ refusal NOTIFY changed)

 public:
  enum class State { Done, Now, NotYet };
  Q_ENUM(State)

  PlanViewModel(Session& session, CorrectionWork& work, QObject* parent = nullptr);

  bool here() const;
  QString title() const;
  QString total() const;
  QString emptyWords() const;
  QAbstractItemModel* rounds() { return &rounds_; }
  QAbstractItemModel* panels() { return &panels_; }
  QAbstractItemModel* leftOut() { return &left_out_; }
  int leftOutCount() const { return left_out_.count(); }
  QAbstractItemModel* times() { return &times_; }
  QAbstractItemModel* starts() { return &starts_; }
  QStringList learned() const;
  QStringList advice() const;
  bool byPanel() const { return work_.choice().one_panel_at_a_time; }
  bool heavyFilmIsHard() const { return work_.choice().heavy_film_is_hard; }
  bool sandSaid() const { return work_.sand() != CorrectionWork::Sand::NotSaid; }
  QString sandWords() const;
  bool byClock() const { return work_.gate().word != FilmGate::Word::NoClock; }
  QString windowWords() const { return work_.window_words(); }
  QStringList earlyReasons() const;
  RoundAreas* areas() { return &areas_; }
  QString mapWords() const;
  QString mainText() const;
  QString mainSecond() const;
  bool mainWaits() const;
  QString refusal() const { return refusal_; }

  Q_INVOKABLE void opened();  // asks for what the shop has learned
  Q_INVOKABLE void begin();
  Q_INVOKABLE void goByPanel(bool byPanel) { work_.go_by_panel(byPanel); }
  Q_INVOKABLE void sayHard(bool hard) { work_.say_heavy_film_is_hard(hard); }
  Q_INVOKABLE void chooseRound(int row);                        // whose areas the map shows
  Q_INVOKABLE void proveStart(const QString& kind, int round);  // -1: the usual one again
  Q_INVOKABLE QString roundWords(int round) const;              // five of them; "" past the last
  // "14:30", "1430" or "2:30 pm"; false: no time.
  Q_INVOKABLE bool sayFrom(const QString& time, bool tomorrow);
  Q_INVOKABLE void saySheetAllows();
  Q_INVOKABLE void sayEarly(int reason);  // a row of earlyReasons
  Q_INVOKABLE void askSandAgain() { work_.ask_sand_again(); }

 signals:
  void changed();
  void refused();
  void whoAsked();
  void sandAsked();
  void earlyAsked();
  void beforeCutAsked();
  void walkAsked();

 private:
  void follow();
  void refresh();
  void show_rounds(const CorrectionWork::Planned& planned);
  void show_panels(const CorrectionWork::Planned& planned);
  void show_starts(const CorrectionWork::Planned& planned);
  void show_areas(const CorrectionWork::Planned* planned);
  const folds::Walk* walk() const;
  std::size_t shown_step() const;

  Session& session_;
  CorrectionWork& work_;
  RowList rounds_;
  RowList panels_;
  RowList left_out_;
  RowList times_;
  RowList starts_;
  RoundAreas areas_;
  std::optional<std::size_t> chosen_;
  std::optional<JobId> job_;
  Units units_{};
  bool has_car_ = false;
  QString refusal_;
};

}  // namespace jambline::screens
