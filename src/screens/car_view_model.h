// screens/car_view_model.h: one car: its due time and what holds it, its stages, and the main act
// named after what comes next.
//
// The chosen stage is the next one that is not done, until a person picks another tile. act() does
// what mainText says. Inspect: inspectAsked() is sent at once, and the clock of the person goes to
// that stage's operation by the same press. BeforeGun, until the car was sprayed first, CheckIn and
// WalkAround: the same, with beforeGunAsked(), checkInAsked(), walkAroundAsked(). A delivered car:
// comebackAsked(). Correct: planAsked() is sent; there is a plan as long
// as a panel is to correct. Finish: the person's own clock on the stage stops by
// the same act, and mainSecond says so; with wanted pictures missing act() sends shotsMissing()
// instead, and finishWithout() does it with the reason why. Everything else is one command.
// Threads: GUI thread. Errors go to Session::failed.
#pragma once

#include <QObject>
#include <QStringList>
#include <optional>
#include <qqmlregistration.h>

#include "screens/correction_work.h"
#include "screens/row_list.h"
#include "screens/session.h"

namespace jambline::screens {

class CarViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  Q_PROPERTY(bool here READ here NOTIFY changed)
  Q_PROPERTY(QString due READ due NOTIFY changed)
  Q_PROPERTY(bool late READ late NOTIFY changed)
  Q_PROPERTY(QString heldBy READ heldBy NOTIFY changed)
  // Roles: key, title, state (State), stateWords, count, chosen, running.
  Q_PROPERTY(QAbstractItemModel* stages READ stages CONSTANT)
  // The operations of the chosen stage. Roles: key, title, hours, who.
  Q_PROPERTY(QAbstractItemModel* operations READ operations CONSTANT)
  Q_PROPERTY(QString stageTitle READ stageTitle NOTIFY changed)  // of the chosen stage
  Q_PROPERTY(QString stageKey READ stageKey NOTIFY changed)      // its word; "" none
  Q_PROPERTY(QStringList cautions READ cautions NOTIFY changed)  // of the chosen stage
  Q_PROPERTY(bool ofSpraying READ ofSpraying NOTIFY changed)     // the chosen stage is spraying
  // Roles: key, title, shown, other, by, takeWords.
  Q_PROPERTY(QAbstractItemModel* conflicts READ conflicts CONSTANT)
  Q_PROPERTY(int conflictCount READ conflictCount NOTIFY changed)
  Q_PROPERTY(QString refusedWords READ refusedWords NOTIFY changed)  // "" every entry is obeyed
  Q_PROPERTY(Act mainAct READ mainAct NOTIFY changed)
  Q_PROPERTY(QString mainText READ mainText NOTIFY changed)
  Q_PROPERTY(QString mainSecond READ mainSecond NOTIFY changed)
  Q_PROPERTY(bool mainWaits READ mainWaits NOTIFY changed)
  Q_PROPERTY(QString partsWords READ partsWords NOTIFY changed)
  Q_PROPERTY(QString timeLineWords READ timeLineWords NOTIFY changed)
  Q_PROPERTY(
      QString shutWords READ shutWords NOTIFY changed)  // why nothing can be written; or empty
  // The first pictures that the chosen stage wants and has not. Roles: key, title.
  Q_PROPERTY(QAbstractItemModel* missing READ missing CONSTANT)
  Q_PROPERTY(QString missingMore READ missingMore NOTIFY changed)  // "and 8 more"; "" no more
  Q_PROPERTY(int missingCount READ missingCount NOTIFY changed)    // of all
  Q_PROPERTY(QString missingWords READ missingWords NOTIFY changed)
  Q_PROPERTY(QString nextShotWords READ nextShotWords NOTIFY changed)
  Q_PROPERTY(QStringList withoutReasons READ withoutReasons CONSTANT)

 public:
  enum class State { Done, Running, Paused, Waits, NotYet, Disputed };
  Q_ENUM(State)
  enum class Act {
    None,
    CheckIn,
    Inspect,
    Correct,
    BeforeGun,
    Start,
    Finish,
    Reopen,
    WalkAround,
    ComeBack
  };
  Q_ENUM(Act)

  explicit CarViewModel(Session& session, QObject* parent = nullptr);

  void follow(CorrectionWork& work);  // what the main act of the correction is named after

  bool here() const { return session_.car() != nullptr; }
  QString due() const;
  bool late() const;
  QString heldBy() const;
  QAbstractItemModel* stages() { return &stages_; }
  QAbstractItemModel* operations() { return &operations_; }
  QString stageTitle() const;
  QString stageKey() const;
  QStringList cautions() const;
  bool ofSpraying() const { return session_.car() && stage() == job::Stage::Spray; }
  QAbstractItemModel* conflicts() { return &conflicts_; }
  int conflictCount() const { return conflicts_.rowCount(); }
  QString refusedWords() const;
  Act mainAct() const;
  QString mainText() const;
  QString mainSecond() const;
  bool mainWaits() const;
  QString partsWords() const;
  QString timeLineWords() const;
  QString shutWords() const;
  QAbstractItemModel* missing() { return &missing_; }
  QString missingMore() const;
  int missingCount() const { return missing_count_; }
  QString missingWords() const;
  QString nextShotWords() const;
  QStringList withoutReasons() const;

  Q_INVOKABLE void act();
  Q_INVOKABLE void choose(const QString& stage);  // a tile; the chosen one again: back to the next
  Q_INVOKABLE void writeNote(const QString& text);
  Q_INVOKABLE void settle(int conflict, int side);  // of its sides
  Q_INVOKABLE void finishWithout(int reason);       // a row of withoutReasons

 signals:
  void changed();
  void inspectAsked();
  void planAsked();
  void beforeGunAsked();
  void checkInAsked();
  void walkAroundAsked();
  void comebackAsked();
  void noteKept();
  void shotsMissing();
  void stageFinished();

 private:
  void refresh();
  QString held_words() const;  // "Do not drive until 15:40", of the delivery
  bool has_plan(job::Stage stage) const;
  void show_operations();
  void show_missing();
  void finish(std::optional<job::WithoutShots> without);
  bool own_clock_on(job::Stage stage) const;
  void start(const folds::CarView& car, job::Stage stage);
  void show_conflicts();
  QString side_words(const entries::Entry& entry) const;
  std::vector<const entries::Entry*> sides_of(const folds::LabelConflict& conflict) const;
  std::optional<job::Stage> stage() const;  // the chosen one
  bool stage_done(job::Stage stage) const;
  const folds::OperationView* operation(job::Stage stage) const;
  const folds::RunningView* own_clock() const;  // of the person, on this car

  Session& session_;
  CorrectionWork* work_ = nullptr;
  RowList stages_;
  RowList operations_;
  RowList conflicts_;
  RowList missing_;
  int seconds_ = 0;
  int missing_count_ = 0;
  std::optional<job::Stage> picked_;
  JobId shown_;
};

}  // namespace jambline::screens
