#include "tests/record/run.h"
#include "tests/record/shop_with_pictures.h"

namespace jambline {
namespace {

void write(const std::filesystem::path& file, const std::string& bytes) {
  std::ofstream(file, std::ios::binary | std::ios::trunc) << bytes;
}

TEST(RecordPictures, ShowNamesStageShotPanelWordSizeAndFile) {
  ShopWithPictures shop;
  const Hash corner = shop.keep("a corner of the car", shop.corner());
  const Hash hood = shop.keep(std::string(1234, 'h'), shop.hood(), trade::PhotoWord::Blurred);
  const Said said = run("show k41206" + shop.at());
  EXPECT_EQ(said.code, 0);
  expect_words(said, "\npictures\n  check-in, front left corner: good, 19 bytes, " + corner.hex() +
                         "\n  inspect, hood: blurred, kept by a person, 1,234 bytes, " +
                         hood.hex() + "\n");
  std::filesystem::remove(shop.file_of(hood));
  expect_words(run("show k41206" + shop.at()), hood.hex() + ", not here\n");
}

TEST(RecordPictures, VerifyReadsEveryNamedFileAgain) {
  ShopWithPictures shop;
  shop.keep("a corner of the car", shop.corner());
  shop.keep(std::string(1234, 'h'), shop.hood());
  const Said said = run("verify --quiet " + shop.folder.string());
  EXPECT_EQ(said.code, 0) << said.words;
  expect_words(said, "2 pictures named, 1,253 bytes read again\ngood\n");
}

TEST(RecordPictures, VerifyNamesWhatIsDamagedAndWhatIsMissingAndEndsWithOne) {
  ShopWithPictures shop;
  const Hash corner = shop.keep("a corner of the car", shop.corner());
  const Hash hood = shop.keep(std::string(1234, 'h'), shop.hood());
  write(shop.file_of(corner), "a corner of thE car");
  Said said = run("verify --quiet " + shop.folder.string());
  EXPECT_EQ(said.code, 1) << said.words;
  expect_words(said, "damaged picture: K 41-206, check-in, front left corner, " + corner.hex());
  expect_words(said, "BAD    1 picture is damaged or missing\n");
  std::filesystem::remove(shop.file_of(hood));
  said = run("verify --quiet " + shop.folder.string());
  EXPECT_EQ(said.code, 1) << said.words;
  expect_words(said, "missing picture: K 41-206, inspect, hood, " + hood.hex());
  expect_words(said, "BAD    2 pictures are damaged or missing\n");
  write(shop.file_of(corner), "a corner of the car");
  std::filesystem::remove_all(shop.folder / "blobs");
  said = run("verify --quiet " + shop.folder.string());
  EXPECT_EQ(said.code, 1) << said.words;
  expect_words(said, "2 pictures named, 0 bytes read again\n");
}

}  // namespace
}  // namespace jambline
