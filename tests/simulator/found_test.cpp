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

}  // namespace
}  // namespace jambline::simulator
