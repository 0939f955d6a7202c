#include "screens/picture_intake.h"

#include <QFile>
#include <QFileInfo>
#include <QPointer>
#include <QUrl>
#include <algorithm>
#include <fstream>

#include "picture/thumbnails.h"
#include "screens/picture_words.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
constexpr const char* operation = "take in a picture";

std::filesystem::path path_of(const QString& file) {
  return QFile::encodeName(file).toStdString();
}
}  // namespace

job::PictureFacts Judged::facts() const {
  return picture::facts_for_record(seen);
}

PictureIntake::PictureIntake(Session& session, std::filesystem::path cache, QObject* parent)
    : QObject(parent),
      session_(session),
      cache_(std::move(cache)),
      refused_({"key", "title", "why", "todo", "poor"}, this) {}

Result<PictureIntake::Bytes> PictureIntake::read_file(const std::filesystem::path& file) {
  const std::string name = file.filename().string();
  std::error_code wrong;
  const auto status = std::filesystem::status(file, wrong);
  if (!std::filesystem::exists(status)) return fail(Code::NoSuchFile, operation, name);
  if (!std::filesystem::is_regular_file(status)) return fail(Code::FileFailed, operation, name);
  const auto size = std::filesystem::file_size(file, wrong);
  if (wrong) return fail(Code::FileFailed, operation, name);
  if (size > picture::most_bytes)
    return fail(Error{Code::TooLarge,
                      operation,
                      name,
                      {{"limit", std::to_string(picture::most_bytes)},
                       {"is", std::to_string(size)},
                       {"unit", "byte"}}});
  std::ifstream in(file, std::ios::binary);
  Bytes bytes(size);
  if (size > 0) in.read(reinterpret_cast<char*>(bytes.data()), static_cast<std::streamsize>(size));
  if (!in) return fail(Code::FileFailed, operation, name);
  return bytes;
}

Result<Judged> PictureIntake::judge(Result<Bytes> bytes, job::PictureFrom from,
                                    const QString& file) {
  if (!bytes) return tl::unexpected(bytes.error());
  Judged out;
  out.bytes = std::make_shared<const Bytes>(std::move(*bytes));
  out.from = from;
  out.path = file;
  JAMBLINE_ASSIGN(out.seen, picture::look_at(*out.bytes, &out.preview));
  return out;
}

void PictureIntake::look_at(const QByteArray& bytes, Then then) {
  shutter_.post([this, bytes, then = std::move(then)] {
    auto judged = judge(Bytes(bytes.begin(), bytes.end()), job::PictureFrom::Camera, {});
    QMetaObject::invokeMethod(
        this, [then, answer = std::move(judged)] { then(answer); }, Qt::QueuedConnection);
  });
}

void PictureIntake::look_at_file(const QString& file, job::PictureFrom from, Then then) {
  shutter_.post([this, file, from, then = std::move(then)] {
    auto judged = judge(read_file(path_of(file)), from, file);
    QMetaObject::invokeMethod(
        this, [then, answer = std::move(judged)] { then(answer); }, Qt::QueuedConnection);
  });
}

void PictureIntake::send_in(Judged judged, const Wanted& wanted, Session::Then then) {
  acts::TakePicture command{wanted.job, judged.facts(), wanted.from, wanted.place,
                            wanted.though_poor};
  Session* const session = &session_;
  engine::Engine::Done told = [session, alive = QPointer(this), file = judged.seen.file,
                               small = judged.preview,
                               then = std::move(then)](Result<engine::Wrote> wrote) {
    QMetaObject::invokeMethod(
        session,
        [alive, then, file, small, given = std::move(wrote)] {
          if (!alive) return;
          const auto* blobs = alive->session_.engine().blobs();
          if (given && blobs)
            alive->background_.post([blobs, cache = alive->cache_, file, small] {
              picture::Thumbnails(*blobs, cache).keep(file, small);
            });
          then(given);
        },
        Qt::QueuedConnection);
  };
  engine::Lane& lane = wanted.from == job::PictureFrom::Camera ? shutter_ : background_;
  lane.post([engine = &session_.engine(), bytes = judged.bytes, small = judged.preview,
             command = std::move(command), person = wanted.person,
             told = std::move(told)]() mutable {
    auto preview = std::make_shared<const Bytes>(picture::preview_of(small));
    if (preview->empty()) preview.reset();
    engine->keep_picture(std::move(bytes), std::move(preview), std::move(command), person,
                         std::move(told));
  });
}

void PictureIntake::keep(const Judged& judged, const JobId& job, const entries::PicturePlace& place,
                         Session::Then then) {
  send_in(judged, {judged.path, job, place, judged.from, !judged.good(), session_.person()},
          [this, then = std::move(then)](const Result<engine::Wrote>& wrote) {
            if (!wrote) emit session_.failed(wrote.error());
            then(wrote);
          });
}

