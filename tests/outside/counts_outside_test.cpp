// Counts and chances: exact tests, intervals, charts and draws against values from outside.
#include <gtest/gtest.h>

#include "tests/outside/table.h"
#include "trade/control_chart.h"
#include "trade/draws.h"
#include "trade/probability.h"

namespace jambline::trade {
namespace {

using outside::number;
using outside::numbers;
using outside::same;
using outside::same_chance;
using outside::table;
using outside::whole;

TEST(ProbabilityOutside, SharesAsRHasThem) {
  for (const auto& row : table("r_shares.csv")) {
    const auto count = whole(row, "count"), trials = whole(row, "trials");
    const double share = number(row, "share");
    const std::string name = row.at("count") + " of " + row.at("trials") + ", " + row.at("share");
    EXPECT_TRUE(same_chance(binomial_two_sided(count, trials, share), number(row, "two_sided")))
        << name;
    EXPECT_TRUE(same_chance(binomial_at_least(count, trials, share), number(row, "at_least")))
        << name;
    EXPECT_TRUE(same_chance(binomial_at_most(count, trials, share), number(row, "at_most")))
        << name;
    const auto interval = binomial_interval(count, trials, number(row, "confidence"));
    EXPECT_TRUE(same(interval.low, number(row, "low"))) << name;
    EXPECT_TRUE(same(interval.high, number(row, "high"))) << name;
  }
}

TEST(ProbabilityOutside, CountsAsRHasThem) {
  for (const auto& row : table("r_counts.csv")) {
    const auto count = whole(row, "count");
    const double mean = number(row, "mean");
    const std::string name = row.at("count") + " of " + row.at("mean");
    EXPECT_TRUE(same_chance(poisson_at_least(count, mean), number(row, "at_least"))) << name;
    EXPECT_TRUE(same_chance(poisson_at_most(count, mean), number(row, "at_most"))) << name;
    const auto interval = poisson_interval(count, number(row, "confidence"));
    EXPECT_TRUE(same(interval.low, number(row, "low"))) << name;
    EXPECT_TRUE(same(interval.high, number(row, "high"))) << name;
  }
}

TEST(ProbabilityOutside, RatiosOfRatesAsRHasThem) {
  for (const auto& row : table("r_rate_ratios.csv")) {
    const auto ratio =
        rate_ratio(whole(row, "count_a"), number(row, "exposure_a"), whole(row, "count_b"),
                   number(row, "exposure_b"), number(row, "confidence"));
    EXPECT_TRUE(same_chance(ratio.chance, number(row, "chance"))) << row.at("count_a");
    EXPECT_TRUE(same(ratio.interval.low, number(row, "low")));
    EXPECT_EQ(ratio.unbounded, row.at("high").empty());
    if (ratio.unbounded) continue;
    EXPECT_TRUE(same(ratio.ratio, number(row, "ratio")));
    EXPECT_TRUE(same(ratio.interval.high, number(row, "high")));
  }
}

TEST(ProbabilityOutside, NormalAndStudentAsRHasThem) {
  for (const auto& row : table("r_normal.csv")) {
    EXPECT_TRUE(same_chance(normal_below(number(row, "z")), number(row, "below"))) << row.at("z");
    EXPECT_TRUE(same(normal_quantile(number(row, "chance")), number(row, "quantile")));
  }
  for (const auto& row : table("r_student.csv"))
    EXPECT_TRUE(same(student_quantile(number(row, "chance"), number(row, "freedom")),
                     number(row, "quantile")))
        << row.at("freedom");
}

TEST(ProbabilityOutside, HolmAsRHasIt) {
  for (const auto& row : table("r_holm.csv")) {
    const auto found = holm(numbers(row.at("chances")));
    const auto wanted = numbers(row.at("adjusted"));
    ASSERT_EQ(found.size(), wanted.size());
    for (std::size_t i = 0; i < found.size(); ++i)
      EXPECT_TRUE(same_chance(found[i], wanted[i])) << row.at("chances");
  }
}

TEST(ChartOutside, ChartsOfTheHandbook) {
  for (const auto& row : table("charts.csv")) {
    const auto values = numbers(row.at("values"));
    auto units = numbers(row.at("units"));
    units.resize(values.size(), units.front());
    std::vector<std::size_t> out;
    ChartLimits limits;
    if (row.at("chart") == "p") {
      double sum = 0, tried = 0;
      for (std::size_t i = 0; i < values.size(); ++i) {
        sum += values[i];
        tried += units[i];
      }
      for (std::size_t i = 0; i < values.size(); ++i) {
        limits = share_limits(sum / tried, units[i]);
        const double share = values[i] / units[i];
        if (share > limits.high || share < limits.low) out.push_back(i + 1);
      }
    } else {
      DirtChart chart;
      chart.form = LimitForm::ThreeSigma;
      for (std::size_t i = 0; i < values.size(); ++i)
        chart.jobs.push_back(
            {static_cast<double>(i), static_cast<std::int64_t>(values[i]), units[i]});
      const auto result = dirt_chart(chart);
      ASSERT_TRUE(result);
      limits = result->points[0].limits;
      for (std::size_t i = 0; i < values.size(); ++i)
        if (result->points[i].signal == ChartSignal::Above ||
            result->points[i].signal == ChartSignal::Below)
          out.push_back(i + 1);
    }
    std::vector<std::size_t> wanted;
    for (const double place : numbers(row.at("out")))
      wanted.push_back(static_cast<std::size_t>(place));
    EXPECT_EQ(out, wanted) << row.at("series");
    EXPECT_NEAR(limits.center, number(row, "center"), 5e-6) << row.at("series");
    if (row.at("low").empty()) continue;
    EXPECT_NEAR(limits.low, number(row, "low"), 5e-6) << row.at("series");
    EXPECT_NEAR(limits.high, number(row, "high"), 5e-6) << row.at("series");
  }
}

// Source: a public list of chart tests; it prints 0.4103 for the upper limit of the chips, which is
// 0.4102
TEST(ChartOutside, AWrongPrintOfTheHandbooksLimitIsNotMet) {
  EXPECT_EQ(std::lround(share_limits(347.0 / 1500, 50).high * 10000), 4102);
}

TEST(ChartOutside, RatesOfUnlikeAreasHaveLimitsOfTheirOwn) {
  for (const auto& row : table("chart_rate_limits.csv")) {
    const auto limits = rate_limits(153.0 / 109, number(row, "units"), LimitForm::ThreeSigma);
    EXPECT_NEAR(limits.low, number(row, "low"), 5.1e-6);
    EXPECT_NEAR(limits.high, number(row, "high"), 5.1e-6);
    EXPECT_GT(std::abs(limits.high - 2.48034), 1e-3);
  }
}

TEST(ChartOutside, ExactLimitsAreTheLastCountsInside) {
  for (const auto& row : table("r_exact_limits.csv")) {
    const double exposure = number(row, "exposure");
    const auto limits = rate_limits(number(row, "mean_rate"), exposure, LimitForm::ExactPoisson);
    EXPECT_TRUE(same(limits.low * exposure, number(row, "low_count"))) << row.at("mean_rate");
    EXPECT_TRUE(same(limits.high * exposure, number(row, "high_count"))) << row.at("mean_rate");
  }
}

TEST(DrawsOutside, EveryMachineDrawsTheSame) {
  for (const auto& row : table("draws.csv")) {
    Draws draws(std::stoull(row.at("seed")));
    const std::string& what = row.at("what");
    const std::string name = what + " of seed " + row.at("seed") + ", " + row.at("argument");
    std::istringstream in(row.at("values"));
    std::vector<std::string> wanted;
    for (std::string one; in >> one;) wanted.push_back(one);
    if (what == "bits after 9999")
      for (int i = 0; i < 9999; ++i) draws.bits();
    std::vector<std::size_t> items(wanted.size());
    if (what == "shuffle") {
      for (std::size_t i = 0; i < items.size(); ++i) items[i] = i;
      draws.shuffle(items);
    }
    const auto argument = numbers(row.at("argument"));
    for (std::size_t i = 0; i < wanted.size(); ++i) {
      if (what == "bits" || what == "bits after 9999")
        EXPECT_EQ(draws.bits(), std::stoull(wanted[i])) << name;
      else if (what == "below")
        EXPECT_EQ(draws.below(std::stoull(row.at("argument"))), std::stoull(wanted[i])) << name;
      else if (what == "poisson")
        EXPECT_EQ(draws.poisson(argument[0]), std::stoull(wanted[i])) << name;
      else if (what == "shuffle")
        EXPECT_EQ(items[i], std::stoull(wanted[i])) << name;
      else if (what == "unit")
        EXPECT_EQ(draws.unit(), std::stod(wanted[i])) << name;
      else if (what == "normal")
        EXPECT_TRUE(same(draws.normal(0, 1), std::stod(wanted[i]))) << name;
      else if (what == "triangular")
        EXPECT_TRUE(
            same(draws.triangular(argument[0], argument[1], argument[2]), std::stod(wanted[i])))
            << name;
      else
        FAIL() << what;
    }
  }
}

}  // namespace
}  // namespace jambline::trade
