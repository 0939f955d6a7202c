// screens/walk_view_model.h: the correction itself: one round at a time on all its panels, then
// each mark is asked whether it is gone, then the panels whether they are clean.
//
// One tap a round: done() writes one FinishRound a panel with its marks, areas and the minutes that
// the person's clock ran since the round before, shared out by the planned minutes. Nothing is
// shown as done before the snapshot has it. Burn-through: stops the panel (redo), takes back an
// offer of it, and says who has it. Units:   xMm, yMm on the panel drawn upright, y up. Threads:
// GUI thread. Errors: Session::failed.
#pragma once

#include <QObject>
#include <QStringList>
#include <QtQml/qqmlregistration.h>
#include <map>

#include "screens/correction_work.h"
#include "screens/round_areas.h"
#include "screens/row_list.h"

namespace jambline::screens {

class WalkViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  Q_PROPERTY(Mode mode READ mode NOTIFY changed)
  Q_PROPERTY(QString title READ title NOTIFY changed)  // "Compound 7 marks"
  Q_PROPERTY(QString where READ where NOTIFY changed)  // "round 2 of 4"
  Q_PROPERTY(QString minutes READ minutes NOTIFY changed)
  Q_PROPERTY(QString panel READ panel NOTIFY changed)  // the entry's word of the shown one
  Q_PROPERTY(QString panelTitle READ panelTitle NOTIFY changed)
  Q_PROPERTY(QString panelPlace READ panelPlace NOTIFY changed)  // "1 of 8 · 2 marks in 1 area"
  Q_PROPERTY(QString panelFacts READ panelFacts NOTIFY changed)
  Q_PROPERTY(QString filmWords READ filmWords NOTIFY changed)
  Q_PROPERTY(bool filmStops READ filmStops NOTIFY changed)
  Q_PROPERTY(QStringList todo READ todo NOTIFY changed)        // grade; tool; towel
  Q_PROPERTY(QString cleanDown READ cleanDown NOTIFY changed)  // after the round, before the next
  Q_PROPERTY(QString then READ then NOTIFY changed)
  // Panels of the round. Roles: key, title, facts, chosen.
  Q_PROPERTY(QAbstractItemModel* stations READ stations CONSTANT)
  Q_PROPERTY(int stationCount READ stationCount NOTIFY changed)
  // All marks of the round, or those that are asked, panel by panel: key (hex), panel, number,
  // title, place, spoken.
  Q_PROPERTY(QAbstractItemModel* marks READ marks CONSTANT)
  // Of the shown panel only: key (hex), number, spoken, xMm, yMm.
  Q_PROPERTY(QAbstractItemModel* rings READ rings CONSTANT)
  Q_PROPERTY(jambline::screens::RoundAreas* areas READ areas CONSTANT)
  Q_PROPERTY(QString mainText READ mainText NOTIFY changed)
  Q_PROPERTY(QString mainSecond READ mainSecond NOTIFY changed)
  Q_PROPERTY(bool mainWaits READ mainWaits NOTIFY changed)
  // The cure clock says that this round is not to be done yet, and nobody said why it is; "" goes.
  Q_PROPERTY(QString tooEarly READ tooEarly NOTIFY changed)
  Q_PROPERTY(QString told READ told NOTIFY changed)  // after a burn-through: who has to be told

 public:
  enum class Mode { Nothing, Round, Ask, Clean };
  Q_ENUM(Mode)

  WalkViewModel(Session& session, CorrectionWork& work, QObject* parent = nullptr);

  Mode mode() const;
  QString title() const;
  QString where() const;
  QString minutes() const;
  QString panel() const;
  QString panelTitle() const;
  QString panelPlace() const;
  QString panelFacts() const;
  QString filmWords() const;
  bool filmStops() const;
  QStringList todo() const;
  QString cleanDown() const;
  QString then() const;
  QAbstractItemModel* stations() { return &stations_; }
  int stationCount() const { return stations_.count(); }
  QAbstractItemModel* marks() { return &marks_; }
  QAbstractItemModel* rings() { return &rings_; }
  RoundAreas* areas() { return &areas_; }
  QString mainText() const;
  QString mainSecond() const;
  bool mainWaits() const;
  QString tooEarly() const;
  QString told() const { return told_; }

  Q_INVOKABLE void act();           // what mainText says
  Q_INVOKABLE void skip();          // this round, on all its panels
  Q_INVOKABLE void add(int round);  // one more that was done now, on these panels
  Q_INVOKABLE void showPanel(const QString& panel);
  Q_INVOKABLE void besidePanel(int steps);
  Q_INVOKABLE QString titleOf(const QString& mark) const;
  Q_INVOKABLE QString markNear(double xMm, double yMm, double pxPerMm) const;  // or ""
  Q_INVOKABLE QString roundWords(int round) const;                             // "" past the last
  Q_INVOKABLE void gone(const QString& mark);
  Q_INVOKABLE void cameBack(const QString& mark);
  Q_INVOKABLE void burnThrough(const QString& mark);

 signals:
  void changed();
  void turned();  // to another round or question
  void ended();   // nothing is left to do here

 private:
  const folds::WalkStep* step() const;
  const folds::WalkStep* step_after() const;
  const folds::WalkStation* station() const;
  bool only_came_back() const;             // what is left to do was asked and came back
  std::vector<job::Panel> panels() const;  // of the round, or of what is asked
  std::optional<job::Panel> shown() const;
  void refresh();
  void show_stations();
  // What is said of a mark; kept as long as its panel is as it was.
  struct MarkSaid {
    job::Panel panel{};
    trade::Point_mm at;
    QString key, title, whose, spoken;
  };
  const MarkSaid& said_of(const folds::MarkView& mark, job::Panel panel);
  void show_marks();
  void show_areas();
  void finish(job::Round round, job::RoundHow how, const std::vector<folds::WalkStation>& stations);
  std::optional<double> clocked_min() const;
  void end(const QString& mark, job::MarkEnd how);
  void say_clean();

  Session& session_;
  CorrectionWork& work_;
  RowList stations_;
  RowList marks_;
  RowList rings_;
  RoundAreas areas_;
  std::shared_ptr<const folds::CarView> car_;
  std::map<MarkId, MarkSaid> said_;
  std::optional<job::Panel> chosen_;
  QString told_;
  bool had_work_ = false;
  QString shown_title_;
  int posted_ = 0;  // acts that are not on disk yet
};

}  // namespace jambline::screens
