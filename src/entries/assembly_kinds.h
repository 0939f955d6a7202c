// entries/assembly_kinds.h: the order of putting a car together, and how its panels fit.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "entries/shop_kinds.h"
#include "job/assembly.h"
#include "job/fit.h"

namespace jambline::entries {

struct BrokenRule {
  RuleId rule;
  job::RuleReason reason{};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "rule"}, self.rule);
    visit(Field{.name = "reason"}, self.reason);
  }
  friend bool operator==(const BrokenRule&, const BrokenRule&) = default;
};

struct RuleSet {
  static constexpr std::uint16_t kind = 28;
  static constexpr std::string_view name = "RuleSet";
  static constexpr bool erasable = false;
  RuleId rule;
  job::AssemblyRule said{};
  std::vector<Hash> replaces = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "rule"}, self.rule);
    visit(Field{.name = "said"}, self.said);
    visit(replaces_field, self.replaces);
  }
};

struct StepSaid {
  static constexpr std::uint16_t kind = 122;
  static constexpr std::string_view name = "StepSaid";
  static constexpr bool erasable = false;
  job::Step step{};
  bool done = true;
  std::vector<BrokenRule> broken = {};
  std::vector<Hash> replaces = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "step"}, self.step);
    visit(Field{.name = "done"}, self.done);
    visit(Field{.name = "broken", .doc = "rules that it was done against"}, self.broken);
    visit(replaces_field, self.replaces);
  }
};

struct FitMeasured {
  static constexpr std::uint16_t kind = 230;
  static constexpr std::string_view name = "FitMeasured";
  static constexpr bool erasable = false;
  FitId fit;
  job::Panel panel{};
  job::FitRound round{};
  std::optional<job::Panel> datum = {};
  std::vector<job::GapPoint> points;
  std::vector<Hash> replaces = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "fit"}, self.fit);
    visit(Field{.name = "panel"}, self.panel);
    visit(Field{.name = "round"}, self.round);
    visit(Field{.name = "datum", .doc = "the panel that stays"}, self.datum);
    visit(Field{.name = "points"}, self.points);
    visit(replaces_field, self.replaces);
  }
};

struct FastenersMoved {
  static constexpr std::uint16_t kind = 231;
  static constexpr std::string_view name = "FastenersMoved";
  static constexpr bool erasable = false;
  job::Panel panel{};
  std::vector<job::FastenerMove> moves;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "panel"}, self.panel);
    visit(Field{.name = "moves"}, self.moves);
  }
};

}  // namespace jambline::entries
