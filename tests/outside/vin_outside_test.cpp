#include <gtest/gtest.h>

#include "tests/outside/table.h"
#include "trade/vin.h"

namespace jambline::trade {
namespace {

TEST(VinOutside, PublishedNumbersGiveTheirSumsAndVerdicts) {
  for (const auto& row : outside::table("vin_numbers.csv")) {
    const VinCheck check = check_vin(row.at("vin"));
    EXPECT_TRUE(check.summed) << row.at("vin");
    EXPECT_EQ(check.sum, std::stoi(row.at("sum"))) << row.at("vin");
    EXPECT_EQ(check.expected, row.at("expected").front()) << row.at("vin");
    EXPECT_EQ(check.passes, row.at("passes") == "yes") << row.at("vin");
  }
}

TEST(VinOutside, EverySingleMistakeIsCaughtUnlessTheValuesAreEqual) {
  static constexpr std::string_view signs = "0123456789ABCDEFGHJKLMNPRSTUVWXYZ";
  int tried = 0;
  int passed = 0;
  for (const auto& row : outside::table("vin_numbers.csv")) {
    if (row.at("passes") != "yes") continue;
    const std::string vin = row.at("vin");
    for (std::size_t i = 0; i < vin.size(); ++i)
      for (const char sign : signs) {
        if (sign == vin[i]) continue;
        std::string wrong = vin;
        wrong[i] = sign;
        // Place 9 bears no weight: there every other sign fails.
        const bool should_pass = i != 8 && vin_value(sign) == vin_value(vin[i]);
        EXPECT_EQ(check_vin(wrong).passes, should_pass) << wrong;
        ++tried;
        passed += should_pass ? 1 : 0;
      }
  }
  EXPECT_EQ(tried, 6 * 17 * 32);
  EXPECT_GT(passed, 0);
}

TEST(VinOutside, ModelYearsFollowThePrintedTable) {
  for (const auto& row : outside::table("vin_model_years.csv")) {
    const int early = std::stoi(row.at("early"));
    const int late = std::stoi(row.at("late"));
    // From memory (565.15(d)): a digit at place 7 means the years to 2009, a letter those from
    // 2010.
    EXPECT_EQ(check_vin("1M8GDM9AX" + row.at("code") + "P042788").model_years,
              (std::vector{early, late}));
    EXPECT_EQ(check_vin("1M8GDMAAX" + row.at("code") + "P042788").model_years,
              (std::vector{late, early}));
  }
  for (const char none : {'U', 'Z', '0', 'I', 'O', 'Q'})
    EXPECT_TRUE(check_vin(std::string("1M8GDM9AX") + none + "P042788").model_years.empty()) << none;
}

}  // namespace
}  // namespace jambline::trade
