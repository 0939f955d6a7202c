#include "picture/read.h"

#include <QBuffer>
#include <QImageReader>
#include <QPainter>
#include <QTransform>
#include <algorithm>
#include <mutex>

#include "blobs/hasher.h"
#include "picture/facts.h"
#include "picture/file_parts.h"
#include "picture/judge.h"
#include "picture/thumbnails.h"

namespace jambline::picture {

namespace {
using ReadBytes = std::span<const std::uint8_t>;

// A picture within our own limits needs at most this, and Qt refuses above 128 MB by itself.
constexpr int most_pixel_megabytes = 512;

bool lies_on_its_side(int orientation) {
  return orientation >= 5;
}

QImage upright(const QImage& image, int orientation) {
  switch (orientation) {
    case 2:
      return image.mirrored(true, false);
    case 3:
      return image.mirrored(true, true);
    case 4:
      return image.mirrored(false, true);
    case 5:
      return image.transformed(QTransform().rotate(90)).mirrored(true, false);
    case 6:
      return image.transformed(QTransform().rotate(90));
    case 7:
      return image.transformed(QTransform().rotate(270)).mirrored(true, false);
    case 8:
      return image.transformed(QTransform().rotate(270));
    default:
      return image;
  }
}

QImage on_white(const QImage& image) {
  if (!image.hasAlphaChannel()) return image.convertToFormat(QImage::Format_RGB32);
  QImage out(image.size(), QImage::Format_RGB32);
  out.fill(Qt::white);
  QPainter(&out).drawImage(0, 0, image);
  return out;
}

Result<QImage> pixels(ReadBytes bytes, const FileParts& parts, int orientation,
                      int longest_side_px) {
  static std::once_flag once;
  std::call_once(once, [] { QImageReader::setAllocationLimit(most_pixel_megabytes); });
  const QByteArray view = QByteArray::fromRawData(reinterpret_cast<const char*>(bytes.data()),
                                                  static_cast<qsizetype>(parts.end));
  QBuffer buffer;
  buffer.setData(view);
  buffer.open(QIODevice::ReadOnly);
  QImageReader reader(&buffer, parts.format == Format::Jpeg ? "jpeg" : "png");
  reader.setDecideFormatFromContent(false);
  reader.setAutoTransform(false);
  const QSize stored(parts.width_px, parts.height_px);
  const QSize most(longest_side_px, longest_side_px);
  if (std::max(stored.width(), stored.height()) > longest_side_px)
    reader.setScaledSize(stored.scaled(most, Qt::KeepAspectRatio).expandedTo(QSize(1, 1)));
  const QImage image = reader.read();
  if (image.isNull())
    return fail(Error{Code::Malformed, "read a picture", "picture", {{"cause", "broken"}}});
  return upright(on_white(image), orientation);
}

Result<Hash> hash_of(ReadBytes bytes) {
  blobs::Hasher hasher;
  hasher.update(bytes);
  return hasher.finish();
}
}  // namespace

Result<Seen> look_at(ReadBytes bytes, QImage* small) {
  JAMBLINE_ASSIGN(const FileParts parts, parts_of(bytes));
  const Facts facts = facts_of(bytes, parts);
  JAMBLINE_ASSIGN(const QImage image, pixels(bytes, parts, facts.orientation, most_preview_px));
  Seen out;
  JAMBLINE_ASSIGN(out.file, hash_of(bytes));
  out.size_bytes = bytes.size();
  out.format = parts.format;
  out.width_px = lies_on_its_side(facts.orientation) ? parts.height_px : parts.width_px;
  out.height_px = lies_on_its_side(facts.orientation) ? parts.width_px : parts.height_px;
  out.taken = facts.taken;
  out.has_location = facts.has_location;
  JAMBLINE_ASSIGN(out.judgement, judge(image, out.width_px, out.height_px));
  if (small) *small = image;
  return out;
}

Result<QImage> decode(ReadBytes bytes, int longest_side_px) {
  JAMBLINE_ASSIGN(const FileParts parts, parts_of(bytes));
  return pixels(bytes, parts, facts_of(bytes, parts).orientation, std::max(1, longest_side_px));
}

job::PictureFacts facts_for_record(const Seen& seen) {
  job::PictureFacts out;
  out.file = seen.file;
  out.size_bytes = static_cast<std::int64_t>(seen.size_bytes);
  out.format = seen.format == Format::Png ? job::PictureFormat::Png : job::PictureFormat::Jpeg;
  out.width_px = seen.width_px;
  out.height_px = seen.height_px;
  if (seen.taken) {
    out.camera_time = seen.taken->local;
    out.camera_offset_min = seen.taken->offset_min;
  }
  out.has_location = seen.has_location;
  out.word = seen.judgement.word;
  out.sharpness = seen.judgement.sharpness;
  out.mean = seen.judgement.mean;
  out.clipped_percent = seen.judgement.clipped_percent;
  return out;
}

}  // namespace jambline::picture
