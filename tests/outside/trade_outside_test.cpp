// The calculations of the trade against values from outside; the source stands beside each.
#include <cmath>
#include <gtest/gtest.h>

#include "trade/airflow.h"
#include "trade/clearance.h"
#include "trade/climate.h"
#include "trade/control_chart.h"
#include "trade/correction_plan.h"
#include "trade/cure_clock.h"
#include "trade/exposure.h"
#include "trade/film.h"
#include "trade/panel_fit.h"
#include "trade/photo_judgement.h"
#include "trade/points.h"
#include "trade/protection.h"
#include "trade/ready_by.h"

namespace jambline::trade {
namespace {

// 29 CFR 1910.1000(d)(1)(ii): 2 h at 150, 2 h at 75, 4 h at 50 ppm, limit 100: 81.25.
TEST(ExposureOutside, TheEightHourExampleOfTheRegulation) {
  const Exposure day{{{"A", 150, 0, 2}, {"A", 75, 2, 4}, {"A", 50, 4, 8}},
                     {{"A", LimitKind::EightHours, 100, "ppm", "OSHA", 1971}}};
  const auto result = compare_exposure(day);
  ASSERT_TRUE(result);
  EXPECT_DOUBLE_EQ(result->against[0].value, 81.25);
  EXPECT_FALSE(result->against[0].over);
}

// 29 CFR 1910.1000(d)(2)(ii): B 500/1000, C 45/200, D 40/200: 0.925.
TEST(ExposureOutside, TheMixtureExampleOfTheRegulation) {
  const Exposure day{{{"B", 500, 0, 8}, {"C", 45, 0, 8}, {"D", 40, 0, 8}},
                     {{"B", LimitKind::EightHours, 1000, "ppm", "OSHA", 1971},
                      {"C", LimitKind::EightHours, 200, "ppm", "OSHA", 1971},
                      {"D", LimitKind::EightHours, 200, "ppm", "OSHA", 1971}}};
  const auto result = compare_exposure(day);
  ASSERT_TRUE(result && result->mixture);
  EXPECT_NEAR(*result->mixture, 0.925, 1e-12);
}

// NIOSH Pocket Guide: 1 ppm of HDI is 6.88 mg/m3, of MDI 10.24, of TDI 7.13 (the last two from
// memory).
TEST(ExposureOutside, PartsPerMillionAtTwentyFiveDegrees) {
  const double volume = molar_volume_l(25, 101.325);
  EXPECT_NEAR(volume, 24.45, 0.02);
  EXPECT_NEAR(mg_m3_of_ppm(1, 168.2, volume), 6.88, 0.01);
  EXPECT_NEAR(mg_m3_of_ppm(1, 250.3, volume), 10.24, 0.01);
  EXPECT_NEAR(mg_m3_of_ppm(1, 174.2, volume), 7.13, 0.01);
}

// 29 CFR 1910.134 appendix A, part I.C: harmonic mean; the arithmetic mean would pass the last row.
TEST(ProtectionOutside, OverallFitFactorIsHarmonic) {
  const auto overall = [](std::vector<double> factors, Facepiece piece) {
    return *fit_test({std::move(factors), piece, 10, 365});
  };
  const auto half = overall({200, 150, 100, 120, 180, 90, 160}, Facepiece::Half);
  EXPECT_NEAR(half.overall_factor, 132.2835, 5e-5);
  EXPECT_TRUE(half.passes);
  const auto full = overall({1000, 800, 400, 900, 700, 650, 500}, Facepiece::Full);
  EXPECT_NEAR(full.overall_factor, 646.4635, 5e-5);
  EXPECT_TRUE(full.passes);
  const auto trap = overall({500, 500, 500, 500, 500, 500, 50}, Facepiece::Full);
  EXPECT_NEAR(trap.overall_factor, 218.75, 1e-9);
  EXPECT_FALSE(trap.passes);
}

// NIOSH Pocket Guide, HDI: limit 0.005 ppm x 10, 25, 50.
TEST(ProtectionOutside, TheLadderOfHdi) {
  for (const auto& [factor, most] : {std::pair{10.0, 0.05}, {25.0, 0.125}, {50.0, 0.25}}) {
    const auto use = maximum_use(
        {factor, FactorScheme::Us, 0.005, "ppm", "NIOSH", 2007, FactorScheme::Us, {}, {}});
    ASSERT_TRUE(use);
    EXPECT_NEAR(use->most, most, 1e-12);
  }
}

// CDC 2003, guidelines for environmental infection control, appendix B table B.1: every row.
TEST(ClearanceOutside, TheTableOfAirChanges) {
  struct Row {
    double changes;
    int min_99;
    int min_999;
  };
  for (const Row& row : {Row{2, 138, 207},
                         {4, 69, 104},
                         {6, 46, 69},
                         {8, 35, 52},
                         {10, 28, 41},
                         {12, 23, 35},
                         {15, 18, 28},
                         {20, 14, 21},
                         {50, 6, 8}}) {
    EXPECT_EQ(std::lround(purge_min(row.changes, 99)), row.min_99) << row.changes;
    EXPECT_EQ(std::lround(purge_min(row.changes, 99.9)), row.min_999) << row.changes;
  }
}

// 29 CFR 1910.94(c)(6)(ii), toluene: 4 (100 - 1.4) 30.4 / 1.4 = 8,564 ft3 (from memory).
TEST(AirflowOutside, DilutionOfToluene) {
  const auto air = dilution_air({30.4, 1.4, 0.25});
  ASSERT_TRUE(air);
  EXPECT_NEAR(air->air_ft3_gal, 8564, 0.5);
}

// WMO CIMO guide, annex 4.B, computed on a grid; printed to two places.
TEST(ClimateOutside, DewPointGrid) {
  const double humidity[] = {40, 50, 60, 70, 80, 85, 90};
  const struct {
    double air_c;
    double dew_c[7];
  } rows[] = {{15, {1.49, 4.65, 7.29, 9.57, 11.58, 12.50, 13.37}},
              {20, {5.98, 9.26, 12.00, 14.36, 16.44, 17.40, 18.31}},
              {25, {10.46, 13.85, 16.69, 19.15, 21.31, 22.30, 23.24}},
              {30, {14.93, 18.44, 21.39, 23.93, 26.17, 27.20, 28.18}}};
  for (const auto& row : rows)
    for (int i = 0; i < 7; ++i)
      EXPECT_NEAR(dew_point_c(row.air_c, humidity[i]), row.dew_c[i], 0.0051)
          << row.air_c << " " << humidity[i];
}

// OpenStax Chemistry 2e, section 12.5: HI at 555 and 781 K (two-point 185,420 J/mol with R
// = 8.314), and 1.66 at 650 K against 7.39 at 700 K (112,980). Levenspiel, example 2.3: 30 min at
// 336 K is as 15 s at 347 K (421,885). HELM workbook 6.4: 7.757192 at 310 K, 110.96 at 350 K
// (59,999.98).
TEST(CureOutside, ActivationEnergies) {
  const double r = 8.314 / 8.314462618;
  const auto energy = [&](double cold_k, double cold_rate, double hot_k, double hot_rate) {
    return r *
           activation_energy_j_mol(cold_k - 273.15, 1 / cold_rate, hot_k - 273.15, 1 / hot_rate);
  };
  EXPECT_NEAR(energy(555, 3.52e-7, 781, 3.95e-2), 185420, 10);
  EXPECT_NEAR(energy(650, 1.66, 700, 7.39), 112980, 10);
  EXPECT_NEAR(energy(336, 1 / 30.0, 347, 1 / 0.25), 421885, 10);
  EXPECT_NEAR(energy(310, 7.757192, 350, 110.96), 59999.98, 1);
}

// NIST/SEMATECH e-Handbook 6.3.3.1: 25 wafers, mean 16, limits 28 and 4; wafer 24 is out, wafer 3
// stands on the limit and is not.
TEST(ChartOutside, CountsOfTheHandbook) {
  const int counts[] = {16, 14, 28, 16, 12, 20, 10, 12, 10, 17, 19, 17, 14,
                        16, 15, 13, 14, 16, 11, 20, 11, 19, 16, 31, 13};
  DirtChart chart;
  chart.form = LimitForm::ThreeSigma;
  for (const int count : counts)
    chart.jobs.push_back({static_cast<double>(chart.jobs.size()), count, 1});
  const auto result = dirt_chart(chart);
  ASSERT_TRUE(result);
  EXPECT_DOUBLE_EQ(result->points[0].limits.center, 16);
  EXPECT_DOUBLE_EQ(result->points[0].limits.high, 28);
  EXPECT_DOUBLE_EQ(result->points[0].limits.low, 4);
  for (std::size_t i = 0; i < result->points.size(); ++i)
    EXPECT_EQ(result->points[i].signal == ChartSignal::Above, i == 23) << i;
}

// The same, 6.3.3.2: 347 of 1,500, 50 a wafer: 0.231333, 0.410239, 0.052428.
TEST(ChartOutside, SharesOfTheHandbook) {
  const auto limits = share_limits(347.0 / 1500, 50);
  EXPECT_NEAR(limits.center, 0.231333, 5e-7);
  EXPECT_NEAR(limits.high, 0.410239, 5e-7);
  EXPECT_NEAR(limits.low, 0.052428, 5e-7);
}

// Dyed cloth, rates of unlike areas (numbers of a public data set, limits computed by the formula).
TEST(ChartOutside, RatesOfUnlikeAreas) {
  const double mean = 153.0 / 109;
  const auto at = [&](double area) { return rate_limits(mean, area, LimitForm::ThreeSigma); };
  EXPECT_NEAR(at(10).high, 2.52764, 5e-6);
  EXPECT_NEAR(at(10).low, 0.27970, 5e-6);
  EXPECT_NEAR(at(8).high, 2.66030, 5e-6);
  EXPECT_NEAR(at(13).low, 0.41789, 5e-6);
}

// Clark and Evans 1954 on four points of the unit square: R = 2; Donnelly's with spatstat's 0.0412.
TEST(PointsOutside, FourPointsAreAsRegularAsCanBe) {
  const std::vector<Point_mm> points{{0.25, 0.25}, {0.75, 0.25}, {0.25, 0.75}, {0.75, 0.75}};
  EXPECT_DOUBLE_EQ(clark_evans_index(points, 1), 2);
  EXPECT_NEAR(donnelly_index(points, 1, 4), 1.5527950311, 5e-11);
}

// The example of scikit-learn's page on DBSCAN: labels 0 0 0 1 1 -1.
TEST(PointsOutside, GroupsOfTheDocumentation) {
  const std::vector<Point_mm> points{{1, 2}, {2, 2}, {2, 3}, {8, 7}, {8, 8}, {25, 80}};
  EXPECT_EQ(dbscan_groups(points, 3, 2), (std::vector<int>{0, 0, 0, 1, 1, -1}));
}

// SSPC-PA 2 of 1996: for 8 to 12 mil a spot may be 6.4 to 14.4.
TEST(FilmOutside, SpotsMayBeAFifthOutside) {
  const auto result = accept_film({{8 * 25.4, 12 * 25.4, 10 * 25.4}, 8 * 25.4, 12 * 25.4});
  ASSERT_TRUE(result);
  EXPECT_NEAR(result->spot_least_um / 25.4, 6.4, 1e-12);
  EXPECT_NEAR(result->spot_most_um / 25.4, 14.4, 1e-12);
  EXPECT_TRUE(result->accepted);
}

WorkItem fixed(const char* name, double length, std::vector<std::string> after) {
  return {name, length, length, length, false, std::move(after)};
}

// A worked example of seven activities, length 16 (studylib.net, document 8378728).
TEST(ReadyByOutside, EveryFloatOfAWorkedExample) {
  ReadyBy in;
  in.work = {fixed("A", 6, {}),    fixed("B", 2, {"A"}),      fixed("C", 2, {"A"}),
             fixed("D", 3, {"B"}), fixed("E", 4, {"D", "F"}), fixed("F", 2, {"C"}),
             fixed("G", 1, {"E"})};
  in.trials = 10;
  const auto result = ready_by(in);
  ASSERT_TRUE(result);
  EXPECT_DOUBLE_EQ(result->length_min, 16);
  const double expected[7][6] = {
      {0, 6, 0, 6, 0, 0},     {6, 8, 6, 8, 0, 0},   {6, 8, 7, 9, 1, 0},    {8, 11, 8, 11, 0, 0},
      {11, 15, 11, 15, 0, 0}, {8, 10, 9, 11, 1, 1}, {15, 16, 15, 16, 0, 0}};
  for (std::size_t i = 0; i < 7; ++i) {
    const auto& one = result->work[i];
    const double found[6] = {one.early_start_min, one.early_finish_min, one.late_start_min,
                             one.late_finish_min, one.total_float_min,  one.free_float_min};
    for (int k = 0; k < 6; ++k) EXPECT_DOUBLE_EQ(found[k], expected[i][k]) << one.name << " " << k;
  }
  EXPECT_DOUBLE_EQ(*result->p50_min, 16);
}

// Two critical paths at once: every float 0, length 18 (a public exercise, answers computed).
TEST(ReadyByOutside, SeveralCriticalPathsAreAllSaid) {
  ReadyBy in;
  in.work = {fixed("A", 7, {}),         fixed("B", 5, {}),    fixed("C", 3, {"A"}),
             fixed("D", 5, {"B"}),      fixed("E", 4, {"C"}), fixed("F", 4, {"C", "D"}),
             fixed("G", 3, {"E", "F"}), fixed("H", 1, {"G"})};
  in.trials = 0;
  const auto result = ready_by(in);
  ASSERT_TRUE(result);
  EXPECT_DOUBLE_EQ(result->length_min, 18);
  for (const auto& one : result->work) EXPECT_TRUE(one.critical) << one.name;
}

// A rigid move of five points by 0.8 degrees and (1.2, -0.7), exact and with noise; the noisy
// answer was computed by scipy 1.10.1, Rotation.align_vectors.
TEST(PanelFitOutside, RigidMovesAreFoundAgain) {
  const std::vector<Point_mm> from{{0, 0}, {900, 0}, {900, 450}, {0, 450}, {450, 225}};
  std::vector<Point_mm> to{{1.2, -0.7},
                           {901.112272, 11.865962},
                           {894.829290, 461.822098},
                           {-5.082981, 449.256136},
                           {448.014645, 230.561049}};
  const RigidFit exact = rigid_fit(from, to);
  EXPECT_NEAR(exact.turn_deg, 0.8, 1e-7);
  EXPECT_NEAR(exact.shift_x_mm, 1.2, 1e-5);
  EXPECT_NEAR(exact.shift_y_mm, -0.7, 1e-5);
  const Point_mm noise[] = {{.05, -.03}, {-.02, .04}, {.01, .02}, {-.03, -.01}, {0, .02}};
  for (std::size_t i = 0; i < to.size(); ++i) {
    to[i].x_mm += noise[i].x_mm;
    to[i].y_mm += noise[i].y_mm;
  }
  const RigidFit noisy = rigid_fit(from, to);
  EXPECT_NEAR(noisy.turn_deg, 0.803193495, 1e-7);
  EXPECT_NEAR(noisy.rms_mm, 0.02762098, 1e-6);
}

// Variance of the Laplacian as OpenCV 4.5.1 and scipy.ndimage (mode mirror) give it.
TEST(PhotoOutside, SharpnessOfKnownPictures) {
  const auto picture = [](auto gray) {
    GrayPicture out{32, 32, {}};
    for (int y = 0; y < 32; ++y)
      for (int x = 0; x < 32; ++x) out.gray.push_back(gray(x, y));
    return laplacian_variance(out);
  };
  EXPECT_NEAR(picture([](int x, int) { return x < 16 ? 0.0 : 255.0; }), 4064.0625, 1e-9);
  EXPECT_NEAR(picture([](int x, int y) { return (x / 8 + y / 8) % 2 ? 255.0 : 0.0; }),
              28956.4453125, 1e-9);
  EXPECT_NEAR(picture([](int x, int) { return 8.0 * x; }), 16, 1e-9);
}

// Two circles of one radius r whose centers are r apart: 2 pi r^2 less a lens of
// r^2 (2 pi / 3 - sqrt(3) / 2); elementary geometry.
TEST(PlanOutside, TwoCirclesLessTheirLens) {
  const double r = 75;
  const double pi = 3.14159265358979323846;
  const double expected = 2 * pi * r * r - r * r * (2 * pi / 3 - std::sqrt(3.0) / 2);
  EXPECT_NEAR(circles_union_area_mm2({{{0, 0}, r}, {{r, 0}, r}}), expected, 1e-6);
}

}  // namespace
}  // namespace jambline::trade
