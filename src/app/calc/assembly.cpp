#include "app/calc/calculation.h"
#include "trade/outline.h"
#include "trade/panel_fit.h"
#include "trade/ready_by.h"
#include "trade/refusal.h"

namespace jambline::app {

namespace {
using trade::Point_mm;

trade::PanelFit fit_example() {
  trade::PanelFit out;
  out.datum = "left fender";
  out.points = {{"hood to fender, front", 100, 50, -90, 3.2, 4, 1},
                {"hood to fender, middle", 550, 40, -90, 3.9, 4, 1},
                {"hood to fender, rear", 1050, 30, -90, 4.8, 4, 1},
                {"hood to cowl, left", 1140, 200, 0, 5.6, 5, 0.5},
                {"hood to cowl, right", 1140, 1250, 0, 5.1, 5, 0.5}};
  out.fasteners = {{"left hinge, upper bolts", 1080, 150, 3, 2},
                   {"right hinge, upper bolts", 1080, 1300, 3, 2}};
  return out;
}

struct Rigid {
  std::vector<Point_mm> from;
  std::vector<Point_mm> to;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "from"}, self.from);
    visit(Field{.name = "to", .doc = "the same points after the move"}, self.to);
  }
};

struct RigidResult {
  double turn_deg{};
  double shift_x_mm{};
  double shift_y_mm{};
  double rms_mm{};
  trade::Basis basis;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "turn_deg", .unit = "deg", .doc = "about (0, 0)"}, self.turn_deg);
    visit(Field{.name = "shift_x_mm", .unit = "mm"}, self.shift_x_mm);
    visit(Field{.name = "shift_y_mm", .unit = "mm"}, self.shift_y_mm);
    visit(Field{.name = "rms_mm", .unit = "mm"}, self.rms_mm);
    visit(Field{.name = "basis"}, self.basis);
  }
};

Result<RigidResult> rigid(const Rigid& in) {
  if (in.from.size() < 2) return fail(trade::refusal(Code::Missing, "from", "two at least"));
  JAMBLINE_TRY(trade::need_line("from", in.from));
  JAMBLINE_TRY(trade::need_line("to", in.to));
  if (in.to.size() != in.from.size())
    return fail(trade::refusal(Code::Malformed, "to", "not as many as in from"));
  const trade::RigidFit found = trade::rigid_fit(in.from, in.to);
  RigidResult out{found.turn_deg, found.shift_x_mm, found.shift_y_mm, found.rms_mm, {}};
  out.basis.method = "Turn and shift of the least squares, Kabsch, 1976.";
  out.basis.term("points", static_cast<double>(in.from.size()), "", trade::measured);
  out.basis.term("turn", out.turn_deg, "deg", trade::computed);
  out.basis.term("left, rms", out.rms_mm, "mm", trade::computed);
  return out;
}

Rigid rigid_example() {
  return {{{0, 0}, {900, 0}, {900, 450}, {0, 450}},
          {{1.1, -0.6}, {901.0, 8.4}, {896.6, 458.3}, {-3.4, 449.5}}};
}

// From Wednesday 8:00 as minute 0; open to 17:00, then Thursday and Friday.
trade::ReadyBy ready_example() {
  trade::ReadyBy out;
  out.work = {{"correct", 70, 90, 150, false, {}},
              {"hang the hood", 30, 45, 90, false, {}},
              {"set the glass", 60, 75, 120, false, {}},
              {"urethane", 180, 240, 360, true, {"set the glass"}},
              {"lamps and bumper", 60, 80, 140, false, {"correct", "hang the hood"}},
              {"fit", 20, 40, 80, false, {"lamps and bumper"}},
              {"wash and hand over", 40, 50, 70, false, {"fit", "urethane"}}};
  out.hours = {{0, 540}, {1440, 1980}, {2880, 3420}};
  out.promised_min = 480;
  out.seed = 4206;
  return out;
}
}  // namespace

std::vector<Calculation> assembly_calculations() {
  return {
      calculation<&trade::panel_fit, &fit_example>(
          "panel-fit", "how a panel is moved at its fasteners for gap or flush"),
      calculation<&rigid, &rigid_example>("rigid-fit", "turn and shift between measured points"),
      calculation<&trade::ready_by, &ready_example>(
          "ready-by", "critical path, floats and the chance of the promised time"),
  };
}

}  // namespace jambline::app
