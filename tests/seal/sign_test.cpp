#include <fstream>
#include <gtest/gtest.h>
#include <sys/stat.h>

#include "seal/fingerprint.h"
#include "tests/log/log_folder.h"
#include "tests/seal/format_examples.h"

namespace jambline::seal {
namespace {

using log::TempFolder;

TEST(DeviceKey, SavedAndLoadedItIsTheSameAndOnlyTheOwnerMayRead) {
  const TempFolder folder;
  const auto file = folder.path() / "device.key";
  SeededRandom random(3);
  const SigningKey key = SigningKey::make(random);
  ASSERT_TRUE(key.save(file));
  struct stat about {};
  ASSERT_EQ(stat(file.c_str(), &about), 0);
  EXPECT_EQ(about.st_mode & 0777U, 0600U);
  const auto loaded = SigningKey::load(file);
  ASSERT_TRUE(loaded);
  EXPECT_EQ(loaded->key(), key.key());
  EXPECT_TRUE(verify(key.key(), Hash{}.bytes, loaded->sign(Hash{})));
}

TEST(DeviceKey, AnOldOneIsNeverWrittenOver) {
  const TempFolder folder;
  const auto file = folder.path() / "device.key";
  ASSERT_TRUE(founder().save(file));
  EXPECT_FALSE(second().save(file));
  EXPECT_EQ(SigningKey::load(file)->key(), founder().key());
}

TEST(DeviceKey, AMissingOrSpoiltFileIsSaidSo) {
  const TempFolder folder;
  EXPECT_EQ(SigningKey::load(folder.path() / "none").error().code, Code::NoSuchFile);
  for (const char* text : {"", "\n", "00", "zz", "9d61b19deffd5a60ba844af492ec2cc4"}) {
    const auto file = folder.path() / "spoilt";
    std::ofstream(file, std::ios::trunc) << text;
    EXPECT_EQ(SigningKey::load(file).error().code, Code::Malformed) << text;
  }
}

TEST(Fingerprint, IsReadBackHoweverPeopleTypeIt) {
  const ShopId shop = example_header().shop;
  EXPECT_EQ(fingerprint(shop), "c677-eaf6-7568-43df-b3dc-dd48-370c-772b");
  EXPECT_EQ(parse_fingerprint("C677 EAF6 7568 43DF b3dcdd48370c772b"), shop);
  EXPECT_FALSE(parse_fingerprint("c677-eaf6"));
  EXPECT_FALSE(parse_fingerprint(""));
}

}  // namespace
}  // namespace jambline::seal
