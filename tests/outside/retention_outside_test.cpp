// Retention: how long records are usually kept, each against the print of its rule.
#include <gtest/gtest.h>

#include "job/retention.h"
#include "tests/outside/table.h"

namespace jambline::job {
namespace {

TEST(RetentionOutside, EveryUsualTimeIsAsItsRulePrintsIt) {
  const auto rows = outside::table("usual_retentions.csv");
  std::size_t with_source = 0;
  for (const auto& usual : usual_retentions()) with_source += usual.source.empty() ? 0 : 1;
  EXPECT_EQ(rows.size(), with_source) << "a time without a line here has no source";
  const auto in_words = [](std::optional<int> years) {
    return years ? std::to_string(*years) : std::string();
  };
  for (const auto& row : rows) {
    const UsualRetention* found = nullptr;
    for (const auto& usual : usual_retentions())
      if (word_of(usual.record) == row.at("record")) found = &usual;
    ASSERT_NE(found, nullptr) << row.at("record");
    EXPECT_EQ(in_words(found->years), row.at("years")) << row.at("record");
    EXPECT_EQ(in_words(found->on_site_years), row.at("on_site_years")) << row.at("record");
    EXPECT_EQ(found->until_next ? "yes" : "no", row.at("until_next")) << row.at("record");
    EXPECT_EQ(found->authority, row.at("authority"));
    EXPECT_NE(found->source.find(row.at("source")), std::string_view::npos) << row.at("source");
    EXPECT_EQ(std::to_string(found->text_year), row.at("text_year")) << row.at("record");
  }
}

}  // namespace
}  // namespace jambline::job
