#include "screens/picture_store.h"

#include <algorithm>
#include <cmath>
#include <tuple>

#include "picture/read.h"
#include "picture/thumbnails.h"

namespace jambline::screens {

namespace {
PictureStore::State state_of(const Error& error) {
  if (error.code == Code::NoSuchFile) return PictureStore::State::NotHere;
  if (error.code == Code::BadHash) return PictureStore::State::Damaged;
  return PictureStore::State::Unreadable;
}

Result<QImage> part_of(const blobs::BlobStore& blobs, const PictureAsk& ask) {
  JAMBLINE_ASSIGN(const auto bytes, blobs.get(ask.file));
  JAMBLINE_ASSIGN(const QImage whole, picture::decode(bytes, ask.side_px));
  if (ask.part == QRectF(0, 0, 1, 1)) return whole;
  const QRect cut(QPoint(static_cast<int>(std::floor(ask.part.left() * whole.width())),
                         static_cast<int>(std::floor(ask.part.top() * whole.height()))),
                  QPoint(static_cast<int>(std::ceil(ask.part.right() * whole.width())) - 1,
                         static_cast<int>(std::ceil(ask.part.bottom() * whole.height())) - 1));
  return whole.copy(cut.intersected(whole.rect()));
}
}  // namespace

bool PictureStore::Less::operator()(const PictureAsk& a, const PictureAsk& b) const {
  const auto key = [](const PictureAsk& ask) {
    return std::tuple(ask.file, ask.side_px, ask.checked, ask.part.x(), ask.part.y(),
                      ask.part.width(), ask.part.height());
  };
  return key(a) < key(b);
}

PictureStore::PictureStore(Make make, qsizetype most_bytes, QObject* parent)
    : QObject(parent), make_(std::move(make)), most_bytes_(most_bytes) {}

PictureStore::~PictureStore() {
  const std::lock_guard lock(mutex_);
  wanted_.clear();  // what the lane still does is for nobody
}

PictureStore::Make PictureStore::of(const blobs::BlobStore* blobs,
                                    const std::filesystem::path& cache) {
  if (!blobs)
    return [](const PictureAsk& ask) -> Result<QImage> {
      return fail(Code::NoSuchFile, "show a picture", ask.file.hex());
    };
  return [blobs, small = std::make_shared<picture::Thumbnails>(*blobs, cache)](
             const PictureAsk& ask) -> Result<QImage> {
    if (ask.side_px > picture::most_preview_px) return part_of(*blobs, ask);
    if (ask.checked) JAMBLINE_TRY(blobs->check(ask.file));
    return small->get(ask.file, ask.side_px);
  };
}

PictureStore::Got PictureStore::get(const PictureAsk& ask, const void* asker) {
  if (const auto known = kept_.find(ask); known != kept_.end()) {
    drop(asker);
    used_.splice(used_.begin(), used_, known->second.place);
    return known->second.got;
  }
  {
    const std::lock_guard lock(mutex_);
    const auto before = wanted_.find(asker);
    if (before != wanted_.end() && before->second.ask == ask) return {};
    if (in_work_.count(ask) != 0) {
      wanted_.erase(asker);
      return {};
    }
    wanted_[asker] = {ask, ++number_};
  }
  lane_.post([this] { make_newest(); });
  return {};
}

void PictureStore::drop(const void* asker) {
  const std::lock_guard lock(mutex_);
  wanted_.erase(asker);
}

void PictureStore::forget(std::map<PictureAsk, Kept, Less>::iterator at) {
  bytes_ -= at->second.got.image.sizeInBytes();
  used_.erase(at->second.place);
  kept_.erase(at);
}

void PictureStore::set_origins(std::map<Hash, PictureOrigin> origins) {
  const std::lock_guard lock(mutex_);
  origins_ = std::move(origins);
}

QString PictureStore::device_of(const Hash& file) const {
  const std::lock_guard lock(mutex_);
  const auto known = origins_.find(file);
  return known == origins_.end() ? QString() : known->second.device;
}

void PictureStore::look_again() {
  for (auto at = kept_.begin(); at != kept_.end();) {
    const auto one = at++;
    if (one->second.got.state == State::Here) continue;
    const Hash file = one->first.file;
    forget(one);
    QMetaObject::invokeMethod(
        this, [this, file] { emit came(file); }, Qt::QueuedConnection);
  }
}

// On the lane.
void PictureStore::make_newest() {
  PictureAsk ask;
  std::optional<Hash> preview;
  {
    const std::lock_guard lock(mutex_);
    const auto newest = std::max_element(
        wanted_.begin(), wanted_.end(),
        [](const auto& a, const auto& b) { return a.second.number < b.second.number; });
    if (newest == wanted_.end()) return;
    ask = newest->second.ask;
    for (auto at = wanted_.begin(); at != wanted_.end();)
      at = at->second.ask == ask ? wanted_.erase(at) : std::next(at);
    in_work_[ask] = 1;
    if (const auto known = origins_.find(ask.file); known != origins_.end())
      preview = known->second.preview;
  }
  auto made = make_(ask);
  QImage stand_in;
  if (!made && made.error().code == Code::NoSuchFile && preview) {
    PictureAsk instead = ask;
    instead.file = *preview;
    if (auto small = make_(instead)) stand_in = std::move(*small);
  }
  QMetaObject::invokeMethod(
      this,
      [this, ask, made = std::move(made), stand_in = std::move(stand_in)]() mutable {
        keep(ask, std::move(made), stand_in);
      },
      Qt::QueuedConnection);
}

void PictureStore::keep(const PictureAsk& ask, Result<QImage> made, const QImage& stand_in) {
  {
    const std::lock_guard lock(mutex_);
    in_work_.erase(ask);
  }
  Got got;
  got.state = made ? State::Here : state_of(made.error());
  if (made) got.image = std::move(*made);
  const bool missing = got.state == State::NotHere;
  if (missing) got.image = stand_in;
  bytes_ += got.image.sizeInBytes();
  used_.push_front(ask);
  kept_[ask] = {std::move(got), used_.begin()};
  while (bytes_ > most_bytes_ && used_.size() > 1) forget(kept_.find(used_.back()));
  emit came(ask.file);
  if (missing) emit missed(ask.file);
}

}  // namespace jambline::screens
