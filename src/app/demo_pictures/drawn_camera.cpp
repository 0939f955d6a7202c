#include "app/demo_pictures/drawn_camera.h"

#include <QBuffer>
#include <exiv2/exiv2.hpp>
#include <future>
#include <memory>

#include "app/demo_pictures/painting.h"
#include "blobs/blob_store.h"
#include "picture/read.h"

namespace jambline::demo {

namespace {
constexpr int jpeg_quality = 82;

struct Kept {
  blobs::PosixFiles files;
  std::unique_ptr<blobs::BlobStore> store;
};

// "2026-11-24T15:40:12" as Exif writes it.
std::string exif_time(std::string text) {
  for (char& sign : text)
    if (sign == '-') sign = ':';
  if (text.size() > 10) text[10] = ' ';
  return text;
}

std::string exif_offset(int offset_min) {
  char out[8];
  std::snprintf(out, sizeof out, "%c%02d:%02d", offset_min < 0 ? '-' : '+',
                std::abs(offset_min) / 60 % 100, std::abs(offset_min) % 60);
  return out;
}

Result<std::vector<std::uint8_t>> with_exif(const QByteArray& jpeg, const PictureWish& wish) {
  try {
    const auto file = Exiv2::ImageFactory::open(
        reinterpret_cast<const Exiv2::byte*>(jpeg.constData()), static_cast<long>(jpeg.size()));
    Exiv2::ExifData exif;
    exif["Exif.Photo.DateTimeOriginal"] = exif_time(wish.camera_time);
    exif["Exif.Photo.OffsetTimeOriginal"] = exif_offset(wish.offset_min);
    if (wish.says_place) {
      exif["Exif.GPSInfo.GPSLatitudeRef"] = "N";
      exif["Exif.GPSInfo.GPSLatitude"] = "41/1 20/1 0/1";
      exif["Exif.GPSInfo.GPSLongitudeRef"] = "W";
      exif["Exif.GPSInfo.GPSLongitude"] = "41/1 10/1 0/1";
    }
    file->setExifData(exif);
    file->writeMetadata();
    auto& io = file->io();
    io.open();
    std::vector<std::uint8_t> out(io.size());
    io.read(out.data(), static_cast<long>(out.size()));
    return out;
  } catch (const Exiv2::AnyError& refused) {
    return fail(Error{Code::FileFailed, "draw a picture", "picture", {{"cause", refused.what()}}});
  }
}

}  // namespace

Result<std::vector<std::uint8_t>> drawn_picture(const PictureWish& wish) {
  QByteArray jpeg;
  QBuffer buffer(&jpeg);
  if (!buffer.open(QIODevice::WriteOnly) || !painting_of(wish).save(&buffer, "jpg", jpeg_quality))
    return fail(Code::FileFailed, "draw a picture", "picture");
  return with_exif(jpeg, wish);
}

Result<Camera> drawn_camera(const std::filesystem::path& folder) {
  const auto kept = std::make_shared<Kept>();
  JAMBLINE_ASSIGN(kept->store, blobs::BlobStore::open(kept->files, folder / "blobs"));
  return Camera([kept](const PictureWish& wish) -> Result<job::PictureFacts> {
    JAMBLINE_ASSIGN(const auto bytes, drawn_picture(wish));
    // The disk works while the picture is judged.
    auto put = std::async(std::launch::async, [&] { return kept->store->put(bytes); });
    const auto seen = picture::look_at(bytes);
    JAMBLINE_TRY(put.get());
    if (!seen) return fail(seen.error());
    return picture::facts_for_record(*seen);
  });
}

}  // namespace jambline::demo
