// screens/integrity_view_model.h: the check of all entries, then of the files of all pictures, with
// progress and stop, and what it found in words.
//
// Promise: says only what was proven: up to which entry of each device, and the first bad one.
//          A check that was stopped says nothing about the entries. Pictures are told apart: one
//          that is damaged, or not in this folder, says nothing against the entry that names it.
// Threads: GUI; the check runs on the engine's calc lane.
#pragma once

#include <QObject>
#include <qqmlregistration.h>

#include "screens/detail_rows.h"
#include "screens/session.h"

namespace jambline::screens {

class IntegrityViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Part of RecordViewModel")
  Q_PROPERTY(State state READ state NOTIFY changed)
  Q_PROPERTY(double progress READ progress NOTIFY progressChanged)  // 0 to 1
  Q_PROPERTY(QString what READ what NOTIFY changed)                 // what was found
  Q_PROPERTY(QString kept READ kept NOTIFY changed)                 // what can be relied on
  Q_PROPERTY(QString todo READ todo NOTIFY changed)
  Q_PROPERTY(QString fingerprint READ fingerprint NOTIFY changed)  // of the shop; after a check
  Q_PROPERTY(jambline::screens::DetailRows* proven READ proven CONSTANT)  // a row a device
  Q_PROPERTY(QString picturesWhat READ picturesWhat NOTIFY changed)       // "" nothing to say
  Q_PROPERTY(QString picturesTodo READ picturesTodo NOTIFY changed)
  Q_PROPERTY(bool picturesBad READ picturesBad NOTIFY changed)  // some are damaged
  // Each damaged or missing one: car, stage and shot; what is wrong with it.
  Q_PROPERTY(jambline::screens::DetailRows* pictures READ pictures CONSTANT)

 public:
  // Failed: nothing could be checked at all.
  enum State { NotChecked, Running, Sound, Bad, Stopped, Failed };
  Q_ENUM(State)

  explicit IntegrityViewModel(Session& session, QObject* parent = nullptr);
  ~IntegrityViewModel() override;

  State state() const { return state_; }
  double progress() const { return progress_; }
  QString what() const { return what_; }
  QString kept() const { return kept_; }
  QString todo() const { return todo_; }
  QString fingerprint() const { return fingerprint_; }
  DetailRows* proven() { return &proven_; }
  QString picturesWhat() const { return pictures_what_; }
  QString picturesTodo() const { return pictures_todo_; }
  bool picturesBad() const { return pictures_bad_; }
  DetailRows* pictures() { return &pictures_; }

  Q_INVOKABLE void start();
  Q_INVOKABLE void stop();

 signals:
  void changed();
  void progressChanged();

 private:
  void show(const Result<log::Audit>& found);
  void then_pictures(State state, const QString& what, const QString& kept, const QString& todo);
  void show_pictures(const Result<engine::PictureCheck>& found);
  QString name_of(const engine::NamedPicture& picture) const;
  void went_on(double part_done);
  void say(State state, const QString& what, const QString& kept, const QString& todo);

  Session& session_;
  State state_ = NotChecked;
  double progress_ = 0;
  QString what_;
  QString kept_;
  QString todo_;
  QString fingerprint_;
  DetailRows proven_{this};
  QString pictures_what_;
  QString pictures_todo_;
  bool pictures_bad_ = false;
  DetailRows pictures_{this};
};

}  // namespace jambline::screens
