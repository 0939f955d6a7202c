#include "picture/thumbnails.h"

#include <QBuffer>
#include <QImageReader>
#include <algorithm>
#include <array>
#include <atomic>
#include <fstream>
#include <iterator>
#include <string>

#include "blobs/hasher.h"
#include "picture/read.h"

namespace jambline::picture {

namespace {
using Jpeg = std::vector<std::uint8_t>;

constexpr std::array<int, 3> sides_px{160, 320, 1280};
constexpr const char* preview_ending = "-preview.jpg";
constexpr int usual_quality = 85;
constexpr int least_quality = 30;

int rounded_up(int side_px) {
  const auto* side = std::lower_bound(sides_px.begin(), sides_px.end(), side_px);
  return side == sides_px.end() ? sides_px.back() : *side;
}

std::string ending_of(int side_px) {
  return '-' + std::to_string(side_px) + ".jpg";
}

QImage at_most(const QImage& image, int side_px) {
  if (std::max(image.width(), image.height()) <= side_px) return image;
  const QSize size = image.size().scaled(side_px, side_px, Qt::KeepAspectRatio);
  return image.scaled(size.expandedTo(QSize(1, 1)), Qt::IgnoreAspectRatio,
                      Qt::SmoothTransformation);
}

Jpeg encoded(const QImage& image, int quality) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  if (!image.save(&buffer, "jpeg", quality)) return {};
  return {bytes.begin(), bytes.end()};
}

QImage decoded(const Jpeg& jpeg) {
  return QImage::fromData(jpeg.data(), static_cast<int>(jpeg.size()), "jpeg")
      .convertToFormat(QImage::Format_RGB32);
}

Hash name_of_bytes(std::span<const std::uint8_t> bytes) {
  blobs::Hasher hasher;
  hasher.update(bytes);
  return hasher.finish().value_or(Hash{});
}

// What was kept there; empty when it is gone or damaged.
Jpeg kept(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  Jpeg bytes((std::istreambuf_iterator<char>(file)), {});
  if (bytes.size() <= Hash::size) return {};
  const std::span<const std::uint8_t> all(bytes);
  const auto body = all.first(all.size() - Hash::size);
  const Hash hash = name_of_bytes(body);
  if (hash.none() || !std::equal(hash.bytes.begin(), hash.bytes.end(), all.end() - Hash::size))
    return {};
  bytes.resize(body.size());
  return bytes;
}

// A failure is no error: what is not kept is made again.
void keep_at(const std::filesystem::path& path, const Jpeg& jpeg) {
  static std::atomic<std::uint64_t> last_temp{0};
  const Hash hash = name_of_bytes(jpeg);
  if (jpeg.empty() || hash.none()) return;
  std::error_code ignored;
  std::filesystem::create_directories(path.parent_path(), ignored);
  std::filesystem::path temp = path;
  temp += '.' + std::to_string(++last_temp) + ".part";
  std::ofstream file(temp, std::ios::binary | std::ios::trunc);
  file.write(reinterpret_cast<const char*>(jpeg.data()), static_cast<std::streamsize>(jpeg.size()));
  file.write(reinterpret_cast<const char*>(hash.bytes.data()), Hash::size);
  file.close();
  if (file) std::filesystem::rename(temp, path, ignored);
  if (!file || ignored) std::filesystem::remove(temp, ignored);
}
}  // namespace

QImage thumbnail_of(std::span<const std::uint8_t> bytes, int side_px) {
  return decode(bytes, rounded_up(side_px)).value_or(QImage());
}

// The first guess fits most pictures; each further one costs an encoding.
Jpeg preview_of(const QImage& small) {
  for (int side = most_preview_px; side >= 80; side = side * 3 / 4) {
    const QImage image = at_most(small, side);
    for (int quality = 75; quality >= least_quality; quality -= 15) {
      Jpeg jpeg = encoded(image, quality);
      if (!jpeg.empty() && jpeg.size() <= most_preview_bytes) return jpeg;
      if (jpeg.size() > 3 * most_preview_bytes) break;
    }
  }
  return {};
}

Thumbnails::Thumbnails(const blobs::BlobStore& store, std::filesystem::path cache)
    : store_(store), cache_(std::move(cache)) {}

std::filesystem::path Thumbnails::path_of(const Hash& file, const char* ending) const {
  return cache_ / (file.hex() + ending);
}

// From the cache's own largest if it has one, else from the original.
Result<QImage> Thumbnails::largest(const Hash& file) const {
  const QImage cached = decoded(kept(path_of(file, ending_of(most_preview_px).c_str())));
  if (!cached.isNull()) return cached;
  JAMBLINE_ASSIGN(const std::vector<std::uint8_t> bytes, store_.get(file, most_bytes));
  JAMBLINE_ASSIGN(const QImage image, decode(bytes, most_preview_px));
  keep(file, image);
  return image;
}

Result<QImage> Thumbnails::get(const Hash& file, int side_px) const {
  const int side = rounded_up(side_px);
  const auto path = path_of(file, ending_of(side).c_str());
  const QImage cached = decoded(kept(path));
  if (!cached.isNull()) return cached;
  JAMBLINE_ASSIGN(const QImage from, largest(file));
  const QImage out = at_most(from, side);
  keep_at(path, encoded(out, usual_quality));
  return out;
}

Result<std::vector<std::uint8_t>> Thumbnails::preview(const Hash& file) const {
  const auto path = path_of(file, preview_ending);
  Jpeg cached = kept(path);
  if (!cached.empty()) return cached;
  JAMBLINE_ASSIGN(const QImage from, largest(file));
  Jpeg out = preview_of(from);
  keep_at(path, out);
  return out;
}

void Thumbnails::keep(const Hash& file, const QImage& small) const {
  QImage image = small;
  for (auto side = sides_px.rbegin(); side != sides_px.rend(); ++side) {
    image = at_most(image, *side);
    keep_at(path_of(file, ending_of(*side).c_str()), encoded(image, usual_quality));
  }
}

void Thumbnails::forget_all() const {
  std::error_code ignored;
  std::filesystem::remove_all(cache_, ignored);
}

}  // namespace jambline::picture
