// What schedules of faults have found, each shown by itself. Source: FAULTS.md.
#include <gtest/gtest.h>

#include "tests/simulator/world.h"

namespace jambline::simulator {
namespace {

void expect_equal_end(World& world) {
  world.calm();
  if (world.complaints().empty()) judge(world);
  for (const auto& what : world.complaints()) ADD_FAILURE() << what;
}

// The first answer to who speaks to a hub that was put back is that it has no session.
void sync_again(World& world, std::size_t number) {
  for (int i = 0; i < 3; ++i) {
    world.pass_ms(10'000);
    world.sync(number);
  }
}

// Fault 12. A device that goes through the hub's log by what it has itself was half through it, so
// its place in the hub's count says nothing any more.
TEST(Found, HubPutBackSilentlyWhileADeviceIsHalfThroughItsLog) {
  World world({7});
  world.hub.read_most(1);
  world.backup_hub();
  const std::size_t first_day = genesis().entries.size();
  for (const std::size_t number : {2, 3}) {
    ASSERT_TRUE(world.say_plate(number));
    world.sync(number);
  }
  for (int i = 0; i < 100 && world.device(1).log_size() <= first_day; ++i)
    (void)world.request(1, 1);
  ASSERT_EQ(world.device(1).log_size(), first_day + 1);
  ASSERT_TRUE(world.put_hub_back(/*declared=*/false));
  ASSERT_TRUE(world.say_plate(3));
  sync_again(world, 3);
  sync_again(world, 2);
  ASSERT_EQ(world.hub.entries().size(), first_day + 3);
  expect_equal_end(world);
}

// Fault 12 and 15. What a hub keeps apart of a revoked device is in no count and in no head.
TEST(Found, HubPutBackSilentlyLosesWhatItKeptApart) {
  World world({7});
  ASSERT_TRUE(world.revoke(0, 3));
  world.sync(0);
  world.backup_hub();
  ASSERT_TRUE(world.say_plate(3));
  sync_again(world, 3);
  ASSERT_EQ(world.hub.apart(sim_key(3).device()).size(), 1U);
  ASSERT_TRUE(world.put_hub_back(/*declared=*/false));
  ASSERT_TRUE(world.hub.apart(sim_key(3).device()).empty());
  expect_equal_end(world);
  EXPECT_EQ(world.hub.apart(sim_key(3).device()).size(), 1U);
}

// Fault 12 and 15. The hub that was put back hears of the cut before it hears again what was said
// after it; who has that from before keeps it, and does not obey it.
TEST(Found, HubPutBackHearsOfACutBeforeWhatSomebodyHasAfterIt) {
  World world({7});
  world.backup_hub();
  ASSERT_TRUE(world.say_plate(2));
  const auto plate = world.device(2).entries().back();
  sync_again(world, 2);
  sync_again(world, 1);
  ASSERT_TRUE(world.device(1).knows(plate.hash));
  const std::string as_all_show = fold_text(world.device(0).entries());
  ASSERT_NE(fold_text(world.device(1).entries()), as_all_show);
  ASSERT_TRUE(world.put_hub_back(/*declared=*/true));
  ASSERT_TRUE(world.revoke(0, 2));
  sync_again(world, 0);
  expect_equal_end(world);
  EXPECT_EQ(world.hub.apart(sim_key(2).device()).size(), 1U);
  EXPECT_FALSE(world.device(0).knows(plate.hash));
  ASSERT_TRUE(world.device(1).knows(plate.hash));
  const std::string value = plate.payload.substr(0, plate.payload.find(','));
  ASSERT_NE(value.find("K "), std::string::npos) << plate.payload;
  EXPECT_EQ(fold_text(world.device(1).entries()).find(value), std::string::npos);
}

}  // namespace
}  // namespace jambline::simulator
