// Samples put together to shifts, and what the sum of a shift is asked from. Averages and ceilings:
// trade/exposure.h and its tests against 29 CFR 1910.1000(d).
#include "folds/exposure_of_shift.h"

#include <gtest/gtest.h>

#include "base/spans.h"

namespace jambline::folds {
namespace {

class ExposureOfShift : public testing::Test {
 protected:
  void sample(int person, const char* substance, double value, double from_h, double to_h,
              const char* unit = "ppm", std::optional<RespiratorId> worn = {}) {
    SampleView out;
    out.sample = SampleId{{static_cast<std::uint8_t>(air.samples.size() + 1)}};
    out.person = PersonId{{static_cast<std::uint8_t>(person)}};
    out.substance = substance;
    out.value = value;
    out.unit = unit;
    out.from_ms = static_cast<std::int64_t>(from_h * hour_ms);
    out.to_ms = static_cast<std::int64_t>(to_h * hour_ms);
    out.respirator = worn;
    air.samples.push_back(out);
  }
  job::ExposureLimit& limit(const char* substance, trade::LimitKind kind, double value,
                            const char* unit = "ppm", const char* authority = "NIOSH") {
    LimitView out;
    out.limit = LimitId{{static_cast<std::uint8_t>(air.limits.size() + 1)}};
    out.said = {substance, kind, value, unit, authority, 2019, "a list", false};
    out.said.scheme = trade::FactorScheme::Us;
    air.limits.push_back(out);
    return air.limits.back().said;
  }
  RespiratorId respirator(trade::FactorScheme scheme, double factor) {
    RespiratorView out;
    out.respirator = RespiratorId{{static_cast<std::uint8_t>(air.respirators.size() + 1)}};
    out.said.model = "hood";
    out.said.scheme = scheme;
    out.said.assigned_factor = factor;
    air.respirators.push_back(out);
    return out.respirator;
  }
  ShiftExposure only() { return exposure_of(shifts_of(air).at(0), air); }

