// Wrong clocks, and two who say different things of one. Source: FAULTS.md 9 to 11.
#include "sync/limits.h"
#include "tests/fault/fault_world.h"

namespace jambline::simulator {
namespace {

using F09ClockWrong = SimFault;
TEST_F(F09ClockWrong, EveryEntryIsTakenAndNobodysClockIsPoisoned) {
  const auto& errors = clock_errors_ms();
  for (std::size_t i = 0; i < 4; ++i) {
    tablet(i).clock.error_ms = errors[i + 1];
    ASSERT_TRUE(note(i, "by clock " + std::to_string(i)));
  }
  tablet(2).clock.error_ms = errors[4];  // it jumps to 1970 while the app runs
  ASSERT_TRUE(note(2, "in 1970"));
  world.hub.clock.error_ms = errors[2];
  settle();
  // The one that is right writes by its own clock, whatever it has heard of the future.
  ASSERT_TRUE(note(0, "now"));
  const auto mine = tablet(0).entries().back().header;
  EXPECT_LT(mine.hlc >> 16U, static_cast<std::uint64_t>(world.time.ms + 86'400'000));
  settle();
  // Flagged, and in the order in which the device wrote them.
  int flagged = 0;
  for (const auto& entry : world.hub.entries()) flagged += entry.header.clock_flags != 0;
  EXPECT_GT(flagged, 0);
}

TEST_F(F09ClockWrong, ALaterEditByASlowClockIsNotLostSilently) {
  tablet(2).clock.error_ms = -2 * 3'600'000LL;
  ASSERT_TRUE(set_plate(1, "EARLY 1"));
  world.sync(1);
  world.sync(2);
  ASSERT_TRUE(set_plate(2, "LATER 2"));
  settle();
  for (std::size_t i = 0; i < 4; ++i) EXPECT_TRUE(shows_plate(i, "LATER 2")) << i;
}

using F10OneFieldTwice = SimFault;
TEST_F(F10OneFieldTwice, AllSeeOneAndNoneIsForgottenInWhateverOrderTheyCome) {
  std::vector<std::size_t> order{1, 2, 3};
  std::set<std::string> winners;
  const JobId job = car();
  do {
    World one({20, false, {}});
    for (const std::size_t i : {1, 2, 3}) {
      one.pass_ms(1000);
      const auto said = entries::write(entries::PlateSet{"PLATE " + std::to_string(i), {}});
      ASSERT_TRUE(one.say_raw(i, {job, said.kind, said.schema, said.payload}));
    }
    for (const auto i : order) one.sync(i);
    one.calm();
    judge(one);
    for (const auto& what : one.complaints()) ADD_FAILURE() << what;
    const std::string text = fold_text(one.hub.entries());
    const auto winner = text.find(R"("plate":")");
    ASSERT_NE(winner, std::string::npos);
    winners.insert(text.substr(winner, 17));
    for (const std::size_t i : {1, 2, 3})
      EXPECT_NE(text.find("PLATE " + std::to_string(i)), std::string::npos) << "lost silently";
  } while (std::next_permutation(order.begin(), order.end()));
  EXPECT_EQ(winners.size(), 1U);
}

using F11DeleteAgainstEdit = SimFault;
TEST_F(F11DeleteAgainstEdit, HalfAYearLaterNothingComesBackAndNothingGoesSilently) {
  ASSERT_TRUE(set_plate(1, "GONE 1"));
  const Hash plate = tablet(1).entries().back().hash;
  world.sync(1);
  world.sync(2);
  world.sync(3);
  // 2 withdraws it; 3 lies in a drawer and has edited what it knew.
  ASSERT_TRUE(say(2, car(), entries::Withdrawn{plate, "by mistake"}));
  ASSERT_TRUE(set_plate(3, "EDITED 3"));
  world.sync(2);
  world.pass_ms(180 * 86'400'000LL);
  world.sync(1);
  EXPECT_FALSE(shows_plate(1, "GONE 1"));
  settle();
  for (std::size_t i = 0; i < 4; ++i) EXPECT_TRUE(shows_plate(i, "EDITED 3")) << i;
}

}  // namespace
}  // namespace jambline::simulator
