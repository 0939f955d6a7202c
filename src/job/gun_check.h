// job/gun_check.h: what is answered before the gun is picked up.
//
// Class:  a stop has no way round: "do not spray". A must that is answered "no", or that the
//         register does not bear out, is passed over by name and with a reason. A should is shown.
// Rests on: 29 CFR 1910.134 (respirator, seal, fit, air, cartridge), 1910.94(c) and 1910.107
//         (exhaust, ignition), 40 CFR 63 subpart HHHHHH (training, gun, filters); their years from
//         memory. The rest: the safety data sheet and common practice, no source. Local code wins.
// Words:  stand in entries for ever; new items are added at the end only.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/describe.h"
#include "job/before_cut.h"

namespace jambline::job {

enum class GunItem : std::uint8_t {
  RightRespirator,
  SealOrFlow,
  ExhaustFreshAir,
  NobodyUnprotected,
  MaySpray,
  GlovesSuitEyes,
  FitTested,
  BreathingAir,
  CartridgeInTime,
  TrainedAndGun,
  FiltersAndGauge,
  MixRoomAndGround,
  ColorApproved,
  SecondPerson,
  SheetsAndEyewash,
  DriveAndGround,
  Climate,
  AirLine,
  BlowOffAndTack,
  ActivatorAndPotLife,
  CarReadyForBake
};
// Why a must was passed over: a chip, with a note if one likes.
enum class GunReason : std::uint8_t { NoneAtHand, Broken, RecordNotHere, ManagerDecided };

constexpr CheckClass class_of(GunItem item) {
  if (item <= GunItem::MaySpray) return CheckClass::Stop;
  return item <= GunItem::ColorApproved ? CheckClass::Must : CheckClass::Should;
}

// Answered on the spot, each time, and never filled in. The others rest on what is kept.
constexpr bool is_of_now(GunItem item) {
  switch (item) {
    case GunItem::SealOrFlow:
    case GunItem::ExhaustFreshAir:
    case GunItem::NobodyUnprotected:
    case GunItem::GlovesSuitEyes:
    case GunItem::MixRoomAndGround:
      return true;
    default:
      return false;
  }
}

struct GunCheck {
  GunItem item{};
  CutAnswer answer{};
  std::optional<GunReason> reason = {};
  std::string note;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "item"}, self.item);
    visit(Field{.name = "answer"}, self.answer);
    visit(Field{.name = "reason", .doc = "why a must was passed over"}, self.reason);
    visit(Field{.name = "note"}, self.note);
  }
  friend bool operator==(const GunCheck&, const GunCheck&) = default;
};

}  // namespace jambline::job

template <>
inline constexpr auto jambline::enum_words<jambline::job::GunItem> =
    std::to_array<std::string_view>({"right respirator",
                                     "seal or flow checked now",
                                     "exhaust on fresh air",
                                     "nobody unprotected",
                                     "may spray",
                                     "gloves, suit, eyes",
                                     "fit test in date",
                                     "breathing air in date",
                                     "cartridge in time",
                                     "training in date, gun allowed",
                                     "filters in, gauge in range",
                                     "mix room fan, grounded, phones out",
                                     "color approved",
                                     "second person knows",
                                     "sheets read, eyewash works",
                                     "drive kind known, car grounded",
                                     "air and surface in the window",
                                     "air line drained, hose clean",
                                     "blown off outside, wiped, tacked",
                                     "activator and pot life",
                                     "car checked for bake"});
template <>
inline constexpr auto jambline::enum_words<jambline::job::GunReason> =
    std::to_array<std::string_view>({"none at hand", "broken", "record is not here",
                                     "manager decided"});
