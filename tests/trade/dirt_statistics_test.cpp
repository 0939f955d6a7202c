// Do the chances of the dirt pattern mean what they say? Drawn with fixed seeds; what is drawn here
// does not use the drawing of the code under test where that could hide its own fault.
#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

#include "job/body_shape.h"
#include "trade/dirt_pattern.h"
#include "trade/dirt_scan.h"

namespace jambline::trade {
namespace {

// A sanitizer looks for faults of memory and threads, for which a tenth of the draws will do; the
// statistics are those of the plain build.
#ifdef JAMBLINE_SANITIZED
constexpr int part = 10;
#else
constexpr int part = 1;
#endif

// Points by rejection from the outline's box.
std::vector<Point_mm> random_marks(const std::vector<Point_mm>& outline, std::size_t count,
                                   Draws& draws) {
  const Box_mm box = bounds(outline);
  std::vector<Point_mm> out;
  while (out.size() < count) {
    const Point_mm one{draws.between(box.low.x_mm, box.high.x_mm),
                       draws.between(box.low.y_mm, box.high.y_mm)};
    if (contains(Polygon{outline}, one)) out.push_back(one);
  }
  return out;
}

const std::vector<job::PatternPanel>& panels_of(std::size_t shape) {
  return job::pattern(static_cast<job::BodyShape>(shape % 5)).panels;
}

// Kolmogorov 1933: the chance of a distance from the even distribution as large as this.
struct Kolmogorov {
  double distance = 0;
  double chance = 0;
};
Kolmogorov kolmogorov(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  const double n = static_cast<double>(values.size());
  Kolmogorov out;
  for (std::size_t i = 0; i < values.size(); ++i)
    out.distance = std::max({out.distance, static_cast<double>(i + 1) / n - values[i],
                             values[i] - static_cast<double>(i) / n});
  const double scaled = (std::sqrt(n) + 0.12 + 0.11 / std::sqrt(n)) * out.distance;
  for (int k = 1; k <= 100; ++k)
    out.chance += 2 * (k % 2 ? 1 : -1) * std::exp(-2 * k * k * scaled * scaled);
  out.chance = std::clamp(out.chance, 0.0, 1.0);
  return out;
}

TEST(DirtStatistics, MonteCarloChancesAreEvenUnderRandomness) {
  constexpr int panels = 2000 / part;
  constexpr int patterns = 199;
  Draws draws(20240611);
  std::vector<double> spacing, cluster;
  // Equal outcomes are put in a random order among themselves.
  const auto untied = [&](double chance, int ties) {
    const double as_far = chance * (patterns + 1) - 1;
    return (as_far - ties + draws.unit() * (ties + 1)) / (patterns + 1);
  };
  for (int i = 0; i < panels; ++i) {
    const auto& all = panels_of(static_cast<std::size_t>(i));
    const Polygon& outline = all[draws.below(all.size())].shape.outline;
    const auto marks = random_marks(outline.corners, 6 + draws.below(25), draws);
    const DirtScan scan = scan_dirt(outline, marks, patterns, draws);
    spacing.push_back(untied(scan.spacing_chance, scan.spacing_ties));
    cluster.push_back(untied(scan.cluster_chance, scan.cluster_ties));
  }
  for (const auto& [name, values] : {std::pair{"spacing", spacing}, {"cluster", cluster}}) {
    const Kolmogorov found = kolmogorov(values);
    std::printf("%s: %d panels, distance %.4f, chance %.3f\n", name, panels, found.distance,
                found.chance);
    EXPECT_GT(found.chance, 0.01) << name;
  }
}

// An exact test may be more careful than it says, never less: P(p <= a) <= a + 3 standard errors.
template <class Draw>
void expect_no_more_than_said(const char* name, Draw draw) {
  constexpr int trials = 20000 / part;
  std::vector<double> chances;
  for (int i = 0; i < trials; ++i) chances.push_back(draw());
  for (const double level : {0.01, 0.05, 0.10}) {
    const auto under =
        std::count_if(chances.begin(), chances.end(), [&](double one) { return one <= level; });
    const double share = static_cast<double>(under) / trials;
    std::printf("%s: P(p <= %.2f) = %.4f\n", name, level, share);
    EXPECT_LE(share, level + 3 * std::sqrt(level * (1 - level) / trials)) << name << " " << level;
    EXPECT_GT(share, 0) << name << " never speaks";
  }
}

std::int64_t drawn(Draws& draws, std::int64_t trials, double share) {
  std::int64_t out = 0;
  for (std::int64_t i = 0; i < trials; ++i) out += draws.unit() < share;
  return out;
}
// A count in a stretch of time, by the gaps between events.
std::int64_t arrived(Draws& draws, double mean) {
  std::int64_t out = 0;
  for (double time = -std::log(1 - draws.unit()); time < mean; time -= std::log(1 - draws.unit()))
    ++out;
  return out;
}

TEST(DirtStatistics, ExactTestsNeverSayMoreThanTheyMay) {
  Draws draws(7);
  expect_no_more_than_said("binomial", [&] {
    const auto trials = static_cast<std::int64_t>(6 + draws.below(40));
    const double share = draws.between(0.05, 0.6);
    return binomial_at_least(drawn(draws, trials, share), trials, share);
  });
  expect_no_more_than_said("binomial, two-sided", [&] {
    const auto trials = static_cast<std::int64_t>(6 + draws.below(40));
    const double share = draws.between(0.05, 0.95);
    return binomial_two_sided(drawn(draws, trials, share), trials, share);
  });
  expect_no_more_than_said("sum of binomials", [&] {
    std::int64_t sum = 0;
    std::vector<BinomialPart> parts;
    for (int i = 0; i < 3; ++i) {
      parts.push_back({static_cast<std::int64_t>(draws.below(20)), draws.between(0.1, 0.9)});
      sum += drawn(draws, parts.back().trials, parts.back().share);
    }
    return binomials_at_least(sum, parts);
  });
  expect_no_more_than_said("two rates", [&] {
    const double rate = draws.between(1, 6);
    const double a = draws.between(1, 5), b = draws.between(1, 5);
    return rate_ratio(arrived(draws, rate * a), a, arrived(draws, rate * b), b, 0.95).chance;
  });
  // Of now and of the past, flat and upright; flat gets more, as much more now as ever.
  expect_no_more_than_said("flat against history", [&] {
    const double times = draws.between(1, 5), now = draws.between(1, 8), past = draws.between(1, 8);
    const double flat = draws.between(1, 3), upright = draws.between(1, 4);
    const double past_flat = draws.between(2, 10), past_upright = draws.between(2, 20);
    const auto now_flat = arrived(draws, now * times * flat);
    const auto now_upright = arrived(draws, now * upright);
    const auto then_flat = arrived(draws, past * times * past_flat);
    const auto then_upright = arrived(draws, past * past_upright);
    return drawn_at_least(now_flat, now_flat + now_upright, now_flat + then_flat,
                          now_upright + then_upright, flat / upright / (past_flat / past_upright));
  });
}

std::vector<PanelLine> lines_of(const std::vector<Polyline>& lines) {
  std::vector<PanelLine> out;
  for (const Polyline& line : lines) out.push_back({line});
  return out;
}

DirtPanel dirt_panel(const job::PatternPanel& from) {
  DirtPanel out;
  out.panel = std::to_string(static_cast<int>(from.panel));
  out.outline = from.shape.outline.corners;
  out.lie = static_cast<Lie>(from.shape.attitude);
  out.plastic = from.shape.substrate == trade::Substrate::Plastic;
  for (const MaskedEdge& edge : from.shape.masked_edges) out.masked_edges.push_back({edge.line});
  out.seams = lines_of(from.shape.seams);
  for (const Polygon& strip : from.shape.reach_over) out.reach_strips.push_back({strip.corners});
  return out;
}

// Whole cars with dirt that lies by chance: as everywhere, flat panels catch more. The history
// comes from the same shop. All signs together may cry wolf on one car in twenty.
TEST(DirtStatistics, RandomDirtOfWholeCarsSeldomPoints) {
  constexpr int cars = 2000 / part;
  Draws draws(11);
  int points = 0, looked_at = 0, with_panels = 0;
  double signs = 0;
  std::map<DirtSign, int> blamed;
  for (int i = 0; i < cars; ++i) {
    DirtPattern car;
    const double per_m2 = draws.between(2, 12);
    const double flat_times = draws.between(1, 5);
    std::vector<job::PatternPanel> all = panels_of(static_cast<std::size_t>(i));
    draws.shuffle(all);
    all.resize(4 + draws.below(4));
    for (const auto& one : all) {
      DirtPanel panel = dirt_panel(one);
      panel.sprayed = static_cast<int>(car.panels.size()) + 1;
      const double rate = per_m2 * (panel.lie == Lie::Flat ? flat_times : 1);
      const double m2 = area_mm2(Polygon{panel.outline}) / 1e6;
      panel.marks =
          random_marks(panel.outline, static_cast<std::size_t>(arrived(draws, rate * m2)), draws);
      with_panels += panel.marks.size() >= dirt_least_on_panel;
      car.panels.push_back(std::move(panel));
    }
    if (i % 4 != 0)  // some have none yet
      car.history =
          FlatHistory{arrived(draws, 5 * flat_times * 6), 6, arrived(draws, 5 * 12.0), 12};
    car.seed = draws.bits();
    const auto result = dirt_pattern(car);
    ASSERT_TRUE(result);
    looked_at += result->word != DirtWord::TooFew;
    signs += static_cast<double>(result->evidence.size()) / cars;
    if (result->word != DirtWord::Points) continue;
    ++points;
    ++blamed[result->evidence.front().sign];
  }
  const double share = 100.0 * points / cars;
  std::printf(
      "false alarms: %.2f %% of %d cars (%d not too few; %.1f signs a car, %d panels scanned)\n",
      share, cars, looked_at, signs, with_panels);
  for (const auto& [sign, count] : blamed)
    std::printf("  %s: %d\n", std::string(word_of(sign)).c_str(), count);
  EXPECT_GT(looked_at, cars * 3 / 4);
  EXPECT_LE(share, 6.5);
  EXPECT_GT(share, 0.5) << "so careful that it would never speak";
}

// Three of six marks on a panel of 1.2 m2 lie within so much of one place.
double power(double within_mm, std::uint64_t seed) {
  constexpr int panels = 400 / part;
  Draws draws(seed);
  int points = 0;
  for (int i = 0; i < panels; ++i) {
    DirtPattern car;
    DirtPanel panel;
    panel.panel = "hood";
    panel.outline = {{0, 0}, {1200, 0}, {1200, 1000}, {0, 1000}};
    panel.marks = random_marks(panel.outline, 4, draws);
    while (panel.marks.size() < 6) {
      const Point_mm& middle = panel.marks.front();
      const double turn = draws.between(0, 2 * std::numbers::pi);
      const double far = within_mm * std::sqrt(draws.unit());
      const Point_mm one{middle.x_mm + far * std::cos(turn), middle.y_mm + far * std::sin(turn)};
      if (contains(Polygon{panel.outline}, one)) panel.marks.push_back(one);
    }
    car.panels.push_back(std::move(panel));
    car.seed = draws.bits();
    points += dirt_pattern(car)->word == DirtWord::Points;
  }
  return 100.0 * points / panels;
}

TEST(DirtStatistics, PlantedClustersAreFoundMoreOftenThanChance) {
  const double wide = power(150, 3);
  const double tight = power(75, 4);
  std::printf("power, 3 of 6 marks on 1.2 m2: %.1f %% within 150 mm, %.1f %% within 75 mm\n", wide,
              tight);
  EXPECT_GT(wide, 6.5);
  EXPECT_GT(tight, wide);
}

}  // namespace
}  // namespace jambline::trade
