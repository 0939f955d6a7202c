#include "app/calc/calculation.h"
#include "trade/correction_plan.h"
#include "trade/outline.h"
#include "trade/refusal.h"

namespace jambline::app {

namespace {
using trade::Point_mm;

trade::CorrectionPlan plan_example() {
  trade::PlanPanel hood;
  hood.panel = "hood";
  hood.outline = {{0, 100}, {1150, 0}, {1150, 1450}, {0, 1350}};
  hood.body_lines = {{{{0, 400}, {1150, 350}}}};
  hood.stands_at = {0, 2100};
  hood.marks = {{"1", 310, 820, trade::MarkWork::Nib, {}},
                {"2", 355, 870, trade::MarkWork::Nib, trade::Round::Refine},
                {"3", 905, 1120, trade::MarkWork::Nib, {}},
                {"4", 700, 1380, trade::MarkWork::Haze, {}}};
  trade::PlanPanel door;
  door.panel = "left front door";
  door.outline = {{0, 0}, {1080, 0}, {1080, 680}, {0, 680}};
  door.stands_at = {-950, 200};
  door.marks = {{"5", 420, 310, trade::MarkWork::Run, {}}, {"6", 6, 400, trade::MarkWork::Nib, {}}};
  trade::PlanPanel quarter;
  quarter.panel = "left quarter panel";
  quarter.outline = {{0, 0}, {1500, 0}, {1500, 700}, {0, 700}};
  quarter.clear_fade = {{{{1250, 0}, {1250, 700}}}};
  quarter.stands_at = {-950, -1700};
  quarter.marks = {{"7", 500, 350, trade::MarkWork::Overspray, {}},
                   {"8", 1200, 500, trade::MarkWork::Nib, {}}};
  trade::PlanPanel bumper;
  bumper.panel = "rear bumper cover";
  bumper.outline = {{0, 0}, {2150, 0}, {2150, 560}, {0, 560}};
  bumper.stands_at = {0, -2500};
  bumper.plastic = true;
  bumper.marks = {{"9", 1100, 300, trade::MarkWork::Nib, {}}};
  trade::CorrectionPlan out;
  out.panels = {hood, door, quarter, bumper};
  return out;
}

struct Circle {
  double x_mm{};
  double y_mm{};
  double radius_mm{};

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "x_mm", .unit = "mm", .min = -1e4, .max = 1e4}, self.x_mm);
    visit(Field{.name = "y_mm", .unit = "mm", .min = -1e4, .max = 1e4}, self.y_mm);
    visit(Field{.name = "radius_mm", .unit = "mm", .min = 0.001, .max = 1e4}, self.radius_mm);
  }
};

struct Circles {
  std::vector<Circle> circles;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "circles"}, self.circles);
  }
};

Result<Number> circles_area(const Circles& in) {
  if (in.circles.empty()) return fail(trade::refusal(Code::Missing, "circles", "none"));
  if (in.circles.size() > 500)
    return fail(trade::refusal(Code::TooLarge, "circles", "500 at most"));
  std::vector<trade::Circle_mm> circles;
  for (const Circle& one : in.circles) circles.push_back({{one.x_mm, one.y_mm}, one.radius_mm});
  Number out{trade::circles_union_area_mm2(circles), {}};
  out.basis.method = "Area of all circles together by Green's theorem over their outer arcs.";
  out.basis.term("circles", static_cast<double>(in.circles.size()), "", trade::entered);
  out.basis.term("area", out.value, "mm2", trade::computed);
  return out;
}

Circles circles_example() {
  return {{{310, 820, 90}, {355, 870, 90}, {905, 1120, 90}}};
}

struct Walk {
  std::vector<Point_mm> places;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "places"}, self.places);
  }
};

struct WalkResult {
  std::vector<std::int64_t> order;
  double walk_mm{};
  trade::Basis basis;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "order", .doc = "places of the list, from 0"}, self.order);
    visit(Field{.name = "walk_mm", .unit = "mm"}, self.walk_mm);
    visit(Field{.name = "basis"}, self.basis);
  }
};

Result<WalkResult> walk(const Walk& in) {
  if (in.places.empty()) return fail(trade::refusal(Code::Missing, "places", "none"));
  if (in.places.size() > 40) return fail(trade::refusal(Code::TooLarge, "places", "40 at most"));
  JAMBLINE_TRY(trade::need_line("places", in.places));
  WalkResult out;
  const auto order = trade::shortest_walk(in.places);
  for (std::size_t i = 0; i < order.size(); ++i) {
    out.order.push_back(static_cast<std::int64_t>(order[i]));
    if (i > 0) out.walk_mm += trade::distance_mm(in.places[order[i - 1]], in.places[order[i]]);
  }
  out.basis.method = in.places.size() <= 12
                         ? "Exact, Held and Karp, 1962."
                         : "Nearest next, improved by turning pieces round; not always shortest.";
  out.basis.term("places", static_cast<double>(in.places.size()), "", trade::entered);
  out.basis.term("walk", out.walk_mm, "mm", trade::computed);
  return out;
}

Walk walk_example() {
  return {{{0, 2100}, {-950, 200}, {0, -2500}, {950, 300}, {-950, -1700}}};
}
}  // namespace

std::vector<Calculation> plan_calculations() {
  return {
      calculation<&trade::correction_plan, &plan_example>(
          "correction-plan", "rounds, areas, order, minutes, pads and towels for the open marks"),
      calculation<&circles_area, &circles_example>("circles-area",
                                                   "area that circles cover together"),
      calculation<&walk, &walk_example>("shortest-walk", "the shortest way past all places"),
  };
}

}  // namespace jambline::app
