// screens/clock_view_model.h: the clock rule on every screen, and the clock sheet behind it.
//
// Rule:    the clock of the person who taps; others in a few words. Hours are of the operation, by
//          all people. The tab is the planned operation after the one that runs, or, when nothing
//          runs, the first of what comes next on the car of the tape.
// Sheet:   people of this device as tiles, the operations of the car, pause, stop, and a new
// person.
//          The car is that of the person's clock, else that on the tape. Where nothing runs, the
//          next start may be said to be earlier, by minutes or by a typed time of today.
// Threads: GUI thread.
#pragma once

#include <QAbstractItemModel>
#include <QObject>
#include <QStringList>
#include <qqmlregistration.h>

#include "screens/clocks.h"
#include "screens/row_model.h"
#include "screens/session.h"

namespace jambline::screens {

struct PersonTileRow {
  QString key;  // person id
  QString name;
  QString doing;        // "Inspect, K 41-206", "paused", "not clocked"
  double seconds = -1;  // below 0: none
  int state = 0;        // StateKind
  bool chosen = false;
  friend bool operator==(const PersonTileRow&, const PersonTileRow&) = default;
};

struct OperationRow {
  QString key;  // operation id
  QString title;
  QString hours;  // "0.2 of 1.5 h"
  bool over = false;
  bool next = false;
  bool mine = false;  // the person's clock is on it
  friend bool operator==(const OperationRow&, const OperationRow&) = default;
};

class ClockViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  Q_PROPERTY(bool running READ running NOTIFY changed)
  Q_PROPERTY(bool paused READ paused NOTIFY changed)
  Q_PROPERTY(QString operation READ operation NOTIFY changed)
  Q_PROPERTY(QString who READ who NOTIFY changed)        // "Ivo · 0.1 of 1.0 h"
  Q_PROPERTY(QString others READ others NOTIFY changed)  // "Mara 1:12 · Jo paused"
  Q_PROPERTY(double seconds READ seconds NOTIFY changed)
  Q_PROPERTY(double usedHours READ usedHours NOTIFY changed)
  Q_PROPERTY(double allottedHours READ allottedHours NOTIFY changed)
  Q_PROPERTY(bool doubtful READ doubtful NOTIFY changed)
  Q_PROPERTY(QString tabWords READ tabWords NOTIFY changed)
  Q_PROPERTY(QString carWords READ carWords NOTIFY changed)  // of the sheet
  Q_PROPERTY(QString daySum READ daySum NOTIFY changed)      // "2.1 h today on this car"
  Q_PROPERTY(QAbstractItemModel* people READ people CONSTANT)
  Q_PROPERTY(QAbstractItemModel* operations READ operations CONSTANT)
  Q_PROPERTY(bool anyPeople READ anyPeople NOTIFY changed)
  Q_PROPERTY(QStringList roles READ roles CONSTANT)  // in the order of job::Role
  Q_PROPERTY(bool mayEarlier READ mayEarlier NOTIFY changed)
  Q_PROPERTY(int earlierMin READ earlierMin NOTIFY changed)    // 0: now; -1: typed
  Q_PROPERTY(QString startTime READ startTime NOTIFY changed)  // "10:05"; "" now
  Q_PROPERTY(QString earlierWrong READ earlierWrong NOTIFY changed)

 public:
  explicit ClockViewModel(Session& session, QObject* parent = nullptr);

  bool running() const { return mine_ && !mine_->running->paused; }
  bool paused() const { return mine_ && mine_->running->paused; }
  QString operation() const;
  QString who() const;
  QString others() const { return others_; }
  double seconds() const;
  double usedHours() const;
  double allottedHours() const;
  bool doubtful() const { return mine_ && mine_->running->clock_doubt; }
  QString tabWords() const;
  QString carWords() const;
  QString daySum() const;
  QAbstractItemModel* people() const { return people_; }
  QAbstractItemModel* operations() const { return operations_; }
  bool anyPeople() const { return people_->rowCount() > 0; }
  QStringList roles() const;
  bool mayEarlier() const { return session_.hasPerson() && !mine_ && sheet_car() != nullptr; }
  int earlierMin() const { return earlier_min_; }
  QString startTime() const;
  QString earlierWrong() const { return earlier_wrong_; }

  Q_INVOKABLE void startNext();
  Q_INVOKABLE void start(const QString& operationId);
  Q_INVOKABLE void sayEarlier(int minutes);          // 0: now
  Q_INVOKABLE void sayStarted(const QString& time);  // "0915"
  Q_INVOKABLE void pause();
  Q_INVOKABLE void goOn();
  Q_INVOKABLE void stop();
  Q_INVOKABLE void choose(const QString& personId) { session_.choosePerson(personId); }
  Q_INVOKABLE void addPerson(const QString& name, int role);

 signals:
  void changed();
  void personAdded();

 private:
  void rebuild();
  void forget_earlier();
  std::optional<std::int64_t> started_ms() const;
  const folds::FloorRow* sheet_car() const;
  const folds::OperationView* next() const;
  QString hours(const folds::FloorRow& car, const folds::OperationView& operation) const;

  Session& session_;
  std::shared_ptr<const std::vector<folds::FloorRow>> floor_;  // mine_ points into it
  std::optional<ClockOf> mine_;
  QString others_;
  int earlier_min_ = 0;
  std::optional<std::int64_t> typed_ms_;
  QString earlier_wrong_;
  RowModel<PersonTileRow>* people_;
  RowModel<OperationRow>* operations_;
};

}  // namespace jambline::screens
