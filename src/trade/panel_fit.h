// trade/panel_fit.h: how a hung panel is moved at its fasteners so that its gaps and flush come
// right.
//
// Gap:     a point has a place on the panel and the direction from the panel to its neighbour; a
//          rigid move (two shifts and one small turn, about the place (0, 0)) changes the gap by
//          minus its part in that direction. Flush: one lift and two tilts change the height at a
//          point.
// Best:    weighted least squares over three unknowns; each fastener's slot bounds the move of its
//          place along two axes (flush: its height). The best within all slots is found exactly:
//          every set of up to three touching slots is tried and the one that meets the conditions
//          of Karush, Kuhn and Tucker is the answer.
// Says:    per fastener how far along each axis; predicted gaps; which slots stop it; "datum is
//          out" when even a free move leaves more than the tolerance: then measure structure
//          first.
// Limits:  rigid only: hinge-side lift, bump stops, striker pull and a bent panel are not in it.
// Errors:  OutOfRange, Missing (fewer points than 2), TooLarge (60 points, 10 fasteners). Pure.
#pragma once

#include "base/error.h"
#include "trade/basis.h"
#include "trade/geometry.h"

namespace jambline::trade {

struct FitPoint {
  std::string name;
  double x_mm{};
  double y_mm{};
  double direction_deg{};  // gap: from the panel to the neighbour, counter-clockwise from x
  double found_mm{};
  double wanted_mm{};
  double weight = 1;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "name"}, self.name);
    visit(Field{.name = "x_mm", .unit = "mm", .min = -10000, .max = 10000}, self.x_mm);
    visit(Field{.name = "y_mm", .unit = "mm", .min = -10000, .max = 10000}, self.y_mm);
    visit(Field{.name = "direction_deg", .unit = "deg", .doc = "gap only: towards the neighbour"},
          self.direction_deg);
    visit(Field{.name = "found_mm", .unit = "mm", .min = -50, .max = 100}, self.found_mm);
    visit(Field{.name = "wanted_mm", .unit = "mm", .min = -50, .max = 100}, self.wanted_mm);
    visit(Field{.name = "weight", .min = 0.001, .max = 1000}, self.weight);
  }
};

struct FitFastener {
  std::string name;
  double x_mm{};
  double y_mm{};
  double travel_x_mm{};  // gap: each way along x; flush: each way in height
  double travel_y_mm{};  // gap: each way along y; not used for flush

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "name"}, self.name);
    visit(Field{.name = "x_mm", .unit = "mm", .min = -10000, .max = 10000}, self.x_mm);
    visit(Field{.name = "y_mm", .unit = "mm", .min = -10000, .max = 10000}, self.y_mm);
    visit(Field{.name = "travel_x_mm", .unit = "mm", .min = 0, .max = 100}, self.travel_x_mm);
    visit(Field{.name = "travel_y_mm", .unit = "mm", .min = 0, .max = 100}, self.travel_y_mm);
  }
};

struct PanelFit {
  std::string datum;  // the panel that stays
  std::vector<FitPoint> points;
  std::vector<FitFastener> fasteners;
  double tolerance_mm = 0.5;
  bool flush = false;  // false: gaps

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "datum"}, self.datum);
    visit(Field{.name = "points"}, self.points);
    visit(Field{.name = "fasteners"}, self.fasteners);
    visit(Field{.name = "tolerance_mm", .unit = "mm", .min = 0.01, .max = 20}, self.tolerance_mm);
    visit(Field{.name = "flush"}, self.flush);
  }
};

struct FitMove {
  std::string fastener;
  double x_mm{};  // flush: the height
  double y_mm{};
  bool at_its_end = false;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "fastener"}, self.fastener);
    visit(Field{.name = "x_mm", .unit = "mm"}, self.x_mm);
    visit(Field{.name = "y_mm", .unit = "mm"}, self.y_mm);
    visit(Field{.name = "at_its_end"}, self.at_its_end);
  }
};

struct FitPrediction {
  std::string point;
  double before_mm{};
  double after_mm{};
  double off_mm{};  // after less wanted

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "point"}, self.point);
    visit(Field{.name = "before_mm", .unit = "mm"}, self.before_mm);
    visit(Field{.name = "after_mm", .unit = "mm"}, self.after_mm);
    visit(Field{.name = "off_mm", .unit = "mm"}, self.off_mm);
  }
};

struct PanelFitResult {
  double shift_x_mm{};  // flush: the lift at (0, 0)
  double shift_y_mm{};  // flush: rise a meter along x
  double turn_deg{};    // flush: rise a meter along y, in mm
  std::vector<FitMove> moves;
  std::vector<FitPrediction> points;
  double rms_mm{};
  double free_rms_mm{};  // were there no slots
  bool reached = false;  // every point within the tolerance
  bool stopped_by_slots = false;
  bool datum_is_out = false;
  Basis basis;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "shift_x_mm", .unit = "mm"}, self.shift_x_mm);
    visit(Field{.name = "shift_y_mm", .unit = "mm"}, self.shift_y_mm);
    visit(Field{.name = "turn_deg", .unit = "deg"}, self.turn_deg);
    visit(Field{.name = "moves"}, self.moves);
    visit(Field{.name = "points"}, self.points);
    visit(Field{.name = "rms_mm", .unit = "mm"}, self.rms_mm);
    visit(Field{.name = "free_rms_mm", .unit = "mm"}, self.free_rms_mm);
    visit(Field{.name = "reached"}, self.reached);
    visit(Field{.name = "stopped_by_slots"}, self.stopped_by_slots);
    visit(Field{.name = "datum_is_out"}, self.datum_is_out);
    visit(Field{.name = "basis"}, self.basis);
  }
};

Result<PanelFitResult> panel_fit(const PanelFit& fit);

// The turn and shift that carry points onto others with the least squares (Kabsch 1976, two
// dimensions, no scaling). The shift is for the turn about (0, 0). As many of each, two at least.
struct RigidFit {
  double turn_deg{};
  double shift_x_mm{};
  double shift_y_mm{};
  double rms_mm{};
};
RigidFit rigid_fit(const std::vector<Point_mm>& from, const std::vector<Point_mm>& to);

}  // namespace jambline::trade
