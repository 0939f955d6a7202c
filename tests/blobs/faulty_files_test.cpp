// The broken disk itself: a model that forgives too much would prove nothing.
#include "tests/blobs/faulty_files.h"

#include <gtest/gtest.h>

namespace jambline::test {
namespace {

const std::vector<std::uint8_t> some(2000, 7);

bool is_there(FaultyFiles& files, const char* path) {
  return files.size_bytes(path).has_value();
}

TEST(FaultyFiles, UnsyncedBytesAreGoneAndUnsyncedNamesToo) {
  FaultyFiles files;
  auto writer = files.create("/a");
  ASSERT_TRUE((*writer)->write(some));
  EXPECT_FALSE(is_there(*files.after_power_loss(Loss::Dropped, 1), "/a"));
  ASSERT_TRUE(files.sync_folder("/"));
  auto empty = files.after_power_loss(Loss::Dropped, 1);
  EXPECT_EQ(empty->size_bytes("/a").value(), 0U);
  ASSERT_TRUE((*writer)->sync());
  EXPECT_EQ(files.after_power_loss(Loss::Dropped, 1)->size_bytes("/a").value(), some.size());
}

TEST(FaultyFiles, ARenameThatWasNotSyncedMayBeHalfThere) {
  FaultyFiles files;
  ASSERT_TRUE(files.make_folder("/x"));
  ASSERT_TRUE(files.make_folder("/y"));
  ASSERT_TRUE(files.create("/x/a"));
  for (const char* folder : {"/", "/x", "/y"}) ASSERT_TRUE(files.sync_folder(folder));
  ASSERT_TRUE(files.rename("/x/a", "/y/a"));
  bool both = false, neither = false;
  for (std::uint64_t seed = 0; seed < 64; ++seed) {
    auto next = files.after_power_loss(Loss::Torn, seed);
    const bool here = is_there(*next, "/x/a"), there = is_there(*next, "/y/a");
    both = both || (here && there);
    neither = neither || (!here && !there);
  }
  EXPECT_TRUE(both);
  EXPECT_TRUE(neither);
}

TEST(FaultyFiles, ATornFileIsNeitherWholeNorGone) {
  FaultyFiles files;
  auto writer = files.create("/a");
  ASSERT_TRUE((*writer)->write(some));
  ASSERT_TRUE(files.sync_folder("/"));
  int torn = 0;
  for (std::uint64_t seed = 0; seed < 64; ++seed) {
    const auto size = files.after_power_loss(Loss::Torn, seed)->size_bytes("/a").value();
    torn += size > 0 && size < some.size() ? 1 : 0;
  }
  EXPECT_GT(torn, 32);
}

TEST(FaultyFiles, AfterPowerOffNothingHappens) {
  FaultyFiles files;
  files.power_off_at(2);
  EXPECT_TRUE(files.make_folder("/x"));
  EXPECT_FALSE(files.make_folder("/y"));
  EXPECT_FALSE(files.make_folder("/z"));
  EXPECT_EQ(files.list("/")->size(), 1U);
}

}  // namespace
}  // namespace jambline::test
