#include "tests/record/run.h"
#include "tests/record/shop_with_pictures.h"

namespace jambline {
namespace {

std::string bytes(std::initializer_list<int> list) {
  std::string out;
  for (const int one : list) out.push_back(static_cast<char>(one));
  return out;
}

// Exif 2.32: a TIFF whose GPS block says 12 degrees, 34 minutes, 56 seconds north.
const std::string latitude =
    bytes({0, 0, 0, 12, 0, 0, 0, 1, 0, 0, 0, 34, 0, 0, 0, 1, 0, 0, 0, 56, 0, 0, 0, 1});
std::string exif_with_place() {
  return bytes({'E', 'x', 'i', 'f', 0, 0}) + bytes({'M', 'M', 0, 42, 0, 0, 0, 8}) +
         bytes({0, 1, 0x88, 0x25, 0, 4, 0, 0, 0, 1, 0, 0, 0, 26, 0, 0, 0, 0}) +
         bytes({0, 2, 0, 1, 0, 2, 0, 0, 0, 2, 'N', 0, 0, 0}) +
         bytes({0, 2, 0, 5, 0, 0, 0, 3, 0, 0, 0, 56, 0, 0, 0, 0}) + latitude;
}

// ITU-T T.81: eight by eight gray pixels, with Huffman tables of one code each.
const std::string picture = bytes({0xFF, 0xDB, 0, 0x43, 0}) + std::string(64, '\1') +
                            bytes({0xFF, 0xC0, 0, 11, 8, 0, 8, 0, 8, 1, 1, 0x11, 0}) +
                            bytes({0xFF, 0xC4, 0, 20, 0x00, 1}) + std::string(16, '\0') +
                            bytes({0xFF, 0xC4, 0, 20, 0x10, 1}) + std::string(16, '\0') +
                            bytes({0xFF, 0xDA, 0, 8, 1, 1, 0, 0, 63, 0, 0x3F, 0xFF, 0xD9});
std::string jpeg_with_place() {
  const std::string exif = exif_with_place();
  return bytes({0xFF, 0xD8, 0xFF, 0xE1, 0, static_cast<int>(exif.size() + 2)}) + exif + picture;
}

TEST(RecordExportPictures, CopiesSayNothingOfThePlaceAndOriginalsStayAsTheyWere) {
  ShopWithPictures shop;
  const std::string original = jpeg_with_place();
  const Hash file = shop.keep(original, shop.corner());
  const auto to = shop.folder / "for the customer";
  const std::string asked = "pictures k41206 --to '" + to.string() + "'" + shop.at();
  Said said = run(asked);
  EXPECT_EQ(said.code, 0) << said.words;
  expect_words(said, "1 of 1 picture copied");
  const std::string copy = test::whole_file(to / "K-41-206-001-check-in-front-left-corner.jpg");
  EXPECT_EQ(copy.find(latitude), std::string::npos);
  EXPECT_NE(copy.find(picture), std::string::npos) << "what is seen stays byte for byte";
  EXPECT_EQ(test::whole_file(shop.file_of(file)), original);

  said = run(asked);
  EXPECT_EQ(said.code, 1) << "a copy that is there is never written over";
  expect_words(said, "0 of 1 picture copied");
  EXPECT_EQ(run("pictures s88014 --to /" + shop.at()).words, "no pictures of this car\n");
  EXPECT_EQ(run("pictures 999 --to /" + shop.at()).code, 2);
}

TEST(RecordExportPictures, WhatIsNoPictureIsNamedAndTheOthersAreCopied) {
  ShopWithPictures shop;
  shop.keep("no picture at all", shop.hood());
  shop.keep(jpeg_with_place(), shop.corner());
  const auto to = shop.folder / "copies";
  const Said said = run("pictures k41206 --to " + to.string() + shop.at());
  EXPECT_EQ(said.code, 1) << said.words;
  expect_words(said, "inspect, hood: ");
  expect_words(said, "1 of 2 pictures copied");
  EXPECT_TRUE(std::filesystem::exists(to / "K-41-206-002-check-in-front-left-corner.jpg"));
}

}  // namespace
}  // namespace jambline
