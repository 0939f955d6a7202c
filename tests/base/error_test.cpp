#include "base/error.h"

#include <gtest/gtest.h>
#include <set>

namespace jambline {
namespace {

Result<int> half(int number) {
  if (number % 2 != 0) return fail(Error{Code::OutOfRange, "halve", "", {{"field", "number"}}});
  return number / 2;
}

Result<int> quarter(int number) {
  JAMBLINE_ASSIGN(const int once, half(number));
  JAMBLINE_ASSIGN(const int twice, half(once));
  return twice;
}

Status even(int number) {
  JAMBLINE_TRY(half(number));
  return {};
}

TEST(Error, EveryCodeHasItsOwnName) {
  std::set<std::string_view> names;
  for (int i = 0; i <= static_cast<int>(Code::NotYet); ++i)
    names.insert(code_name(static_cast<Code>(i)));
  EXPECT_EQ(names.size(), static_cast<std::size_t>(Code::NotYet) + 1);
  EXPECT_EQ(code_name(Code::DiskFull), "DiskFull");
  EXPECT_EQ(code_name(Code::Unknown), "Unknown");
  EXPECT_EQ(code_name(Code::NotYet), "NotYet");
}

TEST(Error, ArgumentsAreFoundByName) {
  const Error error =
      Error{Code::Malformed, "read", "file", {}}.with("cause", "x").with("place", "7");
  EXPECT_EQ(error.arg("place"), "7");
  EXPECT_EQ(error.arg("nothing"), "");
}

TEST(Error, TheFirstErrorIsHandedUp) {
  EXPECT_EQ(*quarter(12), 3);
  ASSERT_FALSE(quarter(6));
  EXPECT_EQ(quarter(6).error().arg("field"), "number");
  EXPECT_TRUE(even(4));
  EXPECT_EQ(even(5).error().code, Code::OutOfRange);
}

}  // namespace
}  // namespace jambline
