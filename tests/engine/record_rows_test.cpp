// The rows of all cars, once a screen wants them, follow every act and are the same as after a
// restart.
#include <gtest/gtest.h>

#include "base/json.h"
#include "tests/engine/every_command.h"
#include "tests/log/log_folder.h"

namespace jambline::engine {
namespace {

TEST(RecordRows, FollowEveryActAndAreTheSameAfterARestart) {
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
  furnish(*engine, shop);
  engine->want_record();
  engine->drain();
  ASSERT_EQ(engine->snapshot()->record->size(), 1U);

  std::vector<JobId> jobs;
  for (int car = 0; car < 3; ++car) {
    clock.moment.wall_ms += 60'000;
    clock.moment.since_boot_ms += 60'000;
    const auto opened = act(*engine, car_to_open(), shop.ivo);
    ASSERT_TRUE(opened);
    jobs.push_back(opened->job);
    engine->drain();
    ASSERT_EQ(engine->snapshot()->record->size(), 2U + static_cast<unsigned>(car));
    EXPECT_EQ(engine->snapshot()->record->front().job, jobs.back()) << "the newest stands first";
  }
  clock.moment.wall_ms += 60'000;
  ASSERT_TRUE(act(*engine, acts::Deliver{jobs[1]}, shop.ivo));
  engine->drain();
  const auto& rows = *engine->snapshot()->record;
  ASSERT_EQ(rows.size(), 4U);
  EXPECT_TRUE(rows[1].delivered_ms) << "a delivered car keeps its place";
  const std::string before = to_json(rows);

  engine.reset();
  engine = open();
  engine->want_record();
  engine->drain();
  EXPECT_EQ(to_json(*engine->snapshot()->record), before);
}

}  // namespace
}  // namespace jambline::engine
