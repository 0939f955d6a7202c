#include "trade/exposure.h"

#include <gtest/gtest.h>

#include "trade/concentration.h"

namespace jambline::trade {
namespace {

ExposureLimit limit(std::string substance, LimitKind kind, double value,
                    std::string authority = "A") {
  return {std::move(substance), kind, value, "ppm", std::move(authority), 2000};
}

TEST(Exposure, HalfAShiftIsStillDividedByEightHours) {
  const auto out = compare_exposure({{{"x", 100, 0, 4}}, {limit("x", LimitKind::EightHours, 50)}});
  ASSERT_TRUE(out);
  EXPECT_DOUBLE_EQ(out->against[0].value, 50);
  EXPECT_FALSE(out->against[0].over);  // on the limit is not over it
  EXPECT_EQ(out->basis.find("x, hours sampled")->value, 4);
  EXPECT_EQ(out->basis.find("x, limit")->source, "A 2000");
}

TEST(Exposure, TwelveHoursMayPassTheAverageOfEight) {
  const auto out = compare_exposure({{{"x", 50, 0, 12}}, {limit("x", LimitKind::EightHours, 60)}});
  EXPECT_DOUBLE_EQ(out->against[0].value, 75);
  EXPECT_TRUE(out->against[0].over);
}

TEST(Exposure, TheWorstFifteenMinutesMayLieAcrossSamples) {
  const auto out = compare_exposure(
      {{{"x", 20, 0, 1}, {"x", 200, 1, 1.1}, {"x", 50, 1.1, 2}},
       {limit("x", LimitKind::FifteenMinutes, 100), limit("x", LimitKind::Ceiling, 250)}});
  // 0.1 h at 200 and 0.15 h at 50, over a quarter of an hour.
  EXPECT_NEAR(out->against[0].value, (20 + 7.5) / 0.25, 1e-9);
  EXPECT_TRUE(out->against[0].over);
  EXPECT_DOUBLE_EQ(out->against[1].value, 200);
  EXPECT_FALSE(out->against[1].over);
}

TEST(Exposure, MixturesAreCountedForEachAuthorityAlone) {
  Exposure in{
      {{"x", 50, 0, 8}, {"y", 40, 0, 8}},
      {limit("x", LimitKind::EightHours, 100, "A"), limit("x", LimitKind::EightHours, 60, "B")}};
  EXPECT_FALSE(compare_exposure(in)->mixture);  // one substance is no mixture
  in.limits.push_back(limit("y", LimitKind::EightHours, 100, "A"));
  EXPECT_NEAR(*compare_exposure(in)->mixture, 0.9, 1e-12);
  in.limits.push_back(limit("y", LimitKind::EightHours, 80, "B"));
  EXPECT_NEAR(*compare_exposure(in)->mixture, 50.0 / 60 + 0.5, 1e-12);
}

void expect_refused(const Exposure& in, const char* field) {
  const auto out = compare_exposure(in);
  ASSERT_FALSE(out) << field;
  EXPECT_EQ(out.error().arg("field"), field);
}

TEST(Exposure, ContradictionsAreRefusedByName) {
  const auto average = limit("x", LimitKind::EightHours, 50);
  expect_refused({{}, {average}}, "samples");
  expect_refused({{{"x", 1, 0, 1}}, {}}, "limits");
  expect_refused({{{"y", 1, 0, 1}}, {average}}, "samples");
  expect_refused({{{"x", 1, 0, 1}, {"x", 1, 0.5, 2}}, {average}}, "samples[1].from_h");
  expect_refused({{{"x", 1, 2, 2}}, {average}}, "samples[0].to_h");
  expect_refused({{{"x", 1, 0, 25}}, {average}}, "samples[0].to_h");
  expect_refused({{{"x", 1, 0, 1}}, {average, average}}, "limits[1].kind");
  auto other_unit = limit("x", LimitKind::Ceiling, 50);
  other_unit.unit = "mg/m3";
  expect_refused({{{"x", 1, 0, 1}}, {average, other_unit}}, "limits[1].unit");
  auto nobody = average;
  nobody.authority = "";
  expect_refused({{{"x", 1, 0, 1}}, {nobody}}, "limits[0].authority");
}

TEST(Concentration, ThereAndBackAtTheRealAir) {
  Concentration in;
  in.ppm = 2;
  in.molar_mass_g = 100;
  in.air_c = 0;
  in.pressure_kpa = 100;
  const auto there = convert_concentration(in);
  ASSERT_TRUE(there);
  EXPECT_NEAR(there->molar_volume_l, 8.314462618 * 273.15 / 100, 1e-12);
  EXPECT_NEAR(there->mg_m3, 200 / there->molar_volume_l, 1e-12);
  in.ppm.reset();
  in.mg_m3 = there->mg_m3;
  EXPECT_NEAR(convert_concentration(in)->ppm, 2, 1e-12);
}

TEST(Concentration, ThinnerAirHoldsLessOfIt) {
  Concentration in;
  in.ppm = 1;
  in.molar_mass_g = 92;
  const double low = convert_concentration(in)->mg_m3;
  in.pressure_kpa = 80;
  EXPECT_LT(convert_concentration(in)->mg_m3, low);
}

TEST(Concentration, BothNeitherAndUnderAbsoluteZeroAreRefused) {
  Concentration in;
  in.molar_mass_g = 92;
  EXPECT_EQ(convert_concentration(in).error().arg("field"), "ppm");
  in.ppm = in.mg_m3 = 1;
  EXPECT_EQ(convert_concentration(in).error().arg("field"), "mg_m3");
  in.mg_m3.reset();
  in.air_c = -274;
  EXPECT_EQ(convert_concentration(in).error().arg("field"), "air_c");
}

}  // namespace
}  // namespace jambline::trade
