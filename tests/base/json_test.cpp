#include "base/json.h"

#include <cmath>
#include <gtest/gtest.h>
#include <limits>

#include "tests/base/sample.h"

namespace jambline {
namespace {

using sample::Everything;
using sample::full;
using sample::Spot;

std::string replaced(std::string text, std::string_view what, std::string_view by) {
  const auto at = text.find(what);
  if (at == std::string::npos) ADD_FAILURE() << "no " << what;
  return text.replace(at, what.size(), by);
}

template <class T>
Error refused(std::string_view text, Strict strict = Strict::No) {
  const auto value = from_json<T>(text, strict);
  EXPECT_FALSE(value) << text;
  return value ? Error{} : value.error();
}

TEST(Json, FieldsStandInTheOrderOfTheDescriptionAndAbsentOnesAreLeftOut) {
  EXPECT_EQ(to_json(full()),
            "{\"baked\":true,\"wall_ms\":-5,\"since_boot_ms\":7,\"small\":-128,\"film_um\":47.25,"
            "\"note\":\"nib\\n\\\"7\\\" \\\\ \\u0001 \xC3\xA9\",\"verdict\":\"to correct\","
            "\"hash\":\"ab00000000000000000000000000000000000000000000000000000000000000\","
            "\"after_um\":0.5,\"spots\":[{\"x_mm\":1.5,\"size\":1},{\"x_mm\":4000,\"size\":3}],"
            "\"words\":[\"\",\"a\"],\"first\":{\"x_mm\":0,\"size\":2}}");
}

TEST(Json, WhatWasWrittenReadsBackEqual) {
  for (const Strict strict : {Strict::No, Strict::Yes}) {
    const auto back = from_json<Everything>(to_json(full()), strict);
    ASSERT_TRUE(back) << back.error().arg("cause");
    EXPECT_EQ(*back, full());
  }
}

TEST(Json, MembersInAnotherOrderReadTheSame) {
  const auto spot = from_json<Spot>(R"({"size":2,"x_mm":7.5})", Strict::Yes);
  ASSERT_TRUE(spot);
  EXPECT_EQ(*spot, (Spot{7.5, 2}));
}

TEST(Json, AbsentAndNullOptionalsAreTheSame) {
  const auto value =
      from_json<Everything>(replaced(to_json(full()), "\"after_um\":0.5", "\"after_um\":null"));
  ASSERT_TRUE(value);
  EXPECT_FALSE(value->after_um);
}

TEST(Json, AMissingFieldIsNamedByItsPath) {
  const Error error = refused<Everything>(replaced(to_json(full()), "{\"x_mm\":4000,", "{"));
  EXPECT_EQ(error.code, Code::Missing);
  EXPECT_EQ(error.arg("field"), "spots[1].x_mm");
  EXPECT_EQ(refused<Spot>(R"({"x_mm":null,"size":1})").code, Code::Missing);
  EXPECT_EQ(refused<Everything>("{}").arg("field"), "baked");
}

TEST(Json, RangesHoldInBothDirectionsAndTheirEndsAreInside) {
  EXPECT_TRUE(from_json<Spot>(R"({"x_mm":0,"size":3})"));
  EXPECT_TRUE(from_json<Spot>(R"({"x_mm":4000,"size":1})"));
  const Error error = refused<Spot>(R"({"x_mm":4000.0001,"size":1})");
  EXPECT_EQ(error.code, Code::OutOfRange);
  EXPECT_EQ(error.arg("field"), "x_mm");
  EXPECT_EQ(error.arg("max"), "4000");
  EXPECT_EQ(refused<Spot>(R"({"x_mm":-0.0001,"size":1})").code, Code::OutOfRange);
  EXPECT_EQ(refused<Spot>(R"({"x_mm":1,"size":0})").arg("field"), "size");
  EXPECT_EQ(refused<Everything>(replaced(to_json(full()), "\"size\":2", "\"size\":4")).arg("field"),
            "first.size");
  EXPECT_EQ(refused<Everything>(replaced(to_json(full()), ":0.5", ":-0.5")).arg("field"),
            "after_um");
}

TEST(Json, IntegersThatDoNotFitTheirTypeAreOutOfRange) {
  const std::string text = to_json(full());
  EXPECT_EQ(refused<Everything>(replaced(text, "-128", "-129")).code, Code::OutOfRange);
  EXPECT_EQ(refused<Everything>(replaced(text, "-128", "128")).code, Code::OutOfRange);
  EXPECT_EQ(refused<Everything>(replaced(text, "\"since_boot_ms\":7", "\"since_boot_ms\":-1")).code,
            Code::OutOfRange);
  EXPECT_TRUE(
      from_json<Everything>(replaced(text, "\"wall_ms\":-5", "\"wall_ms\":-9223372036854775808")));
  EXPECT_TRUE(
      from_json<Everything>(replaced(text, "\"wall_ms\":-5", "\"wall_ms\":9223372036854775807")));
  EXPECT_FALSE(
      from_json<Everything>(replaced(text, "\"wall_ms\":-5", "\"wall_ms\":9223372036854775808")));
}

TEST(Json, WrongTypesAreMalformedAndSayWhatIsWanted) {
  const std::string text = to_json(full());
  const auto code = [&](std::string_view what, std::string_view by) {
    const Error error = refused<Everything>(replaced(text, what, by));
    EXPECT_FALSE(error.arg("cause").empty());
    return error.code;
  };
  EXPECT_EQ(code("true", "1"), Code::Malformed);
  EXPECT_EQ(code("-5", "-5.5"), Code::Malformed);
  EXPECT_EQ(code("-5", "\"-5\""), Code::Malformed);
  EXPECT_EQ(code("-5", "1e3"), Code::Malformed);
  EXPECT_EQ(code("47.25", "\"47.25\""), Code::Malformed);
  EXPECT_EQ(code("\"to correct\"", "1"), Code::Malformed);
  EXPECT_EQ(code("\"ab000", "\"ab00"), Code::Malformed);
  EXPECT_EQ(code("\"ab000", "\"xb000"), Code::Malformed);
  EXPECT_EQ(code("[\"\",\"a\"]", "{}"), Code::Malformed);
  EXPECT_EQ(code("\"a\"", "3"), Code::Malformed);
  EXPECT_EQ(code("{\"x_mm\":0,\"size\":2}", "[]"), Code::Malformed);
  EXPECT_EQ(refused<Spot>("[]").code, Code::Malformed);
  EXPECT_EQ(refused<Spot>("7").code, Code::Malformed);
}

TEST(Json, AWordThatNobodyKnowsIsUnknown) {
  const Error error = refused<Everything>(replaced(to_json(full()), "to correct", "To correct"));
  EXPECT_EQ(error.code, Code::Unknown);
  EXPECT_EQ(error.arg("field"), "verdict");
  EXPECT_NE(error.arg("cause").find("To correct"), std::string_view::npos);
}

TEST(Json, OnlyStrictReadingRefusesMembersThatNobodyDescribed) {
  const std::string text = replaced(to_json(full()), "\"size\":2", "\"size\":2,\"color\":\"red\"");
  EXPECT_TRUE(from_json<Everything>(text));
  const Error error = refused<Everything>(text, Strict::Yes);
  EXPECT_EQ(error.code, Code::Unknown);
  EXPECT_EQ(error.arg("field"), "first.color");
}

TEST(Json, ListsOfPlainValuesReadOnTheirOwn) {
  EXPECT_EQ(from_json<std::vector<double>>("[1,2.5,-3e2]"), (std::vector{1.0, 2.5, -300.0}));
  EXPECT_EQ(refused<std::vector<double>>("[1,\"a\"]").arg("field"), "[1]");
}

TEST(Json, ShortestNumbersReadBackEqual) {
  for (const double number :
       {0.1, -0.0, 1e21, 5e-324, std::numeric_limits<double>::max(), 1.0 / 3, 9007199254740993.0}) {
    std::string text;
    json::write_number(text, number);
    const auto back = from_json<std::vector<double>>('[' + text + ']');
    ASSERT_TRUE(back) << text;
    EXPECT_EQ(back->front(), number) << text;
  }
}

TEST(Json, NumbersNoIntegerCanHoldAreWrittenWithAnExponentAndReadBackEqual) {
  // 2^63 and 2^64: the first whole numbers past what signed and unsigned 64 bits hold.
  for (const double number :
       {9223372036854775808.0, -9223372036854775808.0, 18446744073709551616.0,
        18446744073709552000.0, -18446744073709552000.0, 123456789012345678901.0}) {
    std::string text;
    json::write_number(text, number);
    EXPECT_NE(text.find('e'), std::string::npos) << text;
    const auto back = from_json<std::vector<double>>('[' + text + ']');
    ASSERT_TRUE(back) << text;
    EXPECT_EQ(back->front(), number) << text;
  }
}

TEST(Json, MinusZeroKeepsItsSign) {
  EXPECT_EQ(to_json(std::vector<double>{-0.0, 0.0}), "[-0.0,0]");
  const auto back = from_json<std::vector<double>>("[-0.0,0,-0e3]");
  ASSERT_TRUE(back);
  EXPECT_TRUE(std::signbit((*back)[0]));
  EXPECT_FALSE(std::signbit((*back)[1]));
  EXPECT_TRUE(std::signbit((*back)[2]));
  // A bare -0 is the whole number 0, also for whole-number fields.
  EXPECT_EQ(from_json<std::vector<int>>("[-0]"), (std::vector{0}));
  EXPECT_EQ(from_json<std::vector<double>>("[-0]"), (std::vector{0.0}));
  EXPECT_EQ(from_json<std::vector<std::uint64_t>>("[-0]"), (std::vector<std::uint64_t>{0}));
}

TEST(Json, AnUnsignedFieldHoldsAllSixtyFourBits) {
  const std::vector<std::uint64_t> large{9223372036854775807U, 9223372036854775808U,
                                         18446744073709551615U};
  EXPECT_EQ(to_json(large), "[9223372036854775807,9223372036854775808,18446744073709551615]");
  EXPECT_EQ(from_json<std::vector<std::uint64_t>>(to_json(large)), large);
  EXPECT_FALSE(from_json<std::vector<std::uint64_t>>("[18446744073709551616]"));
  EXPECT_FALSE(from_json<std::vector<std::uint32_t>>("[9223372036854775808]"));
  EXPECT_FALSE(from_json<std::vector<std::int64_t>>("[9223372036854775808]"));
}

TEST(Json, NoTextAtAllIsMalformed) {
  EXPECT_EQ(refused<Spot>(std::string_view{}).code, Code::Malformed);
  EXPECT_EQ(refused<Spot>("").code, Code::Malformed);
  EXPECT_EQ(refused<Spot>(" ").code, Code::Malformed);
}

TEST(Json, TextOverTheLimitIsTooLarge) {
  EXPECT_EQ(refused<Spot>(std::string((64U << 20U) + 1, ' ')).code, Code::TooLarge);
}

TEST(Json, ASecondDocumentOnTheThreadDoesNotDisturbValuesThatWereRead) {
  const auto first = from_json<Everything>(to_json(full()));
  const auto second = from_json<Spot>(R"({"x_mm":1,"size":1})");
  ASSERT_TRUE(first && second);
  EXPECT_EQ(*first, full());
}

TEST(Json, TheSchemaNamesTypesRangesWordsAndWhatIsRequired) {
  EXPECT_EQ(json_schema<Spot>(),
            "{\"type\":\"object\",\"additionalProperties\":false,\"properties\":{"
            "\"x_mm\":{\"type\":\"number\",\"description\":\"from the left; unit: mm\","
            "\"minimum\":0,\"maximum\":4000},"
            "\"size\":{\"type\":\"integer\",\"minimum\":1,\"maximum\":3}},"
            "\"required\":[\"x_mm\",\"size\"]}");
  const std::string all = json_schema<Everything>();
  EXPECT_NE(all.find("\"enum\":[\"clean\",\"to correct\",\"redo\"]"), std::string::npos);
  EXPECT_NE(all.find("\"pattern\":\"^[0-9a-f]{64}$\""), std::string::npos);
  EXPECT_NE(all.find("\"required\":[\"baked\",\"wall_ms\",\"since_boot_ms\",\"small\",\"film_um\","
                     "\"note\",\"verdict\",\"hash\",\"spots\",\"words\",\"first\"]"),
            std::string::npos);
  EXPECT_TRUE(JsonDocument::parse(all)) << all;
}

}  // namespace
}  // namespace jambline
