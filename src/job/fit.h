// job/fit.h: where the gaps of a panel are measured and at what it is moved.
//
// Places:  in mm on the panel laid flat, as marks are. The edges that have a gap, the neighbour at
//          each and the fasteners are those of the body's pattern; a fastener's slot lets the panel
//          go so far each way from the middle.
// Source:  fasteners and travels: common practice, no source; the carmaker's own win. A wanted gap
//          is the carmaker's, or what the trial fit was set to.
// Words:   stand in entries for ever; new ones are added at the end only.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/describe.h"
#include "job/panel.h"

namespace jambline::job {

// Trial fit with bare or primed panels, before paint; then after it was hung.
enum class FitRound : std::uint8_t { TrialFit, AfterHanging };

struct GapPoint {
  double x_mm{};
  double y_mm{};
  double direction_deg{};
  double gap_mm{};
  double wanted_gap_mm{};
  std::optional<double> flush_mm = {};
  double wanted_flush_mm = 0;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "x_mm", .unit = "mm", .min = -10000, .max = 10000}, self.x_mm);
    visit(Field{.name = "y_mm", .unit = "mm", .min = -10000, .max = 10000}, self.y_mm);
    visit(Field{.name = "direction_deg",
                .unit = "deg",
                .doc = "towards the neighbour, counter-clockwise from x",
                .min = -360,
                .max = 360},
          self.direction_deg);
    visit(Field{.name = "gap_mm", .unit = "mm", .min = 0, .max = 50}, self.gap_mm);
    visit(Field{.name = "wanted_gap_mm", .unit = "mm", .min = 0, .max = 50}, self.wanted_gap_mm);
    visit(Field{.name = "flush_mm",
                .unit = "mm",
                .doc = "over the neighbour; absent: not measured",
                .min = -30,
                .max = 30},
          self.flush_mm);
    visit(Field{.name = "wanted_flush_mm", .unit = "mm", .min = -30, .max = 30},
          self.wanted_flush_mm);
  }
  friend bool operator==(const GapPoint&, const GapPoint&) = default;
};

struct FastenerMove {
  std::string fastener;
  double x_mm{};
  double y_mm{};
  double lift_mm{};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "fastener"}, self.fastener);
    visit(Field{.name = "x_mm", .unit = "mm", .min = -100, .max = 100}, self.x_mm);
    visit(Field{.name = "y_mm", .unit = "mm", .min = -100, .max = 100}, self.y_mm);
    visit(Field{.name = "lift_mm", .unit = "mm", .doc = "outwards", .min = -100, .max = 100},
          self.lift_mm);
  }
  friend bool operator==(const FastenerMove&, const FastenerMove&) = default;
};

struct Fastener {
  std::string fastener_name;
  double x_mm{};
  double y_mm{};
  double travel_x_mm{};
  double travel_y_mm{};
  double travel_lift_mm{};
  bool latch = false;  // a latch or a hinge of what opens
};

// At what this panel is moved; empty: it is not moved at slots (welded, or clipped).
const std::vector<Fastener>& fasteners_of(BodyShape body, Panel panel);

// The panel that stays while this one is set: what is welded first, then in the order of hanging.
// None: it hangs on structure that is not a panel of the pattern.
std::optional<Panel> datum_of(BodyShape body, Panel panel);

}  // namespace jambline::job

template <>
inline constexpr auto jambline::enum_words<jambline::job::FitRound> =
    std::to_array<std::string_view>({"trial fit", "after hanging"});
