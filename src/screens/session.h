// screens/session.h: what every screen shares: the last snapshot, who is acting, which car is on
// the tape, the time, and the way to post an act.
//
// Threads: GUI thread only. Snapshots come in by a queued call; nothing here opens a file.
// Promise: `then` of post() is called on the GUI thread after the entries are on disk, or with the
//          reason why nothing was written; in that case failed() is emitted too and the banner
//          shows it. lastAct is what the undo row shows.
// One object, made by app/, handed down as a required property; never global.
#pragma once

#include <QObject>
#include <QString>
#include <QTimer>
#include <functional>
#include <memory>
#include <optional>
#include <qqmlregistration.h>

#include "engine/engine.h"
#include "screens/units.h"

namespace jambline::screens {

class Session final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  Q_PROPERTY(QString personId READ personId NOTIFY personChanged)
  Q_PROPERTY(QString personName READ personName NOTIFY personChanged)
  Q_PROPERTY(QString personRole READ personRole NOTIFY personChanged)
  Q_PROPERTY(bool hasPerson READ hasPerson NOTIFY personChanged)
  Q_PROPERTY(bool hasCar READ hasCar NOTIFY carChanged)
  Q_PROPERTY(QString carTitle READ carTitle NOTIFY carChanged)  // "K 41-206"
  Q_PROPERTY(QString carSubtitle READ carSubtitle NOTIFY
                 carChanged)  // "deep green · two-door hatchback · code"
  Q_PROPERTY(bool readOnly READ readOnly NOTIFY snapshotChanged)

 public:
  Session(engine::Engine& engine, const Clock& clock, QObject* parent = nullptr);

  // Called by app/ from the engine's work lane; passes the snapshot to the GUI thread.
  void publish(std::shared_ptr<const engine::Snapshot> snapshot);

  const engine::Snapshot& snapshot() const { return *snapshot_; }
  const folds::ShopView& shop() const { return *snapshot_->shop; }
  const folds::CarView* car() const;  // of the car on the tape; null until it has come
  std::optional<JobId> job() const { return job_; }
  PersonId person() const { return person_; }
  Moment now() const { return clock_.now(); }
  Units units() const { return units_; }
  void set_units(Units units);
  QString zone() const;  // the shop's, or the machine's until it is set

  using Then = std::function<void(const Result<engine::Wrote>&)>;
  void post(acts::Command command, Then then = {});
  void post_as(const PersonId& person, acts::Command command, Then then = {});
  engine::Engine& engine() { return engine_; }

  // `work` runs on the calc lane on values of its own; what it gives back runs on the GUI thread
  // afterwards, as long as `receiver` lives. Who asks anew drops the older answer by itself.
  using Work = std::function<std::function<void()>()>;
  void calculate(QObject* receiver, Work work);
  bool calculating() const { return calculations_ > 0; }  // an answer is still to come

  QString personId() const;
  QString personName() const;
  QString personRole() const;
  bool hasPerson() const { return static_cast<bool>(person_); }
  bool hasCar() const { return car() != nullptr; }
  QString carTitle() const;
  QString carSubtitle() const;
  bool readOnly() const { return snapshot_->read_only; }

  QString name_of(const PersonId& person) const;  // "someone" when erased

  // Whether this device wrote it; also while it is not said which one this is.
  bool started_here(const DeviceId& device) const;

  // One with a PIN is asked for it first: pinAsked, then choose_unlocked.
  Q_INVOKABLE void choosePerson(const QString& personId);
  void choose_unlocked(const PersonId& person);
  bool has_pin(const PersonId& person) const;
  Q_INVOKABLE void openCar(const QString& jobId);
  Q_INVOKABLE void leaveCar();

 signals:
  // Each also after personChanged, carChanged and unitsChanged; in this order. An import of other
  // cars' entries brings snapshots by the dozen: who shows nothing of them takes a narrower one.
  void shopChanged();       // the shop, or whether this device may write
  void carOrShopChanged();  // or the car on the tape, its time line, what all cars taught
  void snapshotChanged();   // or anything
  void personChanged();
  void pinAsked(const QString& personId);
  void carChanged();
  void unitsChanged();
  void secondPassed();
  void failed(const jambline::Error& error);

 private:
  void tell_all();

  engine::Engine& engine_;
  int calculations_ = 0;
  const Clock& clock_;
  std::shared_ptr<const engine::Snapshot> snapshot_;
  PersonId person_;
  std::optional<JobId> job_;
  Units units_ = Units::Us;
  QTimer second_;
};

}  // namespace jambline::screens
