// Five devices and a hub, every fault of FAULTS.md that one process can show, in schedules drawn
// from seeds; the oracle is FAULTS.md's. JAMBLINE_SCHEDULES says how many, 150 without it.
#include <cstdlib>
#include <gtest/gtest.h>

#include "tests/simulator/schedule.h"

namespace jambline::simulator {
namespace {

TEST(Simulator, SchedulesOfFaultsEndEqual) {
  const char* wanted = std::getenv("JAMBLINE_SCHEDULES");
  const std::uint64_t schedules = wanted ? std::strtoull(wanted, nullptr, 10) : 150;
  ASSERT_GT(schedules, 0U);
  std::uint64_t acts = 0, mishaps_done = 0;
  std::array<std::uint64_t, met_kinds> met{};
  for (std::uint64_t seed = 1; seed <= schedules; ++seed) {
    const Ran ran = run_schedule(seed);
    for (const auto& what : ran.complaints)
      ADD_FAILURE() << what << "\nagain, step by step: simulator --seed " << seed;
    acts += ran.acts;
    mishaps_done += ran.mishaps;
    for (std::size_t i = 0; i < met_kinds; ++i) met[i] += ran.met[i];
  }
  // Something happened in them.
  EXPECT_GT(acts, 5 * schedules);
  EXPECT_GT(mishaps_done, 5 * schedules);
  if (schedules < 150) return;
  for (std::size_t i = 0; i < met_kinds; ++i)
    EXPECT_GT(met[i], 0U) << "no schedule met fault " << met_rows[i].fault << ": "
                          << met_rows[i].words;
}

}  // namespace
}  // namespace jambline::simulator
