// job/stage.h: the stages of a job in their usual order, with what is checked at each.
//
// Source: common practice, no source; shop-editable. A `must` is printed bold on the shop's sheet.
//         Shots belong to photographs and come with them.
#pragma once

#include <cstdint>
#include <span>
#include <string_view>

#include "base/describe.h"

namespace jambline::job {

enum class Stage : std::uint8_t {
  CheckIn,
  Teardown,
  BodyAndTrialFit,
  Corrosion,
  Prep,
  Color,
  Mask,
  BeforeTheGun,
  Spray,
  Cure,
  Unmask,
  Inspect,
  Correct,
  EdgesAndJambs,
  CavityWax,
  Assemble,
  Glass,
  Fit,
  SensorsAndScan,
  LastPolish,
  Wash,
  WalkAround,
  Comeback,
};

struct StageCheck {
  std::string_view what;
  bool must = false;
};

std::span<const StageCheck> checks_of(Stage stage);

}  // namespace jambline::job

template <>
inline constexpr auto jambline::enum_words<jambline::job::Stage> =
    std::to_array<std::string_view>({"check-in",
                                     "teardown",
                                     "body and trial fit",
                                     "corrosion work",
                                     "prep",
                                     "color",
                                     "mask",
                                     "before the gun",
                                     "spray",
                                     "clear, flash, bake",
                                     "unmask",
                                     "inspect",
                                     "correct",
                                     "edges and jambs",
                                     "cavity wax",
                                     "assemble",
                                     "glass",
                                     "fit",
                                     "sensors and scan",
                                     "last polish",
                                     "wash",
                                     "walk-around",
                                     "comeback"});
