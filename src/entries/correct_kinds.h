// entries/correct_kinds.h: film readings, the check before cutting, what threw it, and the rounds
// of the correction with how each mark ended.
#pragma once

#include <optional>
#include <vector>

#include "entries/shop_kinds.h"
#include "job/before_cut.h"
#include "job/dirt_cause.h"
#include "job/film_reading.h"
#include "job/mark.h"
#include "job/panel.h"
#include "job/round.h"
#include "job/stage.h"

namespace jambline::entries {

struct MarkEnded {
  static constexpr std::uint16_t kind = 134;
  static constexpr std::string_view name = "MarkEnded";
  static constexpr bool erasable = false;
  MarkId mark;
  job::MarkEnd end{};
  std::vector<Hash> replaces;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "mark"}, self.mark);
    visit(Field{.name = "end"}, self.end);
    visit(replaces_field, self.replaces);
  }
};

// Readings of one spot. A later entry of the same reading corrects it.
struct FilmRead {
  static constexpr std::uint16_t kind = 141;
  static constexpr std::string_view name = "FilmRead";
  static constexpr bool erasable = false;
  ReadingId reading;
  job::Panel panel{};
  int spot = 1;
  std::optional<double> x_mm = {};
  std::optional<double> y_mm = {};
  job::FilmWhen when{};
  job::FilmGauge gauge{};
  job::FilmUnit unit{};
  std::vector<double> typed;  // three or more, in `unit`
  // Of a reading after a sequence: the one before it on this spot, and the rounds between them.
  std::optional<ReadingId> before = {};
  std::vector<job::Round> rounds = {};
  std::vector<Hash> replaces = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "reading"}, self.reading);
    visit(Field{.name = "panel"}, self.panel);
    visit(Field{.name = "spot", .doc = "number of the spot on its panel", .min = 1, .max = 99},
          self.spot);
    visit(Field{.name = "x_mm",
                .unit = "mm",
                .doc = "on the panel laid flat; absent: place not said",
                .min = -10000,
                .max = 10000},
          self.x_mm);
    visit(Field{.name = "y_mm",
                .unit = "mm",
                .doc = "on the panel laid flat; absent: place not said",
                .min = -10000,
                .max = 10000},
          self.y_mm);
    visit(Field{.name = "when"}, self.when);
    visit(Field{.name = "gauge", .doc = "all down to metal, or the clear alone"}, self.gauge);
    visit(Field{.name = "unit", .doc = "of what was typed"}, self.unit);
    visit(Field{.name = "typed", .doc = "as it was typed, in `unit`", .min = 0, .max = 10000},
          self.typed);
    visit(Field{.name = "before", .doc = "the reading before the sequence on this spot"},
          self.before);
    visit(Field{.name = "rounds", .doc = "of the sequence, in the order of work"}, self.rounds);
    visit(replaces_field, self.replaces);
  }
};

// By the person who is going to cut.
struct BeforeCutAnswered {
  static constexpr std::uint16_t kind = 142;
  static constexpr std::string_view name = "BeforeCutAnswered";
  static constexpr bool erasable = false;
  std::vector<job::CutCheck> checks;
  std::vector<Hash> replaces;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "checks"}, self.checks);
    visit(replaces_field, self.replaces);
  }
};

struct CauseSet {
  static constexpr std::uint16_t kind = 143;
  static constexpr std::string_view name = "CauseSet";
  static constexpr bool erasable = false;
  std::vector<Hash> replaces;
  std::optional<job::DirtCause> cause = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(replaces_field, self.replaces);
    visit(Field{.name = "cause", .doc = "what a person says threw it; absent: left open"},
          self.cause);
  }
};

// One round on one panel. A round done again is a round of its own.
struct RoundFinished {
  static constexpr std::uint16_t kind = 144;
  static constexpr std::string_view name = "RoundFinished";
  static constexpr bool erasable = false;
  RoundId id;
  job::Panel panel{};
  job::Round round{};
  job::RoundHow how{};
  job::Stage stage{};
  std::vector<MarkId> marks;  // worked on, or skipped
  int areas = 0;
  double area_mm2 = 0;
  std::optional<double> work_min = {};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "id"}, self.id);
    visit(Field{.name = "panel"}, self.panel);
    visit(Field{.name = "round"}, self.round);
    visit(Field{.name = "how"}, self.how);
    visit(Field{.name = "stage", .doc = "correct or last polish"}, self.stage);
    visit(Field{.name = "marks", .doc = "worked on; none: dirt all over"}, self.marks);
    visit(Field{.name = "areas", .doc = "as they were planned", .min = 0, .max = 1000}, self.areas);
    visit(Field{.name = "area_mm2",
                .unit = "mm2",
                .doc = "of all areas, clipped",
                .min = 0,
                .max = 20'000'000},
          self.area_mm2);
    visit(Field{.name = "work_min",
                .unit = "min",
                .doc = "by the clock; absent: no clock ran",
                .min = 0,
                .max = 1440},
          self.work_min);
  }
};

}  // namespace jambline::entries
