// The rows and the lessons of all cars, once a screen wants them, follow every act and are the same
// as after a restart, with a shelf and without.
#include <gtest/gtest.h>

#include "base/json.h"
#include "tests/engine/every_command.h"
#include "tests/log/log_folder.h"

namespace jambline::engine {
namespace {

// A car with open points goes when somebody has signed for them.
acts::Sign signed_for(const JobId& job) {
  return {job, job::SignedFor::Delivery, "A. Quince", {{{{0.1, 0.5}, {0.9, 0.5}}}}};
}

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
  furnish(*engine, clock, shop);
  engine->want_record();
  engine->drain();
  ASSERT_EQ(engine->snapshot()->record->size(), 2U);

  std::vector<JobId> jobs;
  for (int car = 0; car < 3; ++car) {
    clock.moment.wall_ms += 60'000;
    clock.moment.since_boot_ms += 60'000;
    const auto opened = act(*engine, car_to_open(), shop.ivo);
    ASSERT_TRUE(opened);
    jobs.push_back(opened->job);
    engine->drain();
    ASSERT_EQ(engine->snapshot()->record->size(), 3U + static_cast<unsigned>(car));
    EXPECT_EQ(engine->snapshot()->record->front().job, jobs.back()) << "the newest stands first";
  }
  clock.moment.wall_ms += 60'000;
  ASSERT_TRUE(act(*engine, signed_for(jobs[1]), shop.ivo));
  ASSERT_TRUE(act(*engine, acts::Deliver{jobs[1]}, shop.ivo));
  engine->drain();
  const auto& rows = *engine->snapshot()->record;
  ASSERT_EQ(rows.size(), 5U);
  EXPECT_TRUE(rows[1].delivered_ms) << "a delivered car keeps its place";
  const std::string before = to_json(rows);

  engine.reset();
  engine = open();
  engine->want_record();
  engine->drain();
  EXPECT_EQ(to_json(*engine->snapshot()->record), before);
}

std::string lessons_of(Engine& engine) {
  engine.want_lessons();
  do engine.drain();
  while (!engine.snapshot()->lessons);
  return to_json(*engine.snapshot()->lessons);
}

TEST(RecordRows, LessonsFollowEveryActAndAreTheSameWithAShelfFromTheLogAndWithout) {
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
  EXPECT_FALSE(engine->snapshot()->lessons) << "nobody asked";
  constexpr int more_than_one_part = 270;
  for (int car = 0; car < more_than_one_part; ++car)
    engine->post(car_to_open(), shop.ivo, [](const auto& opened) { ASSERT_TRUE(opened); });
  (void)lessons_of(*engine);
  ASSERT_EQ(engine->snapshot()->lessons->size(), 2U + more_than_one_part);
  const auto nibs = [&] {
    for (const auto& lesson : *engine->snapshot()->lessons)
      if (lesson.job == shop.job) return lesson.nibs;
    return std::int64_t{-1};
  };
  EXPECT_EQ(nibs(), 1);
  ASSERT_TRUE(act(*engine, acts::PlaceMark{shop.job, job::Panel::Hood, shop.x_mm, shop.y_mm + 20},
                  shop.ivo));
  engine->drain();
  EXPECT_EQ(nibs(), 2);
  const auto list = engine->snapshot()->lessons;
  ASSERT_TRUE(act(*engine, acts::WriteNote{shop.job, "n"}, shop.ivo));
  engine->drain();
  EXPECT_EQ(engine->snapshot()->lessons, list) << "a note teaches nothing";
  const std::string before = to_json(*list);

  engine.reset();
  engine = open();
  EXPECT_EQ(lessons_of(*engine), before);
  ASSERT_TRUE(act(*engine, signed_for(shop.job), shop.ivo));
  ASSERT_TRUE(act(*engine, acts::Deliver{shop.job}, shop.ivo));
  engine->drain();
  EXPECT_EQ(to_json(*engine->snapshot()->lessons), before);

  engine.reset();
  for (const char* ending : {"", "-wal", "-shm"})
    std::filesystem::remove(folder.path() / (std::string("shelf.db") + ending));
  engine = open();
  EXPECT_EQ(lessons_of(*engine), before) << "folded from the log";

  engine.reset();
  for (const char* ending : {"", "-wal", "-shm"})
    std::filesystem::remove(folder.path() / (std::string("shelf.db") + ending));
  std::filesystem::create_directory(folder.path() / "shelf.db");
  engine = open();
  EXPECT_EQ(lessons_of(*engine), before) << "without a shelf";
}

}  // namespace
}  // namespace jambline::engine
