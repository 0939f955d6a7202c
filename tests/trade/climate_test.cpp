#include "trade/climate.h"

#include <gtest/gtest.h>
#include <limits>

namespace jambline::trade {
namespace {

Climate good() {
  Climate out;
  out.air_c = 22;
  out.surface_c = 21;
  out.humidity_percent = 50;
  return out;
}

ClimateGate only_failing(const Climate& in) {
  const auto out = check_climate(in);
  EXPECT_FALSE(out->go);
  ClimateGate gate{};
  int failing = 0;
  for (const auto& one : out->checks)
    if (!one.passes) gate = one.gate, ++failing;
  EXPECT_EQ(failing, 1);
  return gate;
}

TEST(Climate, FullAirHasItsDewPointAtItsOwnTemperature) {
  EXPECT_NEAR(dew_point_c(22, 100), 22, 1e-9);
  EXPECT_NEAR(dew_point_c(-10, 100), -10, 1e-9);
}

TEST(Climate, GoWhenEveryGateIsPassed) {
  const auto out = check_climate(good());
  EXPECT_TRUE(out->go);
  EXPECT_EQ(out->checks.size(), 5U);
}

TEST(Climate, EveryGateCanStopOnItsOwn) {
  Climate in = good();
  in.humidity_percent = 92;
  EXPECT_EQ(only_failing(in), ClimateGate::DewMargin);
  in = good();
  in.air_c = 16;
  in.surface_c = 14.9;
  EXPECT_EQ(only_failing(in), ClimateGate::Surface);
  in = good();
  in.surface_c = 27.1;
  EXPECT_EQ(only_failing(in), ClimateGate::SurfaceNearAir);
  in = good();
  in.air_max_c = 21.9;
  EXPECT_EQ(only_failing(in), ClimateGate::Air);
  in = good();
  in.humidity_max_percent = 49;
  EXPECT_EQ(only_failing(in), ClimateGate::Humidity);
}

TEST(Climate, OnTheEdgeOfAGatePasses) {
  Climate in = good();
  in.dew_margin_min_c = in.surface_c - dew_point_c(in.air_c, in.humidity_percent);
  in.surface_min_c = in.surface_c;
  in.surface_from_air_max_c = 1;
  in.air_min_c = in.air_max_c = in.air_c;
  in.humidity_min_percent = in.humidity_max_percent = in.humidity_percent;
  EXPECT_TRUE(check_climate(in)->go);
}

TEST(Climate, WhatCannotBeIsRefusedByName) {
  const auto field = [](auto change) {
    Climate in = good();
    change(in);
    const auto out = check_climate(in);
    return out ? std::string("taken") : std::string(out.error().arg("field"));
  };
  EXPECT_EQ(field([](Climate& in) { in.air_c = -274; }), "air_c");
  EXPECT_EQ(field([](Climate& in) { in.surface_c = std::numeric_limits<double>::quiet_NaN(); }),
            "surface_c");
  EXPECT_EQ(field([](Climate& in) { in.humidity_percent = 0; }), "humidity_percent");
  EXPECT_EQ(field([](Climate& in) { in.dew_margin_min_c = -1; }), "dew_margin_min_c");
  EXPECT_EQ(field([](Climate& in) { in.air_min_c = 25, in.air_max_c = 20; }), "air_max_c");
  EXPECT_EQ(field([](Climate& in) { in.humidity_min_percent = 60, in.humidity_max_percent = 50; }),
            "humidity_max_percent");
}

}  // namespace
}  // namespace jambline::trade
