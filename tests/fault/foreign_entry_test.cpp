// Entries of other versions and of nobody. Source: FAULTS.md 16 and 17.
#include "acts/commands.h"
#include "entries/entry.h"
#include "tests/fault/fault_world.h"

namespace jambline::simulator {
namespace {

using F16OtherVersions = SimFault;
TEST_F(F16OtherVersions, AKindFromTheFutureGoesThroughByteForByte) {
  const std::string payload = R"({"hologram":[1,2,3],"spin":"left"})";
  ASSERT_TRUE(world.say_raw(1, {car(), 4711, 7, payload}));
  const auto said = seal::encode(tablet(1).entries().back());
  const Hash hash = tablet(1).entries().back().hash;
  ASSERT_TRUE(note(2, "by an old app, before it knows"));
  settle();
  for (std::size_t i = 0; i < world.devices(); ++i) {
    const auto found = need(tablet(i).log().find(hash), "find");
    ASSERT_TRUE(found) << i;
    EXPECT_EQ(seal::encode(found->entry), said) << i;
  }
  // The car is read-only for who does not understand it; others are not.
  const acts::Command after(acts::WriteNote{car(), "after"});
  EXPECT_FALSE(tablet(2).act(after, world.rosa, world.random));
  EXPECT_TRUE(say(2, {}, entries::RackPlaceAdded{world.random.make<RackId>(), "rack 9"}));
  settle();
}

using F17Poison = SimFault;
TEST_F(F17Poison, StandsInTheWayOfNothingBehindIt) {
  for (int i = 0; i < 40; ++i) {
    (void)world.say_poison(1 + static_cast<std::size_t>(i % 3));
    const auto rack = entries::write(
        entries::RackPlaceAdded{world.random.make<RackId>(), "shelf " + std::to_string(i)});
    ASSERT_TRUE(world.say_raw(1, {{}, rack.kind, rack.schema, rack.payload}));
  }
  settle();
  for (int i = 0; i < 40; ++i) EXPECT_EQ(shown(3, "\"shelf " + std::to_string(i) + "\""), 1U) << i;
}

TEST_F(F17Poison, OneByteOver64KiBIsWrittenNowhere) {
  const std::string most(seal::most_payload_bytes, 'x');
  EXPECT_TRUE(world.say_raw(1, {{}, 4711, 1, most}));
  EXPECT_FALSE(world.say_raw(1, {{}, 4711, 1, most + "x"}));
  settle();
}

}  // namespace
}  // namespace jambline::simulator
