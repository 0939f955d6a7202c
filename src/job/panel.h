// job/panel.h: the outer panels of a car, by the trade's names.
//
// Words: the enum's word is what stands in an entry for ever; screens choose what people read
//        ("left door" on a two-door car). New panels are added at the end only.
#pragma once

#include <cstdint>

#include "base/describe.h"

namespace jambline::job {

enum class Panel : std::uint8_t {
  Hood,
  LeftFender,
  RightFender,
  LeftFrontDoor,
  RightFrontDoor,
  LeftRearDoor,
  RightRearDoor,
  LeftQuarter,
  RightQuarter,
  Roof,
  Decklid,
  Hatch,
  Liftgate,
  Tailgate,
  FrontBumper,
  RearBumper,
  LeftRocker,
  RightRocker,
  LeftMirror,
  RightMirror,
  FuelDoor,
  LeftCabCorner,
  RightCabCorner,
  LeftBedSide,
  RightBedSide,
  SlidingDoor,
  LeftSide,
  RightSide,
  LeftCargoDoor,
  RightCargoDoor,
};

enum class BodyShape : std::uint8_t {
  TwoDoorHatchback,
  FourDoorSedan,
  SuvWagon,
  CrewCabPickup,
  CargoVan
};

}  // namespace jambline::job

template <>
inline constexpr auto jambline::enum_words<jambline::job::Panel> =
    std::to_array<std::string_view>({"hood",
                                     "left fender",
                                     "right fender",
                                     "left front door",
                                     "right front door",
                                     "left rear door",
                                     "right rear door",
                                     "left quarter panel",
                                     "right quarter panel",
                                     "roof",
                                     "decklid",
                                     "hatch",
                                     "liftgate",
                                     "tailgate",
                                     "front bumper cover",
                                     "rear bumper cover",
                                     "left rocker",
                                     "right rocker",
                                     "left mirror cap",
                                     "right mirror cap",
                                     "fuel door",
                                     "left cab corner",
                                     "right cab corner",
                                     "left bed side",
                                     "right bed side",
                                     "sliding door",
                                     "left side panel",
                                     "right side panel",
                                     "left cargo door",
                                     "right cargo door"});

template <>
inline constexpr auto jambline::enum_words<jambline::job::BodyShape> =
    std::to_array<std::string_view>({"two-door hatchback", "four-door sedan", "SUV or wagon",
                                     "crew-cab pickup", "cargo van"});
