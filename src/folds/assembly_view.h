// folds/assembly_view.h: what was put together of a car and against which rules, and how its panels
// fit.
//
// Shape:  steps by step, the last word of each; fits and moves in the order in which they were
// said. Heads:  as in car_view.h.
#pragma once

#include <optional>
#include <vector>

#include "entries/assembly_kinds.h"
#include "entries/entry.h"

namespace jambline::folds {

struct StepView {
  job::Step step{};
  bool done = false;
  std::vector<entries::BrokenRule> broken;
  PersonId by;
  std::int64_t wall_ms{};
  entries::Order order;
  std::vector<Hash> heads;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "step"}, self.step);
    visit(Field{.name = "done"}, self.done);
    visit(Field{.name = "broken"}, self.broken);
    visit(Field{.name = "by"}, self.by);
    visit(Field{.name = "wall_ms", .unit = "ms"}, self.wall_ms);
  }
  friend bool operator==(const StepView&, const StepView&) = default;
};

struct FitView {
  FitId fit;
  job::Panel panel{};
  job::FitRound round{};
  std::optional<job::Panel> datum = {};
  std::vector<job::GapPoint> points;
  PersonId by;
  std::int64_t wall_ms{};
  entries::Order order;
  std::vector<Hash> heads;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "fit"}, self.fit);
    visit(Field{.name = "panel"}, self.panel);
    visit(Field{.name = "round"}, self.round);
    visit(Field{.name = "datum"}, self.datum);
    visit(Field{.name = "points"}, self.points);
    visit(Field{.name = "by"}, self.by);
    visit(Field{.name = "wall_ms", .unit = "ms"}, self.wall_ms);
  }
  friend bool operator==(const FitView&, const FitView&) = default;
};

struct FastenersMovedView {
  job::Panel panel{};
  std::vector<job::FastenerMove> moves;
  PersonId by;
  std::int64_t wall_ms{};
  entries::Order order;
  Hash entry;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "panel"}, self.panel);
    visit(Field{.name = "moves"}, self.moves);
    visit(Field{.name = "by"}, self.by);
    visit(Field{.name = "wall_ms", .unit = "ms"}, self.wall_ms);
  }
  friend bool operator==(const FastenersMovedView&, const FastenersMovedView&) = default;
};

struct AssemblyView {
  std::vector<StepView> steps;
  std::vector<FitView> fits;
  std::vector<FastenersMovedView> moves;
  const StepView* find(job::Step step) const {
    for (const auto& one : steps)
      if (one.step == step) return &one;
    return nullptr;
  }
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "steps"}, self.steps);
    visit(Field{.name = "fits"}, self.fits);
    visit(Field{.name = "moves"}, self.moves);
  }
  friend bool operator==(const AssemblyView&, const AssemblyView&) = default;
};

}  // namespace jambline::folds
