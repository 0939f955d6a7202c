// job/assembly.h: the steps of putting a car together again, and what has to be done before what.
//
// Kinds:  a soft rule is shown; a hard one is broken with a reason that is kept and seen; a hold
//         stands until a clock has run out, and is broken like a hard one; no override: there is no
//         way round.
// Source: order of assembly by common practice, no source; shop-editable. The carmaker wins.
// Words:  stand in entries for ever; new steps are added at the end only. The ids of the rules that
//         a shop begins with begin with zeros: the same in every shop.
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/describe.h"

namespace jambline::job {

enum class Step : std::uint8_t {
  TrialFit,
  BaseColor,
  BondingFlangeReady,
  GlassSet,
  SealerAndLastBake,
  CavityWax,
  TrimPanels,
  HandleFrom,
  HangAndFit,
  PartsCompounded,
  MountedToCar,
  SeamsWashed,
  WeatherstripTrimLamps,
  LampsPolished,
  LampsInstalled,
  WeatherstripSeated,
  PanelClosedOnIt,
  RearDoorFit,
  FrontDoorFit,
  FenderFit,
  HoodFit,
  BumperLampsGrille,
  DoorGlassAndBarrier,
  DoorPanel,
  HingesFixed,
  StrikerAndLatch,
  RearLidFit,
  TailLampsRearBumper,
  MoldingsAndCowl,
  DriveAwayTime,
  MovedByDriving,
  AdhesiveHandling,
  ClampsReleased,
  AdhesiveFull,
  LoadedOrDriven,
  BatteryAndRestraints,
  IgnitionOn,
  BumperAndRadarFinal,
  Calibration,
  TiresAndAlignment,
  LampsAimed,
  LatchAndCatchChecked,
  RoadTest,
  ScanClear,
  Delivery,
  FilmInWindow,
  LastPolish,
  FinalWash,
  FilmWashSafe,
};

enum class RuleKind : std::uint8_t { Soft, Hard, Hold, NoOverride };

// Why a rule was broken: a chip.
enum class RuleReason : std::uint8_t { CarmakerSays, NoOtherWay, DoneElsewhere, ManagerDecided };

struct AssemblyRule {
  Step before{};
  Step after{};
  RuleKind kind = RuleKind::Hard;
  std::string why;
  bool retired = false;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "before"}, self.before);
    visit(Field{.name = "after"}, self.after);
    visit(Field{.name = "kind"}, self.kind);
    visit(Field{.name = "why"}, self.why);
    visit(Field{.name = "retired"}, self.retired);
  }
  friend bool operator==(const AssemblyRule&, const AssemblyRule&) = default;
};

struct UsualRule {
  RuleId id;
  AssemblyRule rule;
};
const std::vector<UsualRule>& usual_rules();

// A step that comes back to itself over these rules, in order, the first said twice; empty: none.
std::vector<Step> cycle_in(const std::vector<AssemblyRule>& rules);

}  // namespace jambline::job

template <>
inline constexpr auto jambline::enum_words<jambline::job::Step> =
    std::to_array<std::string_view>({"trial fit",
                                     "base color",
                                     "bonding flange ready",
                                     "glass set",
                                     "seam sealer and last bake",
                                     "cavity wax",
                                     "trim and liner panels",
                                     "handle from",
                                     "hung and fitted",
                                     "parts compounded",
                                     "mounted to the car",
                                     "compounded seams washed",
                                     "weatherstrip, trim, lamps",
                                     "lamps and moldings polished",
                                     "lamps and moldings installed",
                                     "weatherstrip seated, drain free",
                                     "panel closed on it",
                                     "rear door to quarter",
                                     "front door to rear door",
                                     "fender fitted",
                                     "hood fitted",
                                     "bumper cover, headlamps, grille",
                                     "door glass, vapor barrier",
                                     "door panel",
                                     "hinges fixed",
                                     "striker and latch",
                                     "rear lid fitted",
                                     "tail lamps, rear bumper",
                                     "moldings, cowl, pillar trim",
                                     "drive-away time over",
                                     "moved by driving",
                                     "adhesive may be handled",
                                     "clamps released",
                                     "adhesive at full strength",
                                     "loaded or driven",
                                     "battery and restraints by procedure",
                                     "ignition on",
                                     "bumper and radar brackets final",
                                     "calibration",
                                     "tires and alignment",
                                     "lamps aimed",
                                     "latch and secondary catch checked",
                                     "road test",
                                     "scan clear",
                                     "delivery",
                                     "film in its window",
                                     "last polish",
                                     "final wash",
                                     "film may be washed"});
template <>
inline constexpr auto jambline::enum_words<jambline::job::RuleKind> =
    std::to_array<std::string_view>({"soft", "hard", "hold", "no override"});
template <>
inline constexpr auto jambline::enum_words<jambline::job::RuleReason> =
    std::to_array<std::string_view>({"carmaker says so", "no other way", "done elsewhere",
                                     "manager decided"});
