// screens/picture_intake.h: pictures on their way in: read, looked at, judged, and kept.
//
// Shape:   the bytes of a camera or a file become a Judged, which stays its holder's until keep()
//          says that its entry is on disk; what fails is lost nowhere. A poor one is kept only when
//          a person says so. take_in() takes many files, one after another: good ones are kept,
//          the others stand in `refused` with the reason and what to do.
// Cost:    judged on a scaled decode; the answer comes within 300 ms for a picture of 24 megapixels
//          on the reference machine (bench-photo, shutter_to_word_ms).
// Threads: GUI thread. Files are read and pictures decoded on lanes of its own: one for the
//          shutter, one in the background for take_in().
// Errors:  those of picture/read.h; {NoSuchFile | FileFailed, "take in a picture", name}; those of
//          Engine::keep_picture. keep() also says them by Session::failed.
#pragma once

#include <QImage>
#include <QObject>
#include <QStringList>
#include <deque>
#include <filesystem>
#include <functional>
#include <qqmlregistration.h>

#include "engine/lane.h"
#include "picture/read.h"
#include "screens/row_list.h"
#include "screens/session.h"

namespace jambline::screens {

struct Judged {
  engine::Engine::PictureBytes bytes;
  picture::Seen seen;
  QImage preview;  // upright, 1280 px at most
  job::PictureFrom from{};
  QString path;  // of a file; "" from the camera
  bool good() const { return seen.judgement.word == trade::PhotoWord::Good; }
  job::PictureFacts facts() const;
};

class PictureIntake final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program")
  Q_PROPERTY(bool importing READ importing NOTIFY importChanged)
  Q_PROPERTY(double progress READ progress NOTIFY importChanged)  // 0 to 1
  Q_PROPERTY(QString importWords READ importWords NOTIFY importChanged)
  // Roles: key (the file), title, why, todo, poor (it can be kept anyway).
  Q_PROPERTY(QAbstractItemModel* refused READ refused CONSTANT)
  Q_PROPERTY(int refusedCount READ refusedCount NOTIFY importChanged)
  Q_PROPERTY(int poorCount READ poorCount NOTIFY importChanged)

 public:
  using Then = std::function<void(Result<Judged>)>;

  // Small pictures of what is kept go to `cache` at once.
  PictureIntake(Session& session, std::filesystem::path cache, QObject* parent = nullptr);

  // `then` runs on the GUI thread, as long as the intake lives.
  void look_at(const QByteArray& bytes, Then then);
  void look_at_file(const QString& file, job::PictureFrom from, Then then);
  void keep(const Judged& judged, const JobId& job, const entries::PicturePlace& place,
            Session::Then then);
  // Of a picture in the record, 1280 px at most; null when it is not here.
  void small_of(const Hash& file, std::function<void(QImage)> then);

  void take_in(const QStringList& files, const JobId& job, const entries::PicturePlace& place,
               job::PictureFrom from = job::PictureFrom::File);
  void refuse(const QString& file, const Error& error);

  bool importing() const { return busy_; }
  double progress() const { return total_ == 0 ? 0 : static_cast<double>(done_) / total_; }
  QString importWords() const;
  QAbstractItemModel* refused() { return &refused_; }
  int refusedCount() const { return refused_.rowCount(); }
  int poorCount() const;

  Q_INVOKABLE void stop();
  Q_INVOKABLE void keepAnyway(const QString& key);
  Q_INVOKABLE void keepAllAnyway();
  Q_INVOKABLE void close();  // what was said of the last import

  // Local paths of what was chosen or dropped; what is no file of this device is refused.
  QStringList paths_of(const QList<QUrl>& urls);

 signals:
  void importChanged();

 private:
  struct Wanted {
    QString file;
    JobId job;
    entries::PicturePlace place;
    job::PictureFrom from{};
    bool though_poor = false;
    PersonId person;
  };
  using Bytes = std::vector<std::uint8_t>;
  static Result<Bytes> read_file(const std::filesystem::path& file);
  static Result<Judged> judge(Result<Bytes> bytes, job::PictureFrom from, const QString& file);
  void send_in(Judged judged, const Wanted& wanted, Session::Then then);
  void import_next();
  void imported(const Wanted& wanted, const Result<engine::Wrote>& wrote);
  void add_refused(const Wanted& wanted, const Error& error);

  Session& session_;
  std::filesystem::path cache_;
  RowList refused_;
  std::map<QString, Wanted> poor_;
  std::deque<Wanted> queue_;
  int total_ = 0;
  int done_ = 0;
  int kept_ = 0;
  bool busy_ = false;
  bool stopped_ = false;
  engine::Lane shutter_;  // the lanes last: they stop before the rest goes
  engine::Lane background_{engine::Lane::Place::Background};
};

}  // namespace jambline::screens