  AirView air;
};

TEST_F(ExposureOfShift, ANightOverMidnightIsOneShiftAndTheNextDayAnother) {
  sample(1, "HDI", 0.001, 22, 23);
  sample(1, "HDI", 0.002, 24.5, 29);
  sample(1, "HDI", 0.003, 38, 40);
  sample(2, "HDI", 0.004, 23, 24);
  const auto shifts = shifts_of(air);
  ASSERT_EQ(shifts.size(), 3U);
  EXPECT_EQ(shifts[0].samples[0].value, 0.003) << "the newest first";
  EXPECT_EQ(shifts[2].samples.size(), 2U);
  EXPECT_EQ(shifts[2].from_ms, 22 * hour_ms);
  EXPECT_EQ(shifts[2].to_ms, 29 * hour_ms);
}

TEST_F(ExposureOfShift, NoShiftIsLongerThanADay) {
  for (int i = 0; i < 5; ++i) sample(1, "HDI", 0.001, 7.0 * i, 7.0 * i + 6);
  for (const auto& shift : shifts_of(air)) EXPECT_LE(shift.to_ms - shift.from_ms, 24 * hour_ms);
}

TEST_F(ExposureOfShift, HoursCountFromTheBeginningOfTheShift) {
  sample(1, "HDI", 0.001, 22, 24);
  sample(1, "HDI", 0.002, 24, 30);
  limit("HDI", trade::LimitKind::EightHours, 0.005);
  const auto asked = only().asked;
  ASSERT_EQ(asked.samples.size(), 2U);
  EXPECT_DOUBLE_EQ(asked.samples[0].from_h, 0);
  EXPECT_DOUBLE_EQ(asked.samples[1].to_h, 8);
  // By hand: (0.001 x 2 + 0.002 x 6) / 8.
  const auto result = trade::compare_exposure(asked);
  ASSERT_TRUE(result);
  EXPECT_NEAR(result->against[0].value, 0.00175, 1e-12);
}

TEST_F(ExposureOfShift, RetiredLimitsAndOtherUnitsAreNotComparedWith) {
  sample(1, "HDI", 0.001, 0, 2);
  sample(1, "HDI", 0.02, 3, 4, "mg/m3");
  limit("HDI", trade::LimitKind::EightHours, 0.005);
  limit("HDI", trade::LimitKind::Ceiling, 0.02).retired = true;
  const auto out = only();
  ASSERT_EQ(out.limits.size(), 1U);
  ASSERT_EQ(out.left_out.size(), 1U) << "nothing is converted";
  EXPECT_EQ(out.left_out[0].unit, "mg/m3");
  EXPECT_TRUE(trade::compare_exposure(out.asked));
}

TEST_F(ExposureOfShift, OfTwoEqualLimitsTheLowerHolds) {
  sample(1, "HDI", 0.004, 0, 8);
  limit("HDI", trade::LimitKind::EightHours, 0.005);
  limit("HDI", trade::LimitKind::EightHours, 0.003);
  const auto out = only();
  ASSERT_EQ(out.limits.size(), 1U);
  EXPECT_EQ(out.limits[0].said.value, 0.003);
  const auto result = trade::compare_exposure(out.asked);
  ASSERT_TRUE(result);
  EXPECT_TRUE(result->against[0].over);
}

TEST_F(ExposureOfShift, LimitsOfOneSubstanceInTwoUnitsAreBothComparedWith) {
  sample(1, "HDI", 0.001, 0, 2);
  sample(1, "HDI", 0.02, 3, 4, "mg/m3");
  limit("HDI", trade::LimitKind::EightHours, 0.005);
  limit("HDI", trade::LimitKind::EightHours, 0.035, "mg/m3", "another");
  const auto out = only();
  EXPECT_TRUE(out.left_out.empty());
  const auto result = trade::compare_exposure(out.asked);
  ASSERT_TRUE(result);
  ASSERT_EQ(result->against.size(), 2U);
  EXPECT_NEAR(result->against[0].value, 0.00025, 1e-12);
  EXPECT_NEAR(result->against[1].value, 0.0025, 1e-12);
}

TEST_F(ExposureOfShift, AFactorMeetsLimitsOfItsOwnSchemeOnly) {
  const auto us = respirator(trade::FactorScheme::Us, 25);
  const auto uk = respirator(trade::FactorScheme::Uk, 40);
  sample(1, "HDI", 0.01, 0, 1, "ppm", us);
  sample(1, "HDI", 0.01, 2, 3, "ppm", uk);
  sample(1, "HDI", 0.01, 4, 5, "ppm", us);
  limit("HDI", trade::LimitKind::EightHours, 0.005);
  limit("HDI", trade::LimitKind::Ceiling, 0.02).scheme.reset();
  const auto out = only();
  ASSERT_EQ(out.worn.size(), 4U) << "each respirator once with each limit";
  ASSERT_TRUE(out.worn[0].asked);
  const auto most = trade::maximum_use(*out.worn[0].asked);
  ASSERT_TRUE(most);
  EXPECT_NEAR(most->most, 0.125, 1e-12);  // NIOSH Pocket Guide, HDI: factor 25 up to 0.125 ppm
  ASSERT_TRUE(out.worn[1].asked);
  EXPECT_FALSE(trade::maximum_use(*out.worn[1].asked)) << "a UK factor and a US limit";
  EXPECT_FALSE(out.worn[2].asked) << "no factors go with that limit";
}

TEST_F(ExposureOfShift, WhatIsDangerousAtOnceHoldsTheMaximumUse) {
  const auto worn = respirator(trade::FactorScheme::Us, 1000);
  sample(1, "TDI", 0.01, 0, 1, "ppm", worn);
  limit("TDI", trade::LimitKind::Ceiling, 0.02).dangerous = 2.5;
  const auto out = only();
  ASSERT_EQ(out.worn.size(), 1U);
  const auto most = trade::maximum_use(*out.worn[0].asked);
  ASSERT_TRUE(most);
  EXPECT_EQ(most->most, 2.5);  // NIOSH IDLH documentation 584-84-9
}

}  // namespace
}  // namespace jambline::folds
