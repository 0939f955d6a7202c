// What a picture file is: Exif written by Exiv2, corners by the table of Exif 2.32 (tag
// Orientation).
#include "picture/read.h"

#include <atomic>
#include <gtest/gtest.h>
#include <thread>

#include "blobs/hasher.h"
#include "picture/export_copy.h"
#include "tests/picture/photo_set.h"
#include "tests/picture/sample_files.h"

namespace jambline::picture {
namespace {

File with_exif(const File& file, std::vector<std::pair<const char*, const char*>> tags) {
  return with_facts(file, [&](Exiv2::Image& image) {
    for (const auto& [key, text] : tags) image.exifData()[key] = std::string(text);
  });
}

char corner(const QImage& image, bool right, bool low) {
  const QRgb at = image.pixel(right ? image.width() * 3 / 4 : image.width() / 4,
                              low ? image.height() * 3 / 4 : image.height() / 4);
  const bool red = qRed(at) > 128;
  const bool green = qGreen(at) > 128;
  const bool blue = qBlue(at) > 128;
  return red && green && blue ? 'W' : red ? 'R' : green ? 'G' : blue ? 'B' : '?';
}

std::string corners(const QImage& image) {
  return {corner(image, false, false), corner(image, true, false), corner(image, false, true),
          corner(image, true, true)};
}

TEST(PictureRead, JpegAndPngAreKnownByTheirBytes) {
  const QImage image = four_corners(160, 120);
  const auto jpeg = look_at(encoded(image, "jpeg"));
  ASSERT_TRUE(jpeg);
  EXPECT_EQ(jpeg->format, Format::Jpeg);
  const File png = encoded(image, "png");  // whatever its name says, even .jpg
  const auto seen = look_at(png);
  ASSERT_TRUE(seen);
  EXPECT_EQ(seen->format, Format::Png);
  EXPECT_EQ(seen->width_px, 160);
  EXPECT_EQ(seen->height_px, 120);
  EXPECT_EQ(seen->size_bytes, png.size());
  EXPECT_FALSE(seen->taken);
  EXPECT_FALSE(seen->has_location);
  blobs::Hasher hasher;
  hasher.update(png);
  EXPECT_EQ(seen->file, *hasher.finish());
  EXPECT_EQ(corners(*decode(png, 80)), "RGBW");
}

// Exif 2.32, tag 0112: where the stored row 0 and column 0 belong when the picture is looked at.
TEST(PictureRead, EachOfTheEightOrientationsComesOutUpright) {
  const std::array<const char*, 8> upright{"RGBW", "GRWB", "WBGR", "BWRG",
                                           "RBGW", "BRWG", "WGBR", "GWRB"};
  const File plain = encoded(four_corners(160, 120), "jpeg", 95);
  for (std::size_t i = 0; i < upright.size(); ++i) {
    const std::string way = std::to_string(i + 1);
    const File file = with_exif(plain, {{"Exif.Image.Orientation", way.c_str()}});
    const auto seen = look_at(file);
    ASSERT_TRUE(seen);
    EXPECT_EQ(seen->width_px, i < 4 ? 160 : 120) << way;
    EXPECT_EQ(seen->height_px, i < 4 ? 120 : 160) << way;
    const auto image = decode(file, 100);
    ASSERT_TRUE(image);
    EXPECT_EQ(corners(*image), upright[i]) << way;
    EXPECT_EQ(image->size(), i < 4 ? QSize(100, 75) : QSize(75, 100)) << way;
  }
}

TEST(PictureRead, TheCamerasOwnTimeAndItsOffsetAreReported) {
  const File plain = encoded(four_corners(160, 120), "jpeg");
  const auto taken = [&](std::vector<std::pair<const char*, const char*>> tags) {
    return look_at(with_exif(plain, std::move(tags)))->taken;
  };
  EXPECT_EQ(taken({{"Exif.Photo.DateTimeOriginal", "2026:11:24 15:40:12"},
                   {"Exif.Photo.OffsetTimeOriginal", "-05:30"}}),
            (Taken{"2026-11-24T15:40:12", -330}));
  EXPECT_EQ(taken({{"Exif.Photo.DateTimeOriginal", "2025:11:24 15:40:12"}}),  // a year off
            (Taken{"2025-11-24T15:40:12", {}}));
  EXPECT_EQ(taken({{"Exif.Photo.DateTimeDigitized", "2026:02:28 00:00:00"},
                   {"Exif.Photo.OffsetTimeDigitized", "+02:00"}}),
            (Taken{"2026-02-28T00:00:00", 120}));
  for (const char* wrong : {"0000:00:00 00:00:00", "2026:02:30 10:00:00", "2026:11:24 25:00:00",
                            "yesterday, at noon ", "                   "})
    EXPECT_EQ(taken({{"Exif.Photo.DateTimeOriginal", wrong}}), std::nullopt) << wrong;
  const File xmp = with_facts(plain, [](Exiv2::Image& image) {
    image.xmpData()["Xmp.xmp.CreateDate"] = "2026-11-24T15:40:12.25+02:00";
  });
  EXPECT_EQ(look_at(xmp)->taken, (Taken{"2026-11-24T15:40:12", 120}));
}

TEST(PictureRead, APlaceInExifXmpOrIptcIsNoticed) {
  const File plain = encoded(four_corners(160, 120), "jpeg");
  EXPECT_TRUE(
      look_at(with_exif(plain, {{"Exif.GPSInfo.GPSLatitude", "48/1 8/1 0/1"}}))->has_location);
  EXPECT_FALSE(
      look_at(with_exif(plain, {{"Exif.GPSInfo.GPSDateStamp", "2026:11:24"}}))->has_location);
  EXPECT_TRUE(look_at(with_facts(plain, [](Exiv2::Image& image) {
                image.iptcData()["Iptc.Application2.City"] = "Anytown";
              }))->has_location);
  EXPECT_TRUE(look_at(with_facts(plain, [](Exiv2::Image& image) {
                image.xmpData()["Xmp.photoshop.City"] = "Anytown";
              }))->has_location);
}

TEST(PictureRead, SeveralThreadsReadAtOnce) {
  const File file = with_facts(encoded(four_corners(160, 120), "jpeg"), [](Exiv2::Image& image) {
    Exiv2::XmpProperties::registerNs("http://example.org/painted/", "painted");
    image.xmpData()["Xmp.painted.GpsLatitude"] = "48,8.2N";
    image.xmpData()["Xmp.xmp.CreateDate"] = "2026-11-24T15:40:12+02:00";
  });
  std::atomic<int> right = 0;
  std::vector<std::thread> threads;
  for (int i = 0; i < 4; ++i)
    threads.emplace_back([&] {
      for (int round = 0; round < 100; ++round) {
        const auto seen = look_at(file);
        const bool told =
            seen && seen->has_location && seen->taken == Taken{"2026-11-24T15:40:12", 120};
        const auto copy = without_location(file);
        right += told && copy && !look_at(*copy)->has_location ? 1 : 0;
      }
    });
  for (auto& thread : threads) thread.join();
  EXPECT_EQ(right, 400);
}

TEST(PictureRead, TheScaledDecodeIsHandedOutForPreviews) {
  QImage small;
  const File file = as_jpeg(source_picture(1).scaled(2560, 1920));
  const auto seen = look_at(file, &small);
  ASSERT_TRUE(seen);
  EXPECT_EQ(small.size(), QSize(1280, 960));
  EXPECT_EQ(seen->width_px, 2560);
  EXPECT_EQ(seen->judgement.word, trade::PhotoWord::Good);
  EXPECT_EQ(decode(file, 5000)->size(), QSize(2560, 1920));  // never enlarged
}

TEST(PictureRead, WhatIsTransparentLiesOnWhite) {
  QImage clear(64, 64, QImage::Format_ARGB32);
  clear.fill(Qt::transparent);
  EXPECT_EQ(decode(encoded(clear, "png"), 64)->pixel(10, 10), 0xffffffff);
}

TEST(PictureRead, APictureOfFewPixelsIsTooSmallAsProof) {
  EXPECT_EQ(look_at(as_jpeg(source_picture(1).scaled(1024, 768)))->judgement.word,
            trade::PhotoWord::TooSmall);
  EXPECT_EQ(look_at(encoded(four_corners(2, 900), "png"))->judgement.word,
            trade::PhotoWord::TooSmall);
}

}  // namespace
}  // namespace jambline::picture
