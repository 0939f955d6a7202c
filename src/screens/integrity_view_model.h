// screens/integrity_view_model.h: the check of all entries, then of the files of all pictures, with
// progress and stop, and what it found in words (engine/integrity.h).
//
// Promise: says only what was proven: up to which entry of each device, and the first bad one.
//          A check that was stopped says nothing about the entries. Pictures are told apart: one
//          that is damaged, or not in this folder, says nothing against the entry that names it.
// Opening: a finding leads to its entry, entryAsked(job, entry), or, of the shop's own, to the
// devices. Threads: GUI; the check runs on the engine's calc lane.
#pragma once

#include <QObject>
#include <functional>
#include <qqmlregistration.h>
#include <stop_token>

#include "engine/integrity.h"
#include "screens/detail_rows.h"
#include "screens/row_list.h"
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
  Q_PROPERTY(QString means READ means NOTIFY changed)  // of the first bad entry
  // Findings of one kind lie together: key, kind (title), meaning, words, first (of its
  // kind).
  Q_PROPERTY(QAbstractItemModel* findings READ findings CONSTANT)
  Q_PROPERTY(int findingCount READ findingCount NOTIFY changed)
  Q_PROPERTY(QString leftOut READ leftOut NOTIFY changed)          // "" all of them are listed
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

  using Check = std::function<Result<engine::Integrity>(
      const std::stop_token& stop, const std::function<void(double part_done)>& progress)>;
  void check_by(Check check) { check_ = std::move(check); }  // runs on the calc lane

  State state() const { return state_; }
  double progress() const { return progress_; }
  QString what() const { return what_; }
  QString kept() const { return kept_; }
  QString todo() const { return todo_; }
  QString means() const { return means_; }
  QAbstractItemModel* findings() { return &findings_; }
  int findingCount() const { return findings_.count(); }
  QString leftOut() const { return left_out_; }
  QString fingerprint() const { return fingerprint_; }
  DetailRows* proven() { return &proven_; }
  QString picturesWhat() const { return pictures_what_; }
  QString picturesTodo() const { return pictures_todo_; }
  bool picturesBad() const { return pictures_bad_; }
  DetailRows* pictures() { return &pictures_; }

  Q_INVOKABLE void start();
  Q_INVOKABLE void stop();
  Q_INVOKABLE void open(const QString& key);  // a finding

 signals:
  void changed();
  void progressChanged();
  void entryAsked(const QString& jobId, const QString& entryId);
  void devicesAsked();

 private:
  void show(const Result<engine::Integrity>& found);
  void show_findings(const engine::Integrity& found);
  QString device_of(const DeviceId& device) const;
  void then_pictures(State state, const QString& what, const QString& kept, const QString& todo);
  void show_pictures(const Result<engine::PictureCheck>& found);
  QString name_of(const engine::NamedPicture& picture) const;
  void went_on(double part_done);
  void say(State state, const QString& what, const QString& kept, const QString& todo);

  Session& session_;
  Check check_;
  std::stop_source stop_;
  State state_ = NotChecked;
  double progress_ = 0;
  QString what_;
  QString kept_;
  QString todo_;
  QString means_;
  QString left_out_;
  std::vector<engine::Finding> found_;
  RowList findings_;
  QString fingerprint_;
  DetailRows proven_{this};
  QString pictures_what_;
  QString pictures_todo_;
  bool pictures_bad_ = false;
  DetailRows pictures_{this};
};

}  // namespace jambline::screens
