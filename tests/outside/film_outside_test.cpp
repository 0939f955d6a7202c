// Film, cure and pictures against values from outside.
#include <gtest/gtest.h>

#include "tests/outside/table.h"
#include "trade/cure_clock.h"
#include "trade/film.h"
#include "trade/photo_judgement.h"

namespace jambline::trade {
namespace {

using outside::number;
using outside::numbers;
using outside::same;
using outside::table;

Spread_um spread(const std::string& cell) {
  const auto two = numbers(cell);
  return {two.at(0), two.at(1)};
}

TEST(FilmOutside, SpotsAndAreasAreAccepted) {
  for (const auto& row : table("film_spots.csv")) {
    const double unit = row.at("unit") == "mil" ? 25.4 : 1;
    FilmAcceptance in;
    for (const double spot : numbers(row.at("spots"))) in.spots_um.push_back(spot * unit);
    in.least_um = number(row, "least") * unit;
    in.most_um = number(row, "most") * unit;
    const auto result = accept_film(in);
    ASSERT_TRUE(result);
    EXPECT_TRUE(same(result->spot_least_um / unit, number(row, "spot_least")));
    EXPECT_TRUE(same(result->spot_most_um / unit, number(row, "spot_most")));
    EXPECT_EQ(result->accepted, row.at("accepted") == "yes") << row.at("spots");
    std::vector<double> bad(result->bad_spots.begin(), result->bad_spots.end());
    EXPECT_EQ(bad, numbers(row.at("bad"))) << row.at("spots");
  }
}

TEST(FilmOutside, WhatIsLeftAndTheChanceOfPassingALimit) {
  for (const auto& row : table("r_film_chances.csv")) {
    FilmBudget in;
    const std::string& from = row.at("from");
    if (from == "clear") in.clear_um = numbers(row.at("after_um"));
    if (from == "total") {
      in.total_after_um = numbers(row.at("after_um"));
      in.total_before_base_um = numbers(row.at("before_um"));
    }
    if (number(row, "sealer") > 0) in.sealer = Spread_um{22, 4};
    in.base = spread(row.at("base_um"));
    in.coats = static_cast<int>(number(row, "coats"));
    in.build_per_coat = spread(row.at("build_um"));
    in.gauge_sd_um = number(row, "gauge_sd_um");
    in.valleys = spread(row.at("valleys_um"));
    in.edge_thinner_percent = number(row, "edge_percent");
    const auto steps = numbers(row.at("steps_um"));
    const auto sds = numbers(row.at("steps_sd_um"));
    for (std::size_t i = 0; i < steps.size(); ++i) in.steps.push_back({"step", {steps[i], sds[i]}});
    in.taken_before_um = number(row, "taken_um");
    in.leave_um = number(row, "leave_um");
    in.take_at_most_um = number(row, "most_um");
    const auto result = film_budget(in);
    ASSERT_TRUE(result);
    EXPECT_TRUE(same(result->clear.mean_um, number(row, "mean_um"))) << from;
    EXPECT_TRUE(same(result->clear.sd_um, number(row, "sd_um"))) << from;
    EXPECT_TRUE(same(result->likely_low_um, number(row, "low_um"))) << from;
    EXPECT_TRUE(same(result->chance_percent, number(row, "chance_percent"))) << from;
  }
}

TEST(FilmOutside, WhatIsLearnedFromReadings) {
  for (const auto& row : table("r_removals.csv")) {
    RemovalLearning in;
    in.prior = spread(row.at("prior_um"));
    in.taken_um = numbers(row.at("taken_um"));
    in.gauge_sd_um = number(row, "gauge_sd_um");
    in.readings_a_mean = static_cast<int>(number(row, "readings"));
    const auto result = learn_removal(in);
    ASSERT_TRUE(result);
    EXPECT_TRUE(result->updated);
    EXPECT_TRUE(same(result->learned.mean_um, number(row, "mean_um"))) << row.at("taken_um");
    EXPECT_TRUE(same(result->learned.sd_um, number(row, "sd_um"))) << row.at("taken_um");
  }
}

// Two temperatures in kelvin and R = 8.314, as the books have them.
TEST(CureOutside, ActivationEnergies) {
  const double r = 8.314 / 8.314462618;
  for (const auto& row : table("arrhenius.csv")) {
    const double found =
        r * activation_energy_j_mol(number(row, "cold_k") - 273.15, 1 / number(row, "cold_rate"),
                                    number(row, "hot_k") - 273.15, 1 / number(row, "hot_rate"));
    EXPECT_NEAR(found, number(row, "energy_j_mol"), number(row, "within")) << row.at("example");
  }
}

TEST(CureOutside, BakesAsTheyAreIntegratedElsewhere) {
  for (const auto& row : table("scipy_bakes.csv")) {
    CureClock in;
    const auto points = numbers(row.at("points"));
    const auto readings = numbers(row.at("readings"));
    in.steps.push_back({CureMilestone::SandFrom, {}});
    for (std::size_t i = 0; i + 1 < points.size(); i += 2)
      in.steps[0].points.push_back({points[i], points[i + 1]});
    for (std::size_t i = 0; i + 1 < readings.size(); i += 2)
      in.readings.push_back({readings[i], readings[i + 1]});
    in.now_min = number(row, "now_min");
    in.reading_sd_c = 2;
    const auto result = cure_clock(in);
    ASSERT_TRUE(result) << row.at("case");
    const auto& standing = result->standings.at(0);
    EXPECT_TRUE(same(standing.done_percent, number(row, "done_percent"), 1e-7)) << row.at("case");
    const auto when = [&](const std::optional<double>& found, const char* column) {
      ASSERT_EQ(found.has_value(), !row.at(column).empty()) << row.at("case") << column;
      if (found) {
        EXPECT_TRUE(same(*found, number(row, column), 1e-7)) << row.at("case") << column;
      }
    };
    when(standing.reached_min, "reached_min");
    when(standing.early_min, "early_min");
    when(standing.late_min, "late_min");
  }
}

std::vector<double> gray_of(const std::string& name) {
  if (name == "lcg") {
    std::vector<double> out;
    for (const auto& row : table("picture_lcg.csv"))
      for (const double one : numbers(row.at("gray"))) out.push_back(one);
    return out;
  }
  const auto plain = [&](int x, int y) {
    if (name == "step") return x < 16 ? 0.0 : 255.0;
    if (name == "slope") return 8.0 * x;
    if (name == "spot") return x == 16 && y == 16 ? 255.0 : 0.0;
    return (x / 8 + y / 8) % 2 ? 255.0 : 0.0;
  };
  const auto inside = [](int at) { return at < 0 ? -at : at > 31 ? 62 - at : at; };
  std::vector<double> out;
  for (int y = 0; y < 32; ++y)
    for (int x = 0; x < 32; ++x) {
      if (name != "squares blurred 3 x 3") {
        out.push_back(plain(x, y));
        continue;
      }
      double sum = 0;
      for (int j = -1; j <= 1; ++j)
        for (int i = -1; i <= 1; ++i) sum += plain(inside(x + i), inside(y + j));
      out.push_back(sum / 9);
    }
  return out;
}

TEST(PhotoOutside, SharpnessOfKnownPictures) {
  for (const auto& row : table("scipy_pictures.csv")) {
    const double found = laplacian_variance({32, 32, gray_of(row.at("picture"))});
    EXPECT_TRUE(same(found, number(row, "variance"), 1e-9)) << row.at("picture");
    // Another kernel, under the same name elsewhere, gives other numbers.
    EXPECT_GT(std::abs(found - number(row, "variance_of_the_wide_kernel")), 100);
  }
}

}  // namespace
}  // namespace jambline::trade
