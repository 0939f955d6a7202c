// Files that are no picture, broken ones and ones too large: an error by name, never a crash.
#include <gtest/gtest.h>

#include "picture/export_copy.h"
#include "picture/file_parts.h"
#include "picture/read.h"
#include "tests/picture/sample_files.h"

namespace jambline::picture {
namespace {

Error error_of(const File& file) {
  const auto seen = look_at(file);
  EXPECT_FALSE(seen);
  const auto image = decode(file, 320);
  EXPECT_FALSE(image);
  if (seen || image) return {};
  EXPECT_EQ(seen.error(), image.error());
  return seen.error();
}

File of(const std::string& text) {
  return {text.begin(), text.end()};
}

void put(File& file, std::size_t at, std::uint32_t value, int bytes) {
  for (int i = 0; i < bytes; ++i)
    file[at + static_cast<std::size_t>(i)] =
        static_cast<std::uint8_t>(value >> (8U * static_cast<unsigned>(bytes - 1 - i)));
}

TEST(PictureBadInput, AnEmptyFileIsMissing) {
  EXPECT_EQ(error_of({}).code, Code::Missing);
}

TEST(PictureBadInput, OtherKindsAreNamed) {
  const std::vector<std::pair<std::string, std::string>> kinds{
      {"GIF89a\x01\x02\x03", "gif"},
      {std::string("RIFF\x20\0\0\0WEBPVP8 ", 16), "webp"},
      {std::string("\0\0\0\x18"
                   "ftypheic\0\0\0\0",
                   16),
       "heic"},
      {std::string("\0\0\0\x18"
                   "ftypavif\0\0\0\0",
                   16),
       "avif"},
      {std::string("\0\0\0\x18"
                   "ftypisom\0\0\0\0",
                   16),
       "film"},
      {std::string("II*\0\x08\0\0\0", 8), "tiff"},
      {"BM......", "bmp"},
      {"%PDF-1.7", "pdf"}};
  for (const auto& [bytes, format] : kinds) {
    const Error error = error_of(of(bytes));
    EXPECT_EQ(error.code, Code::Malformed);
    EXPECT_EQ(error.arg("cause"), "format");
    EXPECT_EQ(error.arg("format"), format);
  }
  EXPECT_EQ(error_of(of("Dear customer,")).arg("cause"), "not a picture");
  EXPECT_EQ(error_of(File(1 << 20)).arg("cause"), "not a picture");
}

TEST(PictureBadInput, WhatMovesIsNoPicture) {
  EXPECT_EQ(error_of(of("GIF89a......!\xFF\x0BNETSCAPE2.0")).arg("cause"), "animated");
  std::string webp("RIFF\x20\0\0\0WEBPVP8X\x0A\0\0\0\x02\0\0\0", 24);
  EXPECT_EQ(error_of(of(webp)).arg("cause"), "animated");
  // The PNG specification: a chunk acTL before the pixels makes it an animation.
  File png = encoded(four_corners(64, 64), "png");
  const std::string chunk(
      "\0\0\0\x08"
      "acTL\0\0\0\x02\0\0\0\0\0\0\0\0",
      20);
  png.insert(png.begin() + 33, chunk.begin(), chunk.end());
  EXPECT_EQ(error_of(png).arg("cause"), "animated");
}

TEST(PictureBadInput, AHeaderOf200MegapixelsIsRefusedBeforeAPixelIsMade) {
  File png = encoded(four_corners(64, 64), "png");
  put(png, 16, 20'000, 4);
  put(png, 20, 10'000, 4);
  const Error error = error_of(png);
  EXPECT_EQ(error.code, Code::TooLarge);
  EXPECT_EQ(error.arg("is"), "200000000");
  EXPECT_EQ(error.arg("limit"), "120000000");
  EXPECT_EQ(error.arg("unit"), "px");
}

// A real one, small as a file: every block of it is the same gray.
TEST(PictureBadInput, ARealJpegOf200MegapixelsIsTooLarge) {
  QImage gray(14'200, 14'200, QImage::Format_Grayscale8);
  gray.fill(128);
  const File file = encoded(gray, "jpeg", 30);
  const Error error = error_of(file);
  EXPECT_EQ(error.code, Code::TooLarge);
  EXPECT_EQ(error.arg("is"), "201640000");
}

TEST(PictureBadInput, ARealJpegUnderTheLimitIsTaken) {
  QImage gray(10'000, 11'000, QImage::Format_Grayscale8);
  gray.fill(128);
  const auto seen = look_at(encoded(gray, "jpeg", 30));
  ASSERT_TRUE(seen);
  EXPECT_EQ(seen->height_px, 11'000);
}

TEST(PictureBadInput, AFileOverItsLimitIsTooLarge) {
  File file = encoded(four_corners(64, 64), "jpeg");
  file.resize(most_bytes + 1);
  const Error error = error_of(file);
  EXPECT_EQ(error.code, Code::TooLarge);
  EXPECT_EQ(error.arg("unit"), "byte");
}

TEST(PictureBadInput, ACutFileIsBrokenWhereverItIsCut) {
  for (const char* format : {"jpeg", "png"}) {
    const File whole = encoded(four_corners(200, 150), format);
    for (const std::size_t left :
         {std::size_t{3}, std::size_t{30}, whole.size() / 2, whole.size() - 5, whole.size() - 1}) {
      const File cut(whole.begin(), whole.begin() + static_cast<std::ptrdiff_t>(left));
      const std::string_view cause = format[0] == 'p' && left == 3 ? "not a picture" : "broken";
      EXPECT_EQ(error_of(cut).arg("cause"), cause) << format << ' ' << left;
    }
  }
}

TEST(PictureBadInput, ADamagedPngIsBroken) {
  File png = encoded(four_corners(200, 150), "png");
  png[png.size() / 2] ^= 0x55;
  EXPECT_EQ(error_of(png).arg("cause"), "broken");
}

TEST(PictureBadInput, BrokenExifIsNoReasonToRefuseAPicture) {
  const File plain = encoded(four_corners(160, 120), "jpeg");
  const File good = with_facts(plain, [](Exiv2::Image& image) {
    image.exifData()["Exif.Image.Orientation"] = std::uint16_t{6};
    image.exifData()["Exif.Photo.DateTimeOriginal"] = "2026:11:24 15:40:12";
    image.exifData()["Exif.GPSInfo.GPSLatitude"] = "48/1 8/1 0/1";
  });
  const auto parts = parts_of(good);
  const auto exif = std::find_if(parts->parts.begin(), parts->parts.end(),
                                 [](const FilePart& part) { return part.name == "E1"; });
  ASSERT_NE(exif, parts->parts.end());
  for (std::size_t at = exif->at + 4; at < exif->at + exif->size; ++at) {
    File file = good;
    file[at] ^= 0xFF;
    const auto seen = look_at(file);
    ASSERT_TRUE(seen) << at;
    EXPECT_EQ(seen->width_px + seen->height_px, 280) << at;
    const auto copy = without_location(file);
    if (copy)
      EXPECT_FALSE(look_at(*copy)->has_location) << at;
    else
      EXPECT_EQ(copy.error().arg("cause"), "location") << at;
  }
}

}  // namespace
}  // namespace jambline::picture
