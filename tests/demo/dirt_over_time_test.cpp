// What the chart of the dirt says of the demo shop, where it is known what threw the dirt: hidden
// causes are found when they began and ended, and nothing is found where there are none.
#include "folds/dirt_over_time.h"

#include <algorithm>
#include <gtest/gtest.h>
#include <random>
#include <set>

#include "app/demo/booths.h"
#include "tests/demo/folded_shop.h"

namespace jambline::demo {
namespace {

using folds::DirtOverTime;
using job::BoothEvent;

constexpr std::int64_t day_ms = 86'400'000;
// A sanitizer looks for faults of memory and threads, for which some shops will do.
#ifdef JAMBLINE_SANITIZED
constexpr std::uint64_t shops = 3;
#else
constexpr std::uint64_t shops = 20;
#endif

struct Chart {
  DirtOverTime dirt;
  trade::DirtChartResult result;
};

std::vector<Chart> charts_of(const FoldedShop& shop) {
  std::vector<Chart> out;
  for (const auto& booth : shop.shop.booths) {
    Chart& one = out.emplace_back();
    one.dirt = folds::dirt_over_time(shop.lessons, shop.shop.booth_events, {.booth = booth.booth});
    one.result = log::must(trade::dirt_chart(one.dirt.chart));
  }
  return out;
}

// Which booth, what was done, how many days before the shop is looked at.
using Flag = std::tuple<std::size_t, BoothEvent, int>;
std::set<Flag> flags_of(const std::vector<Chart>& charts) {
  std::set<Flag> out;
  for (std::size_t booth = 0; booth < charts.size(); ++booth)
    for (std::size_t i = 0; i < charts[booth].dirt.changes.size(); ++i) {
      const auto* effect = folds::effect_of(charts[booth].dirt, i, charts[booth].result);
      if (!effect || !folds::flagged(*effect)) continue;
      EXPECT_TRUE(charts[booth].dirt.changes[i].enough());
      const auto& done = charts[booth].dirt.changes[i].done.front();
      const auto days = (invented_evening_ms - done.happened_ms) / day_ms;
      out.insert({booth, done.what, static_cast<int>(days)});
    }
  return out;
}

int signals_of(const trade::DirtChartResult& result) {
  int out = 0;
  for (const auto& point : result.points) out += point.signal == trade::ChartSignal::None ? 0 : 1;
  return out;
}

// The same cars and changes, the nibs of each drawn anew around `mean(car, its place)`.
template <class Mean>
int signals_drawn(const Chart& chart, std::mt19937_64& random, Mean mean) {
  trade::DirtChart drawn = chart.dirt.chart;
  for (std::size_t i = 0; i < drawn.jobs.size(); ++i)
    drawn.jobs[i].marks = std::poisson_distribution<std::int64_t>(std::max(mean(i), 1e-9))(random);
  return signals_of(log::must(trade::dirt_chart(drawn)));
}

TEST(DirtOfTheDemoShop, FiltersAndHoseAreFlaggedWhenTheyChangedAndNothingElseIs) {
  const FoldedShop shop(DemoOptions{.in_work = 0});
  const auto charts = charts_of(shop);
  ASSERT_EQ(charts.size(), booth_count);
  EXPECT_EQ(charts[0].dirt.changes.size(), 7U);
  EXPECT_EQ(charts[1].dirt.changes.size(), 5U);
  for (const auto& chart : charts)
    for (std::size_t i = 0; i < chart.dirt.changes.size(); ++i) {
      EXPECT_TRUE(chart.dirt.changes[i].enough());
    }
  // An event stands before the first working day after the change, up to three days later.
  const auto days = [](int constant, const std::set<Flag>& flags, std::size_t booth) {
    for (const auto& [at, what, ago] : flags)
      if (at == booth && constant - ago >= 0 && constant - ago <= 3) return ago;
    return -1;
  };
  const auto flags = flags_of(charts);
  const std::set<Flag> hidden{
      {0, BoothEvent::FiltersChanged, days(filter_changed_days_ago, flags, 0)},
      {1, BoothEvent::NewHose, days(hose_bad_from_days_ago, flags, 1)},
      {1, BoothEvent::NewHose, days(hose_bad_until_days_ago, flags, 1)},
  };
  EXPECT_EQ(flags, hidden);
}

// How often a point stands out by chance is drawn, with the chart's own limits (a Poisson tail of
// 0.00135 on each side) and runs (8 on one side): once where every square metre of a segment
// catches the same, and once as in this shop, where what lies flat catches more, so that cars
// differ.
TEST(DirtOfTheDemoShop, WithoutCausesOneShopInTwentyAtMostIsFlaggedAndPointsStandOutAsRarely) {
  int flagged = 0, signals = 0, cars = 0, of_one_rate = 0, of_lying_flat = 0;
  constexpr int draws = 4;
  std::mt19937_64 random(7);
  for (std::uint64_t seed = 1; seed <= shops; ++seed) {
    const FoldedShop shop(DemoOptions{.seed = seed, .in_work = 0, .causes = false});
    const auto charts = charts_of(shop);
    flagged += flags_of(charts).empty() ? 0 : 1;
    for (const auto& chart : charts) {
      cars += static_cast<int>(chart.result.points.size());
      signals += signals_of(chart.result);
      for (int i = 0; i < draws; ++i) {
        of_one_rate += signals_drawn(chart, random, [&](std::size_t car) {
          return chart.result.points[car].limits.center * chart.dirt.chart.jobs[car].area_m2;
        });
        of_lying_flat += signals_drawn(chart, random, [&](std::size_t car) {
          return shop.mean_nibs.at(chart.dirt.cars[car].job);
        });
      }
    }
  }
  const double seen = 100.0 * signals / cars;
  const double one_rate = 100.0 * of_one_rate / draws / cars;
  const double lying_flat = 100.0 * of_lying_flat / draws / cars;
  std::printf("figure chart_signals_per_100 %.3f cars\n", seen);
  std::printf("figure chart_signals_per_100_of_one_rate %.3f cars\n", one_rate);
  std::printf("figure chart_signals_per_100_of_lying_flat %.3f cars\n", lying_flat);
  EXPECT_EQ(cars, static_cast<int>(shops) * 400);
  EXPECT_LE(flagged, 1);
  EXPECT_GT(seen, 0);
  EXPECT_LT(seen, 2 * lying_flat);
}

}  // namespace
}  // namespace jambline::demo
