#include "base/ids.h"

#include <gtest/gtest.h>
#include <type_traits>
#include <unordered_set>

namespace jambline {
namespace {

TEST(Ids, TextIsLowerCaseHexAndReadsBack) {
  JobId id;
  for (std::size_t i = 0; i < id.bytes.size(); ++i) id.bytes[i] = static_cast<std::uint8_t>(i * 17);
  EXPECT_EQ(id.hex(), "00112233445566778899aabbccddeeff");
  EXPECT_EQ(JobId::parse(id.hex()), id);
  EXPECT_EQ(JobId::parse("00112233445566778899AABBCCDDEEFF"), id);
}

TEST(Ids, TextOfAnotherLengthOrSignIsNoId) {
  for (const char* text :
       {"", "00", "00112233445566778899aabbccddeef", "00112233445566778899aabbccddeeff0",
        "00112233445566778899aabbccddeeff00", "g0112233445566778899aabbccddeeff",
        "0x112233445566778899aabbccddeeff", " 0112233445566778899aabbccddeeff"})
    EXPECT_FALSE(JobId::parse(text)) << text;
  EXPECT_FALSE(JobId::parse(std::string_view("00112233445566778899aabbccddee\0f", 32)));
}

TEST(Ids, AllZeroMeansNone) {
  EXPECT_TRUE(MarkId{}.none());
  EXPECT_FALSE(static_cast<bool>(MarkId{}));
  MarkId id;
  id.bytes[15] = 1;
  EXPECT_TRUE(static_cast<bool>(id));
}

TEST(Ids, OrderIsBytewiseFromTheFront) {
  Hash small;
  Hash large;
  small.bytes[31] = 0xff;
  large.bytes[0] = 1;
  EXPECT_LT(small, large);
  EXPECT_EQ(Hash::size, 32U);
}

TEST(Ids, ATagMakesAnotherType) {
  EXPECT_FALSE((std::is_same_v<JobId, MarkId>));
  EXPECT_FALSE((std::is_convertible_v<JobId, MarkId>));
}

TEST(Ids, HashingTellsThemApart) {
  std::unordered_set<PersonId> people;
  for (int i = 0; i < 200; ++i) {
    PersonId id;
    id.bytes[3] = static_cast<std::uint8_t>(i);
    people.insert(id);
  }
  EXPECT_EQ(people.size(), 200U);
}

}  // namespace
}  // namespace jambline
