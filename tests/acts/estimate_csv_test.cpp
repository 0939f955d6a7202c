// Quoting and line ends against RFC 4180, section 2 (rules 1 to 7). What a stage is called and the
// range of hours are this program's own.
#include "acts/estimate_csv.h"

#include <gtest/gtest.h>

namespace jambline::acts {
namespace {

const std::string head = "stage,title,hours\n";

EstimateRows read(const std::string& text) {
  auto rows = read_estimate_csv(text);
  EXPECT_TRUE(rows.has_value());
  return rows ? std::move(*rows) : EstimateRows{};
}

TEST(EstimateCsv, RowsBecomeOperationsInMinutes) {
  const auto rows = read(head + "prep,Left fender,1.5\r\nspray,Base and clear,0.25\r\n");
  ASSERT_EQ(rows.operations.size(), 2U);
  EXPECT_TRUE(rows.rejected.empty());
  EXPECT_EQ(rows.operations[0].stage, job::Stage::Prep);
  EXPECT_EQ(rows.operations[0].title, "Left fender");
  EXPECT_EQ(rows.operations[0].estimate_min, 90);
  EXPECT_EQ(rows.operations[1].estimate_min, 15);
}

TEST(EstimateCsv, LastLineNeedsNoLineEnd) {  // RFC 4180, 2.2
  EXPECT_EQ(read(head + "prep,a,1").operations.size(), 1U);
}

TEST(EstimateCsv, QuotedFieldHoldsCommasQuotesAndLineEnds) {  // RFC 4180, 2.6 and 2.7
  const auto rows = read(head + "\"prep\",\"Feather, \"\"block\"\"\r\nand prime\",2\nmask,b,1\n");
  ASSERT_EQ(rows.operations.size(), 2U);
  EXPECT_EQ(rows.operations[0].title, "Feather, \"block\"\r\nand prime");
}

TEST(EstimateCsv, ColumnsMayStandInAnyOrderWithOthersBetween) {
  const auto rows = read("\xEF\xBB\xBFHours, Stage ,line,title\n\"0,5\",Prep,7,sand\n");
  ASSERT_EQ(rows.operations.size(), 1U);
  EXPECT_EQ(rows.operations[0].estimate_min, 30);
  EXPECT_EQ(rows.operations[0].title, "sand");
}

TEST(EstimateCsv, EveryRejectedRowSaysItsLineAndWhy) {
  const auto rows = read(head +
                         "prep,a\n"
                         "polishing,a,1\n"
                         "prep,a,soon\n"
                         "prep,a,-1\n"
                         "prep,a,1000.1\n"
                         "prep," +
                         std::string(81, 'x') +
                         ",1\n"
                         "prep,\"a\"b,1\n"
                         "prep,a\"b,1\n"
                         "mask,fine,1\n"
                         "prep,\"never\n");
  ASSERT_EQ(rows.operations.size(), 1U);
  const std::vector<std::pair<int, EstimateFault>> wanted{
      {2, EstimateFault::FieldCount},       {3, EstimateFault::UnknownStage},
      {4, EstimateFault::HoursNotANumber},  {5, EstimateFault::HoursOutOfRange},
      {6, EstimateFault::HoursOutOfRange},  {7, EstimateFault::TitleTooLong},
      {8, EstimateFault::TextAfterQuote},   {9, EstimateFault::QuoteInside},
      {11, EstimateFault::QuoteNeverCloses}};
  ASSERT_EQ(rows.rejected.size(), wanted.size());
  for (std::size_t i = 0; i < wanted.size(); ++i) {
    EXPECT_EQ(rows.rejected[i].line, wanted[i].first);
    EXPECT_EQ(rows.rejected[i].why, wanted[i].second) << rows.rejected[i].text;
  }
}

TEST(EstimateCsv, LinesAreCountedThroughQuotedLineEnds) {
  const auto rows = read(head + "prep,\"a\nb\nc\",1\nnone,x,1\n");
  ASSERT_EQ(rows.rejected.size(), 1U);
  EXPECT_EQ(rows.rejected[0].line, 5);
}

TEST(EstimateCsv, HeadIsRequired) {
  const auto rows = read_estimate_csv("prep,a,1\n");
  ASSERT_FALSE(rows.has_value());
  EXPECT_EQ(rows.error().code, Code::Missing);
  EXPECT_EQ(rows.error().arg("field"), "stage");
  EXPECT_EQ(read_estimate_csv("").error().code, Code::Missing);
  EXPECT_EQ(read_estimate_csv("stage,title\n").error().arg("field"), "hours");
}

TEST(EstimateCsv, EmptyLinesAreNoRows) {
  const auto rows = read(head + "\n\r\nprep,a,1\n\n");
  EXPECT_EQ(rows.operations.size(), 1U);
  EXPECT_TRUE(rows.rejected.empty());
}

TEST(EstimateCsv, ForeignBytesAndHugeFilesAreRefusedWhole) {
  EXPECT_EQ(read_estimate_csv(head + "prep,\xE9t\xE9,1\n").error().code, Code::Malformed);
  EXPECT_EQ(read_estimate_csv(std::string("\x89PNG\r\n\x1A\n")).error().code, Code::Malformed);
  EXPECT_EQ(read_estimate_csv(std::string(most_estimate_bytes + 1, 'x')).error().code,
            Code::TooLarge);
  std::string many = head;
  for (std::size_t i = 0; i <= most_estimate_rows; ++i) many += "prep,a,1\n";
  EXPECT_EQ(read_estimate_csv(many).error().code, Code::TooLarge);
}

TEST(EstimateCsv, ShownTextNeverEndsInsideASign) {
  std::string row = "none,";
  for (int i = 0; i < 100; ++i) row += "\xC3\xA9";
  const auto rows = read(head + row + ",1\n");
  ASSERT_EQ(rows.rejected.size(), 1U);
  EXPECT_EQ(rows.rejected[0].text.size(), 119U);
}

}  // namespace
}  // namespace jambline::acts
