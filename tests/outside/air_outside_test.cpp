// Air: exposure, protection, clearance, airflow and dew point against values from outside.
#include <gtest/gtest.h>

#include "tests/outside/table.h"
#include "trade/airflow.h"
#include "trade/clearance.h"
#include "trade/climate.h"
#include "trade/concentration.h"
#include "trade/exposure.h"
#include "trade/protection.h"

namespace jambline::trade {
namespace {

using outside::number;
using outside::numbers;
using outside::same;
using outside::table;

Exposure day_of(const outside::Row& row) {
  const bool mixture = row.at("kind") == "mixture";
  const auto values = numbers(row.at("values_ppm"));
  const auto hours = numbers(row.at("hours"));
  const auto limits = numbers(row.at("limits_ppm"));
  Exposure day;
  double from_h = 0;
  for (std::size_t i = 0; i < values.size(); ++i) {
    const std::string name = mixture ? "substance " + std::to_string(i) : "A";
    if (mixture) from_h = 0;
    day.samples.push_back({name, values[i], from_h, from_h + hours[i]});
    from_h += hours[i];
    if (mixture || i == 0)
      day.limits.push_back({name, LimitKind::EightHours, limits[i], "ppm", "OSHA", 1971});
  }
  return day;
}

TEST(ExposureOutside, TheExamplesOfTheRegulation) {
  for (const auto& row : table("exposure_examples.csv")) {
    const auto result = compare_exposure(day_of(row));
    ASSERT_TRUE(result) << row.at("example");
    const bool mixture = row.at("kind") == "mixture";
    ASSERT_EQ(result->mixture.has_value(), mixture);
    EXPECT_TRUE(same(mixture ? *result->mixture : result->against[0].value, number(row, "result")));
    EXPECT_EQ(mixture ? *result->mixture > 1 : result->against[0].over, row.at("over") == "yes");
  }
}

// Source: 29 CFR 1910.1000(d)(1)(i); the divisor is always 8, not the hours worked
TEST(ExposureOutside, AShortDayIsDividedByEightHours) {
  const auto result = compare_exposure(
      {{{"A", 160, 0, 4}}, {{"A", LimitKind::EightHours, 100, "ppm", "OSHA", 1971}}});
  ASSERT_TRUE(result);
  EXPECT_TRUE(same(result->against[0].value, 80));
  EXPECT_FALSE(result->against[0].over);  // 160 over the four hours worked would be
}

// Source: 29 CFR 1910.1000(a)(1) and table Z-1; TDI has a ceiling of 0.02 ppm, a passed average is
// none
TEST(ExposureOutside, APassedAverageIsNoPassOfACeiling) {
  const auto result =
      compare_exposure({{{"TDI", 0.05, 1, 1.25}},
                        {{"TDI", LimitKind::EightHours, 0.005, "ppm", "NIOSH", 1989},
                         {"TDI", LimitKind::Ceiling, 0.02, "ppm", "OSHA", 1971}}});
  ASSERT_TRUE(result);
  EXPECT_TRUE(same(result->against[0].value, 0.05 * 0.25 / 8));
  EXPECT_FALSE(result->against[0].over);
  EXPECT_TRUE(result->against[1].over);
}

TEST(ExposureOutside, MilligramsOfPartsPerMillion) {
  for (const auto& row : table("concentrations.csv")) {
    Concentration in;
    in.mg_m3 = number(row, "mg_m3");
    in.molar_mass_g = number(row, "molar_mass_g");
    const auto out = convert_concentration(in);
    ASSERT_TRUE(out);
    const double off = std::abs(out->ppm / number(row, "ppm") - 1);
    const bool rounded = row.at("rounded") == "yes";
    EXPECT_LT(off, rounded ? 0.03 : 0.005) << row.at("substance") << " " << out->ppm;
    if (rounded) {
      EXPECT_GT(off, 0.005) << row.at("substance");
    }
  }
}

// Source: NIOSH Pocket Guide; 24.45 L/mol at 25 C and 760 torr; HSE and EU: 24.04 to 24.06 at 20 C
TEST(ExposureOutside, OneMoleOfAirAtTheTemperatureOfTheLimit) {
  EXPECT_NEAR(molar_volume_l(25, 101.325), 24.45, 0.02);
  EXPECT_GT(molar_volume_l(20, 101.325), 24.04);
  EXPECT_LT(molar_volume_l(20, 101.325), 24.06);
}

TEST(ProtectionOutside, EveryFactorOfTheTableTimesTheLimit) {
  for (const auto& row : table("protection_factors.csv")) {
    const double factor = number(row, "factor");
    const auto use = maximum_use(
        {factor, FactorScheme::Us, 0.005, "ppm", "NIOSH", 2007, FactorScheme::Us, {}, {}});
    ASSERT_TRUE(use) << row.at("respirator");
    EXPECT_TRUE(same(use->most, factor / 200));
    // A factor of one scheme with a limit of the other says nothing.
    EXPECT_FALSE(maximum_use(
        {factor, FactorScheme::Us, 0.02, "mg/m3", "HSE", 2020, FactorScheme::Uk, {}, {}}));
  }
}

TEST(ProtectionOutside, TheLowestOfFactorDangerAndDeviceGoverns) {
  for (const auto& row : table("most_uses.csv")) {
    MaximumUse in{number(row, "factor"),
                  FactorScheme::Us,
                  number(row, "limit"),
                  row.at("unit"),
                  "NIOSH and OSHA",
                  2007,
                  FactorScheme::Us,
                  {},
                  {}};
    if (!row.at("dangerous").empty()) in.dangerous = number(row, "dangerous");
    if (!row.at("device").empty()) in.device_most = number(row, "device");
    const auto use = maximum_use(in);
    ASSERT_TRUE(use);
    EXPECT_TRUE(same(use->most, number(row, "most"))) << row.at("substance");
    EXPECT_EQ(use->bound_by, row.at("bound_by")) << row.at("substance") << row.at("factor");
  }
}

TEST(ProtectionOutside, OverallFitFactorIsHarmonic) {
  for (const auto& row : table("fit_factors.csv")) {
    const auto factors = numbers(row.at("factors"));
    for (const auto piece : {Facepiece::Half, Facepiece::Full}) {
      const auto fit = fit_test({factors, piece, 10, 365});
      ASSERT_TRUE(fit);
      EXPECT_TRUE(same(fit->overall_factor, number(row, "overall")));
      EXPECT_LE(fit->overall_factor, number(row, "arithmetic") * (1 + 1e-12));
      EXPECT_EQ(fit->passes, row.at(piece == Facepiece::Half ? "half" : "full") == "yes");
    }
  }
}

// Source: WAC 296-307-60605, a copy of 29 CFR 1910.134(f)(2); a fit test at least every twelve
// months
TEST(ProtectionOutside, AFitTestLastsTwelveMonths) {
  EXPECT_TRUE(fit_test({{200}, Facepiece::Half, 365, 365})->in_date);
  EXPECT_FALSE(fit_test({{200}, Facepiece::Half, 366, FitTest{}.valid_days})->in_date);
}

// Source: 29 CFR 1910.134(d)(3)(iii)(B)(2); a change schedule rests on data, written down
TEST(ProtectionOutside, ACartridgeScheduleWithoutDataIsRefused) {
  EXPECT_FALSE(cartridge_left({8, "", {2, 3}}));
  const auto left = cartridge_left({8, "the maker's table of break-through at 25 C", {2, 3}});
  ASSERT_TRUE(left);
  EXPECT_TRUE(same(left->left_h, 3));
  EXPECT_FALSE(left->change);
}

TEST(ClearanceOutside, TheTableOfAirChanges) {
  for (const auto& row : table("air_changes.csv")) {
    const double changes = number(row, "changes_1_h");
    EXPECT_EQ(std::lround(purge_min(changes, 99)), number(row, "min_99")) << changes;
    EXPECT_EQ(std::lround(purge_min(changes, 99.9)), number(row, "min_999")) << changes;
    // A mixing factor multiplies the time of a room that is mixed at once.
    Clearance booth;
    booth.volume_m3 = 100;
    booth.exhaust_m3_h = 100 * changes;
    booth.mixing_factor = 1;
    EXPECT_EQ(std::lround(clearance_time(booth)->minutes), number(row, "min_999")) << changes;
    booth.mixing_factor = 3;
    EXPECT_TRUE(same(clearance_time(booth)->minutes, 3 * purge_min(changes, 99.9)));
  }
}

TEST(ClearanceOutside, AirChangesThatBelongToPublishedMinutes) {
  for (const auto& row : table("clearance_facts.csv")) {
    const double minutes = purge_min(number(row, "changes_1_h"), 99.9);
    EXPECT_TRUE(same(minutes, number(row, "minutes")));
    EXPECT_EQ(std::lround(minutes), number(row, "printed"));
  }
}

// Source: HSE, clearance time of vehicle body repair; smoke test at the examination every 14 months
TEST(ClearanceOutside, ASmokeTestIsNeverInDateAfterFourteenMonths) {
  // The shortest fourteen months: two Februaries of 28 days in them.
  const int days[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  int shortest = 1000;
  for (int from = 0; from < 12; ++from) {
    int sum = 0;
    for (int i = 0; i < 14; ++i) sum += days[(from + i) % 12];
    shortest = std::min(shortest, sum);
  }
  EXPECT_LE(SmokeTest{}.valid_days, shortest);
  EXPECT_GT(SmokeTest{}.valid_days, shortest - 7);
}

// Source: HSE SMART guidance; 30 min after small repairs in an open workshop, whatever fan there is
TEST(ClearanceOutside, AnOpenFloorIsNoMixedBox) {
  Clearance open;
  open.place = SprayPlace::OpenDeck;
  open.volume_m3 = 100;
  open.exhaust_m3_h = 40000;  // in a booth a minute
  EXPECT_FALSE(clearance_time(open));
  open.fixed_min = 30;
  EXPECT_EQ(clearance_time(open)->minutes, 30);
  EXPECT_EQ(clearance_time(open)->rule, ClearanceRule::FixedTime);
}

TEST(AirflowOutside, DilutionToAShareOfTheExplosiveLimit) {
  for (const auto& row : table("dilution_air.csv")) {
    const auto air = dilution_air(
        {number(row, "vapor_ft3_gal"), number(row, "lel_percent"), number(row, "share")});
    ASSERT_TRUE(air);
    EXPECT_EQ(std::lround(air->air_ft3_gal), number(row, "air_ft3_gal")) << row.at("solvent");
  }
}

TEST(AirflowOutside, MeanAndUncertaintyAgainstTheWantedVelocity) {
  for (const auto& row : table("r_airflow.csv")) {
    Airflow in;
    in.velocities_m_s = numbers(row.at("velocities_m_s"));
    in.wanted_m_s = number(row, "wanted_m_s");
    in.instrument_percent = number(row, "instrument_percent");
    const auto air = compare_airflow(in);
    ASSERT_TRUE(air);
    EXPECT_TRUE(same(air->mean_m_s, number(row, "mean_m_s")));
    EXPECT_TRUE(same(air->low_m_s, number(row, "low_m_s")));
    EXPECT_TRUE(same(air->high_m_s, number(row, "high_m_s")));
    EXPECT_EQ(word_of(air->word), row.at("word"));
  }
}

TEST(AirflowOutside, TheDayOnWhichAFilterIsDue) {
  for (const auto& row : table("r_filter_days.csv")) {
    FilterTrend in;
    const auto days = numbers(row.at("days"));
    const auto pressures = numbers(row.at("pressures_pa"));
    for (std::size_t i = 0; i < days.size(); ++i) in.readings.push_back({days[i], pressures[i]});
    in.limit_pa = number(row, "limit_pa");
    const auto due = filter_due(in);
    ASSERT_TRUE(due && due->due_day);
    EXPECT_TRUE(same(due->rise_pa_d, number(row, "rise_pa_d")));
    EXPECT_TRUE(same(*due->due_day, number(row, "due_day")));
    ASSERT_EQ(due->due_early_day.has_value(), !row.at("early_day").empty()) << row.at("days");
    if (!due->due_early_day) continue;
    EXPECT_TRUE(same(*due->due_early_day, number(row, "early_day")));
    EXPECT_TRUE(same(*due->due_late_day, number(row, "late_day")));
  }
}

TEST(ClimateOutside, DewPointGrid) {
  for (const auto& row : table("r_dew_points.csv"))
    EXPECT_TRUE(same(dew_point_c(number(row, "air_c"), number(row, "humidity_percent")),
                     number(row, "dew_c")));
}

TEST(ClimateOutside, DewPointsAsTheyArePrinted) {
  for (const auto& row : table("dew_points_printed.csv")) {
    const double dew = dew_point_c(number(row, "air_c"), number(row, "humidity_percent"));
    EXPECT_GE(dew, number(row, "dew_c") - number(row, "low_by")) << row.at("humidity_percent");
    EXPECT_LE(dew, number(row, "dew_c") + number(row, "high_by")) << row.at("humidity_percent");
  }
}

// Source: a public coatings manual; the surface 3 C (5 F) or more over the dew point
TEST(ClimateOutside, ThreeDegreesOverTheDewPoint) {
  Climate in;
  in.air_c = 20;
  in.humidity_percent = 60;
  in.surface_min_c = 0;
  in.surface_from_air_max_c = 40;
  in.surface_c = dew_point_c(20, 60) + 3 + 1e-6;
  EXPECT_TRUE(check_climate(in)->go);
  in.surface_c -= 0.01;
  EXPECT_FALSE(check_climate(in)->go);
}

// Source: WMO CIMO guide annex 4.B; 23.326 hPa over water at 20 C, as 17.24 g/m3 by the gas law
TEST(ClimateOutside, WaterInSaturatedAir) {
  EXPECT_NEAR(vapor_g_m3(20, 100), 2332.6 / (461.5 * 293.15) * 1000, 1e-3);
}

}  // namespace
}  // namespace jambline::trade
