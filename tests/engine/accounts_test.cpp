// What cars say to a manager's questions follows every act, and is the same after a restart and
// without a shelf that could be kept.
#include <gtest/gtest.h>

#include "base/json.h"
#include "tests/engine/every_command.h"
#include "tests/log/log_folder.h"

namespace jambline::engine {
namespace {

std::string accounts_of(Engine& engine) {
  std::string out;
  engine.accounts(0, INT64_MAX, {}, [&](const auto& accounts) {
    out = accounts ? to_json(*accounts) : std::string(code_name(accounts.error().code));
  });
  engine.drain();
  return out;
}

TEST(AccountsOfCars, FollowEveryActAndAreTheSameAfterARestart) {
  const log::TempFolder folder;
  FakeClock clock;
  clock.moment = {1'790'000'000'000, 1000, BootId{{1}}, 0};
  std::uint64_t seed = 0;
  const auto open = [&] {
    return log::must(Engine::open(
        {folder.path(), clock, std::make_unique<SeededRandom>(++seed), "cart", {}, {}}));
  };
  auto engine = open();
  SmallShop shop;
  furnish(*engine, clock, shop);
  const std::string furnished = accounts_of(*engine);
  clock.moment.wall_ms += 60'000;
  clock.moment.since_boot_ms += 60'000;
  const auto opened = act(*engine, car_to_open(), shop.ivo);
  ASSERT_TRUE(opened);
  const std::string one_more = accounts_of(*engine);
  EXPECT_NE(one_more, furnished);
  EXPECT_NE(one_more.find(opened->job.hex()), std::string::npos);
  ASSERT_TRUE(act(*engine, acts::SayWait{opened->job, job::WaitReason::Part}, shop.ivo));
  const std::string waits = accounts_of(*engine);
  EXPECT_NE(waits, one_more);
  engine.reset();
  engine = open();
  EXPECT_EQ(accounts_of(*engine), waits);
  engine.reset();
  std::filesystem::remove(folder.path() / "shelf.db");
  engine = open();
  EXPECT_EQ(accounts_of(*engine), waits) << "folded again";
}

}  // namespace
}  // namespace jambline::engine
