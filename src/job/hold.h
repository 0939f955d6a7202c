// job/hold.h: what a car waits for, and who outside the shop's own people it is with.
//
// Source: reasons and kinds by common practice, no source.
// Words:  stand in entries for ever; new ones are added at the end only.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "base/describe.h"

namespace jambline::job {

enum class WaitReason : std::uint8_t { Part, Cure, Booth, Approval, Sublet };

enum class PartState : std::uint8_t { Ordered, Arrived, Wrong, NotNeeded };

// A part that is bought for the car.
struct OrderedPart {
  std::string part_name;
  PartState state{};
  std::optional<std::int64_t> expected_ms = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "part_name"}, self.part_name);
    visit(Field{.name = "state"}, self.state);
    visit(Field{.name = "expected_ms", .unit = "ms", .doc = "UTC since 1970"}, self.expected_ms);
  }
  friend bool operator==(const OrderedPart&, const OrderedPart&) = default;
};

enum class SubletKind : std::uint8_t { Glass, Calibration, Alignment, Other };
enum class SubletState : std::uint8_t { Planned, Out, Back };

// Work that somebody else does.
struct Sublet {
  SubletKind kind{};
  std::string who;
  SubletState state{};
  std::optional<std::int64_t> expected_ms = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "kind"}, self.kind);
    visit(Field{.name = "who", .doc = "in the shop's words"}, self.who);
    visit(Field{.name = "state"}, self.state);
    visit(Field{.name = "expected_ms", .unit = "ms", .doc = "when it is back"}, self.expected_ms);
  }
  friend bool operator==(const Sublet&, const Sublet&) = default;
};

}  // namespace jambline::job

template <>
inline constexpr auto jambline::enum_words<jambline::job::WaitReason> =
    std::to_array<std::string_view>({"part", "cure", "booth", "approval", "sublet"});
template <>
inline constexpr auto jambline::enum_words<jambline::job::PartState> =
    std::to_array<std::string_view>({"ordered", "arrived", "wrong or damaged", "not needed"});
template <>
inline constexpr auto jambline::enum_words<jambline::job::SubletKind> =
    std::to_array<std::string_view>({"glass", "calibration", "alignment", "other"});
template <>
inline constexpr auto jambline::enum_words<jambline::job::SubletState> =
    std::to_array<std::string_view>({"planned", "out", "back"});
