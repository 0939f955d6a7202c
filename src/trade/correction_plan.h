// trade/correction_plan.h: which marks are worked on in which round, on what areas, in what order.
//
// Rounds:  level all, clean down, compound all, change pads, polish all, finish all: fewest pad and
//          tool changes first, then the shorter walk (exact for up to 12 panels). One panel at a
//          time by choice. A mark starts at the mildest round that takes its kind out on a test
//          spot, then coarse to fine; each round's area is wider than the one before.
// Areas:   circles round the marks, clipped `keep_off_mm` inside edges and body lines; what touches
//          in one round is one area. Every mark that is worked on lies in exactly one area a round.
// By hand: a mark nearer to an edge or body line than `keep_off_mm`, in the finest round only: a
//          spot as wide as the first round's, clipped at the outline, never one area with others.
// Left out, by name: matte, textured, film or wrap ("do not cut"), marks within `keep_off_fade_mm`
//          of a clear fade, and marks whose kind starts finer than the finest round given.
// Advice:  whole panel over 8 marks or 35 % covered; edges taped for compounding, no tape for
//          finishing.
// Numbers: common practice, no source, all in the input. Minutes learn from own ones: weight
//          n / (n + 10).
// Errors:  OutOfRange, Missing, Malformed, TooLarge (500 marks a panel, 40 panels; see outline.h).
//          Threads: pure.
#pragma once

#include <array>
#include <string_view>

#include "base/error.h"
#include "trade/basis.h"
#include "trade/geometry.h"
#include "trade/outline.h"

namespace jambline::trade {

enum class Round : std::uint8_t { Level, Refine, Compound, Polish, Finish };
enum class MarkWork : std::uint8_t { Nib, Run, Peel, Overspray, Scratch, Haze };
enum class LeftOut : std::uint8_t { DoNotCut, ClearFade, NoRound };

struct PlanMark {
  std::string mark;
  double x_mm{};
  double y_mm{};
  MarkWork work{};
  std::optional<Round> proved_start;  // the mildest round that took it out on the test spot

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "mark"}, self.mark);
    visit(Field{.name = "x_mm", .unit = "mm"}, self.x_mm);
    visit(Field{.name = "y_mm", .unit = "mm"}, self.y_mm);
    visit(Field{.name = "work"}, self.work);
    visit(Field{.name = "proved_start",
                .doc = "the mildest round that took it out on the test spot; none: the usual one"},
          self.proved_start);
  }
};

struct PlanPanel {
  std::string panel;
  std::vector<Point_mm> outline;
  std::vector<PanelLine> body_lines;
  std::vector<PanelLine> clear_fade;
  Point_mm stands_at;  // on the floor round the car
  bool may_be_cut = true;
  bool plastic = false;
  std::vector<PlanMark> marks;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "panel"}, self.panel);
    visit(Field{.name = "outline"}, self.outline);
    visit(Field{.name = "body_lines"}, self.body_lines);
    visit(Field{.name = "clear_fade"}, self.clear_fade);
    visit(Field{.name = "stands_at", .doc = "on the floor round the car, mm"}, self.stands_at);
    visit(Field{.name = "may_be_cut", .doc = "false for matte, textured, film and wrap"},
          self.may_be_cut);
    visit(Field{.name = "plastic"}, self.plastic);
    visit(Field{.name = "marks"}, self.marks);
  }
};

struct RoundRule {
  Round round{};
  double radius_mm{};
  double min_per_area{};  // of 0.09 m2
  double removal_um{};
  double removal_sd_um{};
  std::optional<double> own_min_per_area;  // the shop's, from its clock
  int own_areas{};

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "round"}, self.round);
    visit(Field{.name = "radius_mm", .unit = "mm", .min = 5, .max = 500}, self.radius_mm);
    visit(Field{.name = "min_per_area",
                .unit = "min",
                .doc = "of 300 x 300 mm",
                .min = 0.05,
                .max = 60},
          self.min_per_area);
    visit(Field{.name = "removal_um", .unit = "um", .min = 0, .max = 50}, self.removal_um);
    visit(Field{.name = "removal_sd_um", .unit = "um", .min = 0, .max = 50}, self.removal_sd_um);
    visit(Field{.name = "own_min_per_area", .unit = "min", .min = 0.01, .max = 600},
          self.own_min_per_area);
    visit(Field{.name = "own_areas", .min = 0, .max = 1e6}, self.own_areas);
  }
};

// Common practice, no source.
std::vector<RoundRule> usual_rounds();

