#include "screens/air_units.h"

#include <gtest/gtest.h>

// Factors as printed in NIST Special Publication 811 (2008), appendix B.9, to seven figures: ft/min
// 5.08 E-03 m/s; ft3/min 4.719474 E-04 m3/s; ft3 2.831685 E-02 m3; inch of water, conventional
// (inH2O), 2.490889 E+02 Pa.
namespace jambline::screens {
namespace {

TEST(AirUnits, AreConvertedByThePrintedFactors) {
  EXPECT_NEAR(stored_air(AirQuantity::Velocity, 1, Units::Us), 5.08e-3, 1e-12);
  EXPECT_NEAR(stored_air(AirQuantity::Exhaust, 1, Units::Us), 4.719474e-4 * 3600, 1e-6);
  EXPECT_NEAR(stored_air(AirQuantity::Volume, 1, Units::Us), 2.831685e-2, 1e-8);
  EXPECT_NEAR(stored_air(AirQuantity::Pressure, 1, Units::Us), 249.0889, 1e-9);
  for (const auto quantity :
       {AirQuantity::Velocity, AirQuantity::Pressure, AirQuantity::Exhaust, AirQuantity::Volume})
    for (const auto units : {Units::Metric, Units::Us})
      EXPECT_NEAR(shown_air(quantity, stored_air(quantity, 73.5, units), units), 73.5, 1e-9);
}

TEST(AirUnits, AreShownInTheDevicesUnits) {
  EXPECT_EQ(air_words(AirQuantity::Velocity, 0.508, Units::Us), QStringLiteral("100 ft/min"));
  EXPECT_EQ(air_words(AirQuantity::Velocity, 0.508, Units::Metric), QStringLiteral("0.51 m/s"));
  EXPECT_EQ(air_words(AirQuantity::Pressure, 124.5, Units::Us), QStringLiteral("0.50 in. w.c."));
  EXPECT_EQ(air_words(AirQuantity::Pressure, 124.5, Units::Metric), QStringLiteral("125 Pa"));
  EXPECT_EQ(air_words(AirQuantity::Volume, 98, Units::Us), QStringLiteral("3,461 ft\u00b3"));
}

TEST(AirUnits, WhatRoundsOntoItsLimitGetsOneMorePlace) {
  EXPECT_EQ(air_words(AirQuantity::Velocity, 0.507, 0.508, Units::Us),
            QStringLiteral("99.8 ft/min"));
  EXPECT_EQ(air_words(AirQuantity::Velocity, 0.508, 0.508, Units::Us),
            QStringLiteral("100 ft/min"));
  EXPECT_EQ(air_words(AirQuantity::Velocity, 0.5, 0.508, Units::Us), QStringLiteral("98 ft/min"));
}

TEST(AirUnits, MinutesNeverSayLessThanTheyAre) {
  EXPECT_EQ(minutes_seconds(5), QStringLiteral("5:00"));
  EXPECT_EQ(minutes_seconds(6.09), QStringLiteral("6:06"));
  EXPECT_EQ(minutes_seconds(4 + 35.0 / 60), QStringLiteral("4:35"));
}

}  // namespace
}  // namespace jambline::screens
