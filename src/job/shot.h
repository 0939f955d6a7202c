// job/shot.h: the pictures that are wanted at each stage, and where to stand for each.
//
// Shape:   a shot is wanted once a car, once on each panel in the job, once on each panel that
//          opens, or once of each kind of mark that was found; "as found" is never missing, only
//          offered. The lists below are what a shop begins with; it may write its own for any
//          stage. The ids of these begin with zeros, so that they are the same in every shop.
// Source:  common practice, no source; shop-editable.
// Words:   stand in entries for ever; new ones are added at the end only.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "base/describe.h"
#include "job/panel.h"
#include "job/stage.h"

namespace jambline::job {

enum class ShotWanted : std::uint8_t { OnceACar, EachPanel, EachOpening, EachMarkKind, AsFound };

// Where to stand. Wide: 2 to 3 m away; close: 20 to 40 cm, a landmark of the panel in the picture.
enum class ShotView : std::uint8_t {
  FrontLeftCorner,
  FrontRightCorner,
  RearLeftCorner,
  RearRightCorner,
  Inside,
  PlateOrLabel,
  PanelWide,
  PanelClose,
  SideLight,
  AlongEdge,
  Jamb,
  Gap,
  Underneath,
};

// Why a stage is released with pictures missing.
enum class WithoutShots : std::uint8_t { NoCamera, NotReachable, TakenElsewhere, NotNeeded };

struct Shot {
  ShotId shot;
  std::string shot_name;
  ShotView view{};
  ShotWanted wanted{};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "shot"}, self.shot);
    visit(Field{.name = "shot_name"}, self.shot_name);
    visit(Field{.name = "view"}, self.view);
    visit(Field{.name = "wanted"}, self.wanted);
  }
  friend bool operator==(const Shot&, const Shot&) = default;
};

// What a shop begins with at this stage. Empty: no pictures there.
const std::vector<Shot>& usual_shots(Stage stage);

// Doors, hood, hatches and the like: their jambs are looked at.
bool opens(Panel panel);

}  // namespace jambline::job

template <>
inline constexpr auto jambline::enum_words<jambline::job::ShotWanted> =
    std::to_array<std::string_view>({"once a car", "each panel", "each opening", "each mark kind",
                                     "as found"});
template <>
inline constexpr auto jambline::enum_words<jambline::job::ShotView> =
    std::to_array<std::string_view>({"front left corner", "front right corner", "rear left corner",
                                     "rear right corner", "inside", "plate or label", "panel wide",
                                     "panel close", "side light", "along the edge", "jamb", "gap",
                                     "underneath"});
template <>
inline constexpr auto jambline::enum_words<jambline::job::WithoutShots> =
    std::to_array<std::string_view>({"no camera at hand", "not reachable", "taken elsewhere",
                                     "not needed"});
