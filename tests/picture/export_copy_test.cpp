// The copy that does not say where: read back by Exiv2, and byte by byte.
#include "picture/export_copy.h"

#include <gtest/gtest.h>

#include "picture/file_parts.h"
#include "tests/picture/photo_set.h"
#include "tests/picture/sample_files.h"

namespace jambline::picture {
namespace {

const std::string latitude("\0\0\0\x30\0\0\0\x01\0\0\0\x08\0\0\0\x01\0\0\x04\xD2\0\0\0\x64", 24);

void write_facts(Exiv2::Image& image) {
  image.setByteOrder(Exiv2::bigEndian);
  image.exifData()["Exif.Image.Make"] = "A maker";
  image.exifData()["Exif.Image.Orientation"] = std::uint16_t{6};
  image.exifData()["Exif.Photo.DateTimeOriginal"] = "2026:11:24 15:40:12";
  image.exifData()["Exif.Photo.UserComment"] = "charset=Ascii left door";
  image.exifData()["Exif.GPSInfo.GPSLatitude"] = "48/1 8/1 1234/100";
  image.exifData()["Exif.GPSInfo.GPSLatitudeRef"] = "N";
  image.exifData()["Exif.GPSInfo.GPSLongitude"] = "11/1 34/1 0/1";
  image.iptcData()["Iptc.Application2.City"] = "Anytown";
  image.iptcData()["Iptc.Application2.Caption"] = "left door";
  image.xmpData()["Xmp.photoshop.City"] = "Anytown";
  image.xmpData()["Xmp.exif.GPSLatitude"] = "48,8.2N";
  image.xmpData()["Xmp.dc.creator"] = "A painter";
}

std::string value(Exiv2::Image& image, const char* key) {
  const auto found = image.exifData().findKey(Exiv2::ExifKey(key));
  return found == image.exifData().end() ? "" : found->toString();
}

// All parts of that name, one after the other.
File parts_named(const File& file, const std::string& name) {
  const auto parts = parts_of(file);
  File out;
  for (const FilePart& part : parts->parts)
    if (part.name == name)
      out.insert(out.end(), file.begin() + static_cast<std::ptrdiff_t>(part.at),
                 file.begin() + static_cast<std::ptrdiff_t>(part.at + part.size));
  return out;
}

TEST(ExportCopy, ThePlaceIsGoneAndTheRestIsThere) {
  for (const char* format : {"jpeg", "png"}) {
    const File original = with_facts(encoded(source_picture(0), format), write_facts);
    ASSERT_TRUE(look_at(original)->has_location) << format;
    const auto copy = without_location(original);
    ASSERT_TRUE(copy) << format;
    const auto seen = look_at(*copy);
    ASSERT_TRUE(seen) << format;
    EXPECT_FALSE(seen->has_location) << format;
    EXPECT_EQ(seen->taken->local, "2026-11-24T15:40:12") << format;
    EXPECT_EQ(seen->width_px, 960) << format;  // still upright
    EXPECT_FALSE(contains(*copy, "Anytown")) << format;
    EXPECT_FALSE(contains(*copy, "48,8.2N")) << format;
    const auto image = Exiv2::ImageFactory::open(copy->data(), static_cast<long>(copy->size()));
    image->readMetadata();
    EXPECT_EQ(value(*image, "Exif.Image.Make"), "A maker") << format;
    EXPECT_EQ(value(*image, "Exif.Photo.UserComment"), "charset=Ascii left door") << format;
    EXPECT_EQ(image->iptcData()["Iptc.Application2.Caption"].toString(), "left door") << format;
    EXPECT_EQ(image->xmpData()["Xmp.dc.creator"].toString(), "A painter") << format;
    for (const char* name : {"DA", "DB", "C0", "C4", "E0", "IHDR", "IDAT"})
      EXPECT_EQ(parts_named(*copy, name), parts_named(original, name)) << format << ' ' << name;
  }
}

TEST(ExportCopy, TheBytesOfThePlaceAreNowhereInTheCopy) {
  const File original = with_facts(as_jpeg(source_picture(0)), write_facts);
  ASSERT_TRUE(contains(original, latitude));
  EXPECT_FALSE(contains(*without_location(original), latitude));
}

TEST(ExportCopy, APictureWithoutAPlaceIsTheSameBytes) {
  const File plain = as_jpeg(source_picture(0));
  EXPECT_EQ(*without_location(plain), plain);
  const File dated = with_facts(plain, [](Exiv2::Image& image) {
    image.exifData()["Exif.Photo.DateTimeOriginal"] = "2026:11:24 15:40:12";
  });
  EXPECT_EQ(*without_location(dated), dated);
}

TEST(ExportCopy, WhatFollowsThePictureIsLeftOut) {
  const File plain = as_jpeg(source_picture(0));
  File longer = plain;
  const File second = with_facts(as_jpeg(source_picture(1)), write_facts);
  longer.insert(longer.end(), second.begin(), second.end());
  EXPECT_EQ(*without_location(longer), plain);
}

TEST(ExportCopy, ASecondExifPartDoesNotHideAPlace) {
  const File original = with_facts(as_jpeg(source_picture(0)), write_facts);
  const auto parts = parts_of(original);
  File twice(original.begin(), original.begin() + 2);
  for (const FilePart& part : parts->parts)
    for (int count = part.name == "E1" ? 2 : 1; count > 0; --count)
      twice.insert(twice.end(), original.begin() + static_cast<std::ptrdiff_t>(part.at),
                   original.begin() + static_cast<std::ptrdiff_t>(part.at + part.size));
  twice.insert(twice.end(), {0xFF, 0xD9});
  const auto copy = without_location(twice);
  ASSERT_TRUE(copy);
  EXPECT_FALSE(contains(*copy, latitude));
  EXPECT_FALSE(contains(*copy, "48,8.2N"));
}

TEST(ExportCopy, WhatIsNoPictureIsRefused) {
  EXPECT_EQ(without_location({}).error().code, Code::Missing);
  EXPECT_EQ(without_location(File{1, 2, 3}).error().arg("cause"), "not a picture");
}

}  // namespace
}  // namespace jambline::picture
