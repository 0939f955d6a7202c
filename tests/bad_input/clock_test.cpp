// The device's clock stands in 1970, goes back by a year, or the device sleeps while work runs.
// That an act is written with a mark, in its order, and hours go by the boot clock: trade/hours.h,
// seal/FORMAT.md. CLOCK_BOOTTIME goes on in suspend: clock_gettime(2).
#include "tests/bad_input/shop_folder.h"

namespace jambline::bad_input {
namespace {

constexpr std::int64_t minute_ms = 60'000;
constexpr std::int64_t year_ms = 365LL * 24 * 60 * minute_ms;

class WrongClock : public testing::Test {
 protected:
  std::unique_ptr<engine::Engine> open() {
    auto engine = log::must(shop.open());
    engine->watch(shop.shop.job);
    engine->drain();
    return engine;
  }
  const folds::OperationView& inspect(engine::Engine& engine) {
    return *engine.snapshot()->car->find(shop.shop.inspect);
  }
  void expect_flag(engine::Engine& engine, std::string_view flag) {
    const auto snapshot = engine.snapshot();
    ASSERT_TRUE(snapshot->trouble) << flag;
    EXPECT_EQ(snapshot->trouble->subject, "clock");
    EXPECT_EQ(snapshot->trouble->arg("flag"), flag);
    EXPECT_FALSE(snapshot->read_only);
  }
  ShopFolder shop;
};

TEST_F(WrongClock, OneOf1970IsSaidAtTheStartAndActsAreWrittenWithAMarkInTheirOrder) {
  shop.clock.moment = {5 * minute_ms, 300'000, BootId{{2}}, 0};
  const auto engine = open();
  expect_flag(*engine, "before_2025");
  const auto wrote = engine::act(*engine, acts::WriteNote{shop.shop.job, "woke up"}, shop.shop.ivo);
  ASSERT_TRUE(wrote);
  EXPECT_TRUE(wrote->entries.front().clock_flags & seal::clock_flag::before_2025);
  expect_flag(*engine, "before_2025");
  // Last in the time line, although its wall clock is the earliest.
  EXPECT_EQ(engine->snapshot()->timeline->back().hash, wrote->entries.front().hash);
  shop.clock.moment.wall_ms = 1'790'000'600'000;
  ASSERT_TRUE(engine::act(*engine, acts::WriteNote{shop.shop.job, "set"}, shop.shop.ivo));
  expect_flag(*engine, "jumped");
  ASSERT_TRUE(engine::act(*engine, acts::WriteNote{shop.shop.job, "right"}, shop.shop.ivo));
  EXPECT_FALSE(engine->snapshot()->trouble);
}

TEST_F(WrongClock, OneThatWentBackAYearWhileWorkRunsChangesNoHours) {
  const auto engine = open();
  shop.clock.advance_ms(30 * minute_ms);
  shop.clock.moment.wall_ms -= year_ms;
  ASSERT_TRUE(engine::act(*engine, acts::StopClock{shop.shop.ivo}, shop.shop.ivo));
  expect_flag(*engine, "stepped_back");
  EXPECT_EQ(inspect(*engine).clocked_ms, 30 * minute_ms);
}

TEST_F(WrongClock, OneThatIsAYearBehindAtTheStartIsSaidBeforeTheFirstAct) {
  shop.clock.moment.wall_ms -= year_ms;
  shop.clock.moment.boot = BootId{{3}};
  const auto engine = open();
  expect_flag(*engine, "stepped_back");
}

TEST_F(WrongClock, SleepWhileWorkRunsCountsAndIsNoDoubt) {
  const auto engine = open();
  shop.clock.advance_ms(8 * 60 * minute_ms);  // both clocks go on in suspend
  ASSERT_TRUE(engine::act(*engine, acts::StopClock{shop.shop.ivo}, shop.shop.ivo));
  EXPECT_FALSE(engine->snapshot()->trouble);
  EXPECT_EQ(inspect(*engine).clocked_ms, 8 * 60 * minute_ms);
}

TEST_F(WrongClock, AWallClockThatStoodStillInSleepIsMarkedAndHoursGoByTheBootClock) {
  const auto engine = open();
  shop.clock.moment.since_boot_ms += 45 * minute_ms;
  ASSERT_TRUE(engine::act(*engine, acts::StopClock{shop.shop.ivo}, shop.shop.ivo));
  expect_flag(*engine, "jumped");
  EXPECT_EQ(inspect(*engine).clocked_ms, 45 * minute_ms);
}

}  // namespace
}  // namespace jambline::bad_input
