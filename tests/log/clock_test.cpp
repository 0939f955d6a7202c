#include <gtest/gtest.h>

#include "tests/log/log_folder.h"

namespace jambline::log {
namespace {

seal::Header written_at(EntryLog& log, const Moment& moment) {
  SeededRandom random(8);
  const Draft draft = note("tick");
  return must(log.append(key_number(1), {}, {&draft, 1}, moment, random)).front().entry.header;
}

TEST(ClockFlags, A1970ClockIsTakenFlaggedAndOrderStays) {
  const TempFolder folder;
  auto log = small_log(folder.path(), 1);
  const auto before = entries_of(*log).back().header;
  Moment reset = at(2000);
  reset.wall_ms = 0;
  reset.boot.bytes[0] = 8;
  const auto header = written_at(*log, reset);
  EXPECT_EQ(header.clock_flags, seal::clock_flag::before_2025 | seal::clock_flag::stepped_back);
  EXPECT_EQ(header.seq, before.seq + 1);
  EXPECT_GT(header.hlc, before.hlc);
  EXPECT_FALSE(audit(folder.path()).first_bad);
}

TEST(ClockFlags, AJumpShowsAgainstTheBootClockOfTheSameBootOnly) {
  const TempFolder folder;
  auto log = small_log(folder.path(), 0);
  Moment moment = at(60000);
  EXPECT_EQ(written_at(*log, moment).clock_flags, 0);
  moment.wall_ms += 3 * 60 * 1000;  // the wall clock jumps, the boot clock does not
  EXPECT_EQ(written_at(*log, moment).clock_flags, seal::clock_flag::jumped);
  moment.wall_ms += 8LL * 3600 * 1000;  // a night's sleep: both go on
  moment.since_boot_ms += 8ULL * 3600 * 1000;
  EXPECT_EQ(written_at(*log, moment).clock_flags, 0);
  moment.wall_ms += 8LL * 3600 * 1000;
  moment.since_boot_ms = 5;
  moment.boot.bytes[0] = 9;  // a new boot: nothing to compare with
  EXPECT_EQ(written_at(*log, moment).clock_flags, 0);
  moment.wall_ms -= 1;
  EXPECT_EQ(written_at(*log, moment).clock_flags, seal::clock_flag::stepped_back);
}

TEST(ClockFlags, AbsurdClocksAreWrittenAndReadBack) {
  const TempFolder folder;
  auto log = small_log(folder.path(), 0);
  for (const std::int64_t wall : {INT64_MIN, INT64_MAX, std::int64_t{-1}}) {
    Moment moment = at();
    moment.wall_ms = wall;
    moment.since_boot_ms = UINT64_MAX;
    EXPECT_EQ(written_at(*log, moment).wall_ms, wall);
  }
  EXPECT_FALSE(audit(folder.path()).first_bad);
}

}  // namespace
}  // namespace jambline::log
