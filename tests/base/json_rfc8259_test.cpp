// What RFC 8259 allows and forbids, by its sections.
#include <gtest/gtest.h>

#include "base/json.h"

namespace jambline {
namespace {

bool valid(std::string_view text) {
  return JsonDocument::parse(text).has_value();
}

std::string text_of(std::string_view document) {
  const auto value = from_json<std::string>(document);
  return value ? *value : "refused: " + std::string(value.error().arg("cause"));
}

TEST(Rfc8259, Section2AnyValueMayStandAloneAndBlanksAreFourSigns) {
  for (const char* text :
       {"null", "true", "false", "0", "\"\"", "[]", "{}", " \t\r\n[ \t\r\n] \t\r\n"})
    EXPECT_TRUE(valid(text)) << text;
  for (const char* text :
       {"", " ", "[] []", "[\f]", "[\xC2\xA0]", "// x\n1", "/**/1", "nul", "TRUE"})
    EXPECT_FALSE(valid(text)) << text;
}

TEST(Rfc8259, Section4And5CommasStandBetween) {
  for (const char* text : {"[1,]", "[,1]", "[1 2]", "[1,,2]", "{\"a\":1,}", "{,}", "{\"a\" 1}",
                           "{a:1}", "{'a':1}", "{\"a\"}", "{1:1}", "[1", "{\"a\":1", "]", "}"})
    EXPECT_FALSE(valid(text)) << text;
  EXPECT_TRUE(valid("{\"a\":{\"b\":[1,2,{\"c\":null}]}}"));
}

TEST(Rfc8259, Section6Numbers) {
  for (const char* text : {"-0", "0.5", "1e5", "1E+5", "1e-5", "-1.25e10", "18446744073709551615"})
    EXPECT_TRUE(valid(text)) << text;
  for (const char* text : {"+1", "01", "-01", "1.", ".5", "-", "1e", "1e+", "0x10", "NaN",
                           "Infinity", "-Infinity", "1_000", "1,5"})
    EXPECT_FALSE(valid(text)) << text;
}

// Section 6 lets a reader set limits; ours is 64 bits for a number written as a whole one.
TEST(Rfc8259, Section6WholeNumbersOver64BitsAreRefusedAndNotRounded) {
  EXPECT_FALSE(valid("18446744073709551616"));
  EXPECT_FALSE(valid("-9223372036854775809"));
  EXPECT_TRUE(valid("1.8446744073709551616e19"));
  EXPECT_FALSE(valid("1e400"));
}

TEST(Rfc8259, Section7EscapesGiveTheirSigns) {
  EXPECT_EQ(text_of(R"("\"\\\/\b\f\n\r\t")"), "\"\\/\b\f\n\r\t");
  EXPECT_EQ(text_of(R"("\u0041\u00e9\u20AC")"), "A\xC3\xA9\xE2\x82\xAC");
  EXPECT_EQ(text_of(R"("\ud834\udd1e")"), "\xF0\x9D\x84\x9E");  // the RFC's own G clef
  EXPECT_EQ(text_of(R"("\u0000x")"), std::string("\0x", 2));
  for (const char* text : {R"("\x41")", R"("\u12")", R"("\u12g4")", R"("\")", R"("\a")", "\"a\nb\"",
                           "\"\x01\"", "\"open"})
    EXPECT_FALSE(valid(text)) << text;
}

TEST(Rfc8259, Section8TextIsUtf8) {
  EXPECT_TRUE(valid("\"\xF4\x8F\xBF\xBF\""));
  for (const char* text : {"\"\xFF\"", "\"\xC3\"", "\"\xC0\xAF\"", "\"\xED\xA0\x80\"",
                           "\"\xF4\x90\x80\x80\"", "\"\x80\""})
    EXPECT_FALSE(valid(text));
  EXPECT_FALSE(valid(R"("\ud834")"));  // half a pair has no UTF-8
}

TEST(Rfc8259, Section9DepthIsLimitedAndRefusedWithoutHarm) {
  EXPECT_TRUE(valid(std::string(500, '[') + std::string(500, ']')));
  EXPECT_FALSE(valid(std::string(100'000, '[') + std::string(100'000, ']')));
  EXPECT_FALSE(valid(std::string(100'000, '[')));
}

}  // namespace
}  // namespace jambline
