// Where things stand on a chart. Expectations are worked out by hand from the calendar and from
// the rules in the header.
#include "chart_geometry.h"

#include <QLocale>
#include <gtest/gtest.h>
#include <random>

#include "chart_look.h"
#include "trade/control_chart.h"

namespace jambline::theme {
namespace {

constexpr double may_1_2026 = 20574;  // days since 1970-01-01; `date -ud 2026-05-01 +%s` / 86400

std::string words(const std::vector<DayTick>& ticks) {
  std::string out;
  for (const auto& tick : ticks) out += (out.empty() ? "" : ", ") + tick.words.toStdString();
  return out;
}

// A page hands the signals of a chart to the theme by number.
static_assert(static_cast<int>(ChartLook::Value::Above) ==
              static_cast<int>(trade::ChartSignal::Above));
static_assert(static_cast<int>(ChartLook::Value::Below) ==
              static_cast<int>(trade::ChartSignal::Below));
static_assert(static_cast<int>(ChartLook::Value::RunAbove) ==
              static_cast<int>(trade::ChartSignal::RunAbove));
static_assert(static_cast<int>(ChartLook::Value::RunBelow) ==
              static_cast<int>(trade::ChartSignal::RunBelow));

class ChartGeometry : public testing::Test {
 protected:
  ChartGeometry() { QLocale::setDefault(QLocale(QLocale::English, QLocale::UnitedStates)); }
};

TEST_F(ChartGeometry, TicksAreRoundFewAndReachOverTheHighest) {
  EXPECT_EQ(round_ticks(7.3, 6), (std::vector<double>{0, 2, 4, 6, 8}));
  EXPECT_EQ(round_ticks(10, 6), (std::vector<double>{0, 2, 4, 6, 8, 10}));
  EXPECT_EQ(round_ticks(10, 3), (std::vector<double>{0, 5, 10}));
  EXPECT_EQ(round_ticks(0.4, 5).size(), 5u);
  EXPECT_EQ(round_ticks(0, 4).back(), 1);
  for (const double high : {1e-7, 0.013, 0.99, 1.0, 3.3, 4096.0, 7e9})
    for (const int most : {2, 3, 4, 6}) {
      const auto ticks = round_ticks(high, most);
      EXPECT_LE(static_cast<int>(ticks.size()), most) << high;
      EXPECT_GE(ticks.back(), high * (1 - 1e-9)) << most;
    }
}

TEST_F(ChartGeometry, ATickHasAsManyDecimalsAsItsStep) {
  EXPECT_EQ(tick_words(2, 2).toStdString(), "2");
  EXPECT_EQ(tick_words(0.5, 0.5).toStdString(), "0.5");
  EXPECT_EQ(tick_words(0.15, 0.05).toStdString(), "0.15");
  EXPECT_EQ(tick_words(2000, 1000).toStdString(), "2000");
}

TEST_F(ChartGeometry, DaysAreSaidByDayWeekMonthOrYear) {
  EXPECT_EQ(words(day_ticks(may_1_2026, may_1_2026 + 3.5, 5)), "May 1, May 2, May 3, May 4");
  // 2026-05-04 is a Monday.
  EXPECT_EQ(words(day_ticks(may_1_2026, may_1_2026 + 30, 5)), "May 4, May 11, May 18, May 25");
  EXPECT_EQ(words(day_ticks(may_1_2026 - 1, may_1_2026 + 365, 5)), "Jul, Oct, 2027, Apr");
  EXPECT_EQ(words(day_ticks(may_1_2026, may_1_2026 + 3653, 5)), "2028, 2030, 2032, 2034, 2036");
  EXPECT_TRUE(day_ticks(5, 5, 4).empty());
  for (double length = 1; length < 6000; length *= 1.7)
    for (const int most : {1, 3, 6}) {
      const auto ticks = day_ticks(may_1_2026, may_1_2026 + length, most);
      EXPECT_LE(static_cast<int>(ticks.size()), most) << length;
      for (const auto& tick : ticks) EXPECT_GE(tick.day, may_1_2026);
    }
}

TEST_F(ChartGeometry, OneFarOffValueDoesNotPressTheOthersFlat) {
  std::vector<double> values(100, 2.0);
  EXPECT_DOUBLE_EQ(chart_top(values, {}), 2);
  values.push_back(60);
  EXPECT_DOUBLE_EQ(chart_top(values, {}), 3);
  EXPECT_DOUBLE_EQ(chart_top(values, {4, 5, 6}), 5);
  EXPECT_DOUBLE_EQ(chart_top({0, 0}, {}), 1);
}

TEST_F(ChartGeometry, TheViewZoomsAboutTheFingerAndStaysInTheWhole) {
  const DayView whole{0, 100};
  const DayView half = zoomed(whole, whole, 2, 25);
  EXPECT_DOUBLE_EQ(half.from_day, 12.5);  // what was a quarter along is so still
  EXPECT_DOUBLE_EQ(half.to_day, 62.5);
  EXPECT_EQ(zoomed(half, whole, 0.1, 40), whole);
  EXPECT_DOUBLE_EQ(zoomed(whole, whole, 1e6, 50).length_days(), 3);
  EXPECT_EQ(moved(half, whole, 1000), (DayView{50, 100}));
  EXPECT_EQ(moved(half, whole, -1000), (DayView{0, 50}));
}

TEST_F(ChartGeometry, LabelsTakeTurnsInTheLanesAndTheStrongOnesChooseFirst) {
  const auto places =
      place_labels({{10, 50, false}, {30, 50, true}, {40, 50, false}, {290, 50, false}}, 2, 300, 4);
  EXPECT_EQ(places[1], (LabelPlace{0, 30}));   // right of its line, next to the chart
  EXPECT_EQ(places[3], (LabelPlace{0, 240}));  // left of it where the room ends
  EXPECT_EQ(places[0].lane, 1);                // its words would lie on those of the strong one
  EXPECT_EQ(places[2].lane, -1);               // its line would cross them
}

TEST_F(ChartGeometry, ALabelWithoutRoomOnEitherSideStandsOverItsLine) {
  EXPECT_EQ(place_labels({{120, 230, true}}, 3, 320, 4)[0], (LabelPlace{0, 90}));
  EXPECT_EQ(place_labels({{120, 330, true}}, 3, 320, 4)[0].lane, -1);
}

TEST_F(ChartGeometry, NoLabelEverLiesOnAnotherOrOnItsLine) {
  std::mt19937 random(11);
  for (int round = 0; round < 300; ++round) {
    std::vector<LabelWish> wishes;
    for (int i = 0; i < 12; ++i)
      wishes.push_back({std::uniform_real_distribution(0.0, 380.0)(random),
                        std::uniform_real_distribution(30.0, 120.0)(random), random() % 4 == 0});
    const auto places = place_labels(wishes, 3, 380, 4);
    for (std::size_t a = 0; a < places.size(); ++a) {
      if (places[a].lane < 0) continue;
      EXPECT_GE(places[a].left, 0);
      EXPECT_LE(places[a].left + wishes[a].width, 380);
      for (std::size_t b = 0; b < places.size(); ++b) {
        if (b == a || places[b].lane < 0) continue;
        if (places[a].lane == places[b].lane) {
          EXPECT_TRUE(places[a].left + wishes[a].width <= places[b].left ||
                      places[b].left + wishes[b].width <= places[a].left);
        }
        if (places[b].lane > places[a].lane) {
          EXPECT_FALSE(wishes[b].at > places[a].left &&
                       wishes[b].at < places[a].left + wishes[a].width);
        }
      }
    }
  }
}

TEST_F(ChartGeometry, ThePointUnderAFingerIsTheNearestWithinReach) {
  EXPECT_EQ(nearest({10, 20, 90}, {10, 10, 50}, 17, 12, 24), 1);
  EXPECT_EQ(nearest({10, 20, 90}, {10, 10, 50}, 60, 30, 24), -1);
  EXPECT_EQ(nearest({10, 10}, {10, 10}, 10, 10, 24), 1);
  EXPECT_EQ(nearest({}, {}, 0, 0, 24), -1);
}

TEST_F(ChartGeometry, ARatioAndItsInverseStandAsFarFromTheMiddle) {
  EXPECT_DOUBLE_EQ(log_place(1, 8), 0.5);
  EXPECT_DOUBLE_EQ(log_place(8, 8), 1);
  EXPECT_DOUBLE_EQ(log_place(0.125, 8), 0);
  EXPECT_DOUBLE_EQ(log_place(2, 8) - 0.5, 0.5 - log_place(0.5, 8));
  EXPECT_DOUBLE_EQ(log_place(0, 8), 0);
  EXPECT_DOUBLE_EQ(log_place(1e9, 8), 1);
}

}  // namespace
}  // namespace jambline::theme
