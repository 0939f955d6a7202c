#include "device/picture_folder.h"

#include <QDateTime>
#include <QDir>
#include <QFileInfo>
#include <algorithm>

namespace jambline::device {

namespace {
constexpr int tick_ms = 250;
constexpr int still_ms = 500;
constexpr int empty_still_ms = 5000;
constexpr int rests_by_listing = 4;
}  // namespace

PictureFolder::PictureFolder(QObject* parent) : QObject(parent) {
  lane_.setMaxThreadCount(1);
  clock_.start();
  tick_.setSingleShot(true);
  connect(&tick_, &QTimer::timeout, this, &PictureFolder::ask);
}

PictureFolder::~PictureFolder() {
  lane_.waitForDone();
}

void PictureFolder::watch(const QString& folder) {
  if (folder == folder_) return;
  stop();
  if (folder.isEmpty()) return;
  folder_ = folder;
  ask();
}

void PictureFolder::stop() {
  tick_.stop();
  ++watching_;
  folder_.clear();
  known_.clear();
  before_.clear();
  waiting_.clear();
  listed_ = here_ = all_ = false;
}

void PictureFolder::offer_all() {
  all_ = true;
  for (const QString& file : before_) known_.erase(file);
  before_.clear();
}

PictureFolder::Listing PictureFolder::list(const QString& folder) {
  Listing out;
  QElapsedTimer took;
  took.start();
  const QDir there(folder);
  out.here = there.exists() && there.isReadable();
  if (!out.here) return out;
  const QStringList endings{QStringLiteral("*.jpg"), QStringLiteral("*.jpeg"),
                            QStringLiteral("*.png")};
  for (const QFileInfo& file : there.entryInfoList(endings, QDir::Files | QDir::Readable))
    out.files[file.absoluteFilePath()] = {file.size(), file.lastModified().toMSecsSinceEpoch()};
  out.took_ms = took.elapsed();
  return out;
}

void PictureFolder::ask() {
  lane_.start([this, folder = folder_, watching = watching_] {
    Listing listing = list(folder);
    QMetaObject::invokeMethod(this, [this, watching, listing = std::move(listing)] {
      if (watching == watching_) take_in(listing);
    });
  });
}

void PictureFolder::take_in(const Listing& listing) {
  tick_.start(std::max<int>(tick_ms, static_cast<int>(rests_by_listing * listing.took_ms)));
  const bool first = !listed_;
  listed_ = true;
  if (!listing.here) {
    waiting_.clear();
    if (std::exchange(here_, false) || first) emit gone();
    return;
  }
  const bool came = !std::exchange(here_, true);
  const qint64 now_ms = clock_.elapsed();
  std::vector<QString> found_now;
  std::map<QString, Waiting> waiting;
  for (const auto& [file, look] : listing.files) {
    const auto known = known_.find(file);
    if (known != known_.end() && known->second == look) continue;
    if (first && !all_) {
      known_[file] = look;
      before_.insert(file);
      continue;
    }
    const auto before = waiting_.find(file);
    const bool still = before != waiting_.end() && before->second.look == look;
    const qint64 since_ms = still ? before->second.since_ms : now_ms;
    const int wait_ms = look.size_bytes > 0 ? still_ms : empty_still_ms;
    if (still && now_ms - since_ms >= wait_ms) {
      known_[file] = look;
      before_.erase(file);
      found_now.push_back(file);
    } else {
      waiting[file] = {look, since_ms};
    }
  }
  waiting_ = std::move(waiting);
  const std::uint64_t watching = watching_;
  if (came) emit back();
  for (const QString& file : found_now)
    if (watching == watching_) emit found(file);
}

}  // namespace jambline::device