void PictureIntake::small_of(const Hash& file, std::function<void(QImage)> then) {
  const auto* blobs = session_.engine().blobs();
  if (!blobs) return then({});
  shutter_.post([this, blobs, file, then = std::move(then)] {
    auto small = picture::Thumbnails(*blobs, cache_).get(file, picture::most_preview_px);
    QMetaObject::invokeMethod(
        this, [then, image = small ? *small : QImage()] { then(image); }, Qt::QueuedConnection);
  });
}

void PictureIntake::take_in(const QStringList& files, const JobId& job,
                            const entries::PicturePlace& place, job::PictureFrom from) {
  if (files.isEmpty()) return;
  if (!busy_) total_ = done_ = kept_ = 0;
  stopped_ = false;
  for (const QString& file : files)
    queue_.push_back({file, job, place, from, false, session_.person()});
  total_ += static_cast<int>(files.size());
  emit importChanged();
  if (!busy_) import_next();
}

void PictureIntake::import_next() {
  busy_ = !queue_.empty();
  emit importChanged();
  if (!busy_) return;
  const Wanted wanted = std::move(queue_.front());
  queue_.pop_front();
  background_.post([this, wanted] {
    auto judged = judge(read_file(path_of(wanted.file)), wanted.from, wanted.file);
    QMetaObject::invokeMethod(
        this,
        [this, wanted, answer = std::move(judged)] {
          if (!answer) return imported(wanted, tl::unexpected(answer.error()));
          send_in(*answer, wanted,
                  [this, wanted](const Result<engine::Wrote>& wrote) { imported(wanted, wrote); });
        },
        Qt::QueuedConnection);
  });
}

void PictureIntake::imported(const Wanted& wanted, const Result<engine::Wrote>& wrote) {
  ++done_;
  if (wrote) {
    ++kept_;
  } else {
    add_refused(wanted, wrote.error());
    const bool nothing_goes =
        wrote.error().code == Code::DiskFull || wrote.error().code == Code::ReadOnly;
    if (nothing_goes) {
      emit session_.failed(wrote.error());
      stop();
    }
  }
  import_next();
}

void PictureIntake::add_refused(const Wanted& wanted, const Error& error) {
  const bool poor = error.operation == "keep a picture" && error.code == Code::NotYet;
  if (poor) poor_[wanted.file] = wanted;
  const ErrorWords words = words_of(error);
  std::vector<QVariantList> rows;
  for (const auto& row : refused_.rows())
    if (row.key != wanted.file) rows.push_back(row.values);
  rows.push_back({wanted.file, QFileInfo(wanted.file).fileName(), words.what, words.todo, poor});
  refused_.set(std::move(rows));
  emit importChanged();
}

void PictureIntake::refuse(const QString& file, const Error& error) {
  add_refused({file, {}, {}, {}, false, {}}, error);
}

QString PictureIntake::importWords() const {
  if (busy_) return tr("%1 of %2 pictures").arg(done_).arg(total_);
  if (total_ == 0) return refused_.rowCount() > 0 ? tr("Not taken in") : QString();
  const QString kept = kept_ == 1 ? tr("1 picture kept") : tr("%1 pictures kept").arg(kept_);
  if (stopped_ && done_ < total_)
    return tr("%1. Stopped: %2 not looked at").arg(kept).arg(total_ - done_);
  return done_ > kept_ ? tr("%1, %2 not").arg(kept).arg(done_ - kept_) : kept;
}

int PictureIntake::poorCount() const {
  return static_cast<int>(poor_.size());
}

void PictureIntake::stop() {
  stopped_ = true;
  queue_.clear();
  emit importChanged();
}

void PictureIntake::keepAnyway(const QString& key) {
  const auto found = poor_.find(key);
  if (found == poor_.end()) return;
  Wanted wanted = std::move(found->second);
  poor_.erase(found);
  wanted.though_poor = true;
  wanted.person = session_.person();
  std::vector<QVariantList> rows;
  for (const auto& row : refused_.rows())
    if (row.key != key) rows.push_back(row.values);
  refused_.set(std::move(rows));
  if (!busy_) total_ = done_ = kept_ = 0;
  queue_.push_back(std::move(wanted));
  ++total_;
  emit importChanged();
  if (!busy_) import_next();
}

void PictureIntake::keepAllAnyway() {
  QStringList keys;
  for (const auto& [key, wanted] : poor_) keys.append(key);
  for (const QString& key : keys) keepAnyway(key);
}

void PictureIntake::close() {
  if (busy_) return;
  total_ = done_ = kept_ = 0;
  poor_.clear();
  refused_.set({});
  emit importChanged();
}

QStringList PictureIntake::paths_of(const QList<QUrl>& urls) {
  QStringList out;
  for (const QUrl& url : urls) {
    const QString path = url.isLocalFile()                          ? url.toLocalFile()
                         : url.scheme().isEmpty() && !url.isEmpty() ? url.toString()
                                                                    : QString();
    if (path.isEmpty())
      refuse(url.toString(), Error{Code::NotAllowed, operation, url.toString().toStdString()});
    else
      out.append(path);
  }
  return out;
}

}  // namespace jambline::screens