struct CorrectionPlan {
  std::vector<PlanPanel> panels;  // in walking order
  std::vector<RoundRule> rounds = usual_rounds();
  bool one_panel_at_a_time = false;
  double keep_off_mm = 12;
  double keep_off_fade_mm = 125;
  double change_min = 1.5;    // of pad or tool
  double clean_down_min = 2;  // a panel
  double plastic_speed = 0.7;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "panels"}, self.panels);
    visit(Field{.name = "rounds"}, self.rounds);
    visit(Field{.name = "one_panel_at_a_time"}, self.one_panel_at_a_time);
    visit(Field{.name = "keep_off_mm", .unit = "mm", .min = 0, .max = 100}, self.keep_off_mm);
    visit(Field{.name = "keep_off_fade_mm", .unit = "mm", .min = 0, .max = 500},
          self.keep_off_fade_mm);
    visit(Field{.name = "change_min", .unit = "min", .min = 0, .max = 60}, self.change_min);
    visit(Field{.name = "clean_down_min", .unit = "min", .min = 0, .max = 60}, self.clean_down_min);
    visit(Field{.name = "plastic_speed", .min = 0.1, .max = 1}, self.plastic_speed);
  }
};

struct PlanArea {
  std::vector<std::string> marks;
  Point_mm center;
  double reach_mm{};  // of the farthest edge from the center
  double area_mm2{};  // clipped
  double minutes{};
  bool by_hand = false;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "marks"}, self.marks);
    visit(Field{.name = "center"}, self.center);
    visit(Field{.name = "reach_mm", .unit = "mm"}, self.reach_mm);
    visit(Field{.name = "area_mm2", .unit = "mm2"}, self.area_mm2);
    visit(Field{.name = "minutes", .unit = "min"}, self.minutes);
    visit(Field{.name = "by_hand"}, self.by_hand);
  }
};

struct PlanStation {
  Round round{};
  std::string panel;
  std::vector<PlanArea> areas;
  bool tape_edges = false;
  bool clean_down = false;  // after it, before the next round

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "round"}, self.round);
    visit(Field{.name = "panel"}, self.panel);
    visit(Field{.name = "areas"}, self.areas);
    visit(Field{.name = "tape_edges"}, self.tape_edges);
    visit(Field{.name = "clean_down"}, self.clean_down);
  }
};

struct PlanKit {
  Round round{};
  int pads{};
  int towels{};

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "round"}, self.round);
    visit(Field{.name = "pads"}, self.pads);
    visit(Field{.name = "towels"}, self.towels);
  }
};

struct PlanPanelAdvice {
  std::string panel;
  bool whole_panel = false;
  double covered_percent{};
  double removal_um{};  // of the whole sequence of its deepest mark
  double removal_sd_um{};

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "panel"}, self.panel);
    visit(Field{.name = "whole_panel"}, self.whole_panel);
    visit(Field{.name = "covered_percent", .unit = "%"}, self.covered_percent);
    visit(Field{.name = "removal_um", .unit = "um"}, self.removal_um);
    visit(Field{.name = "removal_sd_um", .unit = "um"}, self.removal_sd_um);
  }
};

struct PlanLeftOut {
  std::string panel;
  std::string mark;
  LeftOut why{};

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "panel"}, self.panel);
    visit(Field{.name = "mark"}, self.mark);
    visit(Field{.name = "why"}, self.why);
  }
};

struct CorrectionPlanResult {
  std::vector<PlanStation> stations;  // in the order of work
  std::vector<PlanKit> kit;
  std::vector<PlanPanelAdvice> advice;
  std::vector<PlanLeftOut> left_out;
  double minutes{};
  int changes{};  // of pad or tool
  double walk_mm{};
  Basis basis;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "stations"}, self.stations);
    visit(Field{.name = "kit"}, self.kit);
    visit(Field{.name = "advice"}, self.advice);
    visit(Field{.name = "left_out"}, self.left_out);
    visit(Field{.name = "minutes", .unit = "min"}, self.minutes);
    visit(Field{.name = "changes"}, self.changes);
    visit(Field{.name = "walk_mm", .unit = "mm"}, self.walk_mm);
    visit(Field{.name = "basis"}, self.basis);
  }
};

Result<CorrectionPlanResult> correction_plan(const CorrectionPlan& plan);

// The shortest way past all places, begun anywhere: exact for up to 12, else nearest next, improved
// by turning pieces round. Gives the order as places of the list.
std::vector<std::size_t> shortest_walk(const std::vector<Point_mm>& places);

struct Circle_mm {
  Point_mm center;
  double radius_mm{};
};
// By Green's theorem over the arcs that bound it; exact but for rounding.
double circles_union_area_mm2(const std::vector<Circle_mm>& circles);

}  // namespace jambline::trade

template <>
inline constexpr auto jambline::enum_words<jambline::trade::Round> =
    std::to_array<std::string_view>({"level", "refine", "compound", "polish", "finish"});
template <>
inline constexpr auto jambline::enum_words<jambline::trade::MarkWork> =
    std::to_array<std::string_view>({"nib", "run", "peel", "overspray", "scratch", "haze"});
template <>
inline constexpr auto jambline::enum_words<jambline::trade::LeftOut> =
    std::to_array<std::string_view>({"do not cut", "clear fade", "no round"});
