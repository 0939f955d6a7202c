// A disk without room under the whole engine: log, list of cars and half-typed forms. That no write
// is half there at any point is shown in tests/crash.
#include "tests/bad_input/full_disk.h"

#include "tests/bad_input/shop_folder.h"

namespace jambline::bad_input {
namespace {

TEST(FullDiskOfAll, EveryActIsRefusedAndReadingGoesOnAndRoomMadeWritesAgain) {
  ShopFolder shop;
  fs::remove(shop.path() / "ballast");
  FullDisk disk;
  auto engine = log::must(shop.open());
  const auto wanted = shop.entries();
  const std::string folds = folds_of(*engine, shop.shop.job);
  disk.full(true);
  fs::remove(shop.path() / "ballast");  // spent before
  for (const auto& command : engine::every_command(shop.shop)) {
    const auto refused = engine::act(*engine, command, shop.shop.ivo);
    ASSERT_FALSE(refused) << command.index();
    EXPECT_EQ(refused.error().code, Code::DiskFull) << command.index();
  }
  EXPECT_EQ(folds_of(*engine, shop.shop.job), folds);
  EXPECT_EQ(shop.entries(), wanted);
  disk.full(false);
  EXPECT_TRUE(engine::act(*engine, acts::WriteNote{shop.shop.job, "room"}, shop.shop.ivo));
  EXPECT_FALSE(engine->snapshot()->trouble);
}

TEST(FullDiskOfAll, TheBallastIsGivenUpForTheActAtHand) {
  ShopFolder shop;
  FullDisk disk;
  const auto engine = log::must(shop.open());
  ASSERT_TRUE(fs::exists(shop.path() / "ballast"));
  disk.full_while_there(shop.path() / "ballast");
  EXPECT_TRUE(engine::act(*engine, acts::StopClock{shop.shop.ivo}, shop.shop.ivo));
  EXPECT_FALSE(fs::exists(shop.path() / "ballast"));
  EXPECT_FALSE(engine->snapshot()->trouble);
}

TEST(FullDiskOfAll, AShopThatWasThereIsShownAndANewOneIsRefusedWhole) {
  ShopFolder shop;
  std::string folds;
  {
    const auto engine = log::must(shop.open());
    folds = folds_of(*engine, shop.shop.job);
  }
  const auto wanted = shop.entries();
  const log::TempFolder empty;
  FullDisk disk;
  disk.full(true);
  const auto fresh = engine::Engine::open(
      {empty.path(), shop.clock, std::make_unique<SeededRandom>(1), "cart 2", {}, {}});
  ASSERT_FALSE(fresh);
  EXPECT_EQ(fresh.error().code, Code::DiskFull);
  EXPECT_FALSE(fs::exists(empty.path() / "log.db"));
  {
    const auto engine = shop.open();
    ASSERT_TRUE(engine) << code_name(engine.error().code);
    EXPECT_EQ(folds_of(**engine, shop.shop.job), folds);
  }
  disk.full(false);
  EXPECT_EQ(shop.entries(), wanted);
}

}  // namespace
}  // namespace jambline::bad_input
