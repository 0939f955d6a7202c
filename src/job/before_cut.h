// job/before_cut.h: what is answered before anyone sands or machines paint, once per person and
// car.
//
// Class:  a stop has no way round; a must that is answered "no" wants a reason; a should wants
// none. Source: common practice, no source. The product's sheet and the safety data sheet win.
// Words:  stand in entries for ever; new items are added at the end only.
#pragma once

#include <cstdint>

#include "base/describe.h"

namespace jambline::job {

enum class CutItem : std::uint8_t {
  EyeProtection,
  Gloves,
  WetOrExtracted,  // and the cartridge the sheet asks for, while not cured or dry
  Hearing,
  CordAndOutlet,  // cord out of the water, ground-fault outlet, where corded and wet
  LooseThings,    // clothing, straps, rings; the pad turns off the edge
  CoolAndFirm,    // panel cool, thumbnail firm
  NotMatte,
  EdgesTaped,   // trim and sharp edges
  VehicleHeld,  // parked, hood or hatch propped
  VentsCovered,
  Breaks,  // from vibration
};

enum class CutAnswer : std::uint8_t { Yes, No, DoesNotApply };

// Why a must was passed over: a chip, never a sentence.
enum class OverrideReason : std::uint8_t { NoneAtHand, Broken, SheetAllows, ManagerDecided };

enum class CheckClass : std::uint8_t { Stop, Must, Should };

constexpr CheckClass class_of(CutItem item) {
  switch (item) {
    case CutItem::NotMatte:
      return CheckClass::Stop;
    case CutItem::Hearing:
    case CutItem::EdgesTaped:
    case CutItem::VentsCovered:
    case CutItem::Breaks:
      return CheckClass::Should;
    default:
      return CheckClass::Must;
  }
}

// Whether "does not apply" is an answer: a battery tool has no cord, a loose part no parking brake.
constexpr bool may_not_apply(CutItem item) {
  return item == CutItem::CordAndOutlet || item == CutItem::VehicleHeld ||
         class_of(item) == CheckClass::Should;
}

}  // namespace jambline::job

template <>
inline constexpr auto jambline::enum_words<jambline::job::CutItem> =
    std::to_array<std::string_view>({"eye protection", "gloves", "wet or extracted", "hearing",
                                     "cord and outlet", "loose things off", "cool and firm",
                                     "not matte", "edges taped", "vehicle held", "vents covered",
                                     "breaks"});
template <>
inline constexpr auto jambline::enum_words<jambline::job::CutAnswer> =
    std::to_array<std::string_view>({"yes", "no", "does not apply"});
template <>
inline constexpr auto jambline::enum_words<jambline::job::OverrideReason> =
    std::to_array<std::string_view>({"none at hand", "broken", "sheet allows it",
                                     "manager decided"});
template <>
inline constexpr auto jambline::enum_words<jambline::job::CheckClass> =
    std::to_array<std::string_view>({"stop", "must", "should"});

namespace jambline::job {

struct CutCheck {
  CutItem item{};
  CutAnswer answer{};
  std::optional<OverrideReason> reason = {};  // of a must that was answered "no"
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "item"}, self.item);
    visit(Field{.name = "answer"}, self.answer);
    visit(Field{.name = "reason", .doc = "why a must was passed over"}, self.reason);
  }
  friend bool operator==(const CutCheck&, const CutCheck&) = default;
};

}  // namespace jambline::job
