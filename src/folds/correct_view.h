// folds/correct_view.h: film readings, rounds, the check before cutting and the cause, as screens
// and acts see them.
//
// Shape:  readings and rounds in the order in which they were first made; readings in um whatever
//         was typed. `taken_um` of a reading after a sequence: the mean before it less its own,
//         when the one before stands.
// Heads:  as in car_view.h. A check and a cause with several heads that differ are disputed.
#pragma once

#include <optional>
#include <vector>

#include "base/describe.h"
#include "entries/correct_kinds.h"
#include "entries/entry.h"

namespace jambline::folds {

struct FilmView {
  ReadingId reading;
  int spot = 1;
  std::optional<double> x_mm;
  std::optional<double> y_mm;
  job::FilmWhen when{};
  job::FilmGauge gauge{};
  job::FilmUnit unit{};
  std::vector<double> typed;
  std::vector<double> readings_um;
  double mean_um{};
  std::optional<ReadingId> before;
  std::vector<job::Round> rounds;
  std::optional<double> taken_um;
  PersonId by;
  std::int64_t wall_ms{};
  entries::Order order;
  std::vector<Hash> heads;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "reading"}, self.reading);
    visit(Field{.name = "spot"}, self.spot);
    visit(Field{.name = "x_mm", .unit = "mm"}, self.x_mm);
    visit(Field{.name = "y_mm", .unit = "mm"}, self.y_mm);
    visit(Field{.name = "when"}, self.when);
    visit(Field{.name = "gauge"}, self.gauge);
    visit(Field{.name = "unit"}, self.unit);
    visit(Field{.name = "typed"}, self.typed);
    visit(Field{.name = "readings_um", .unit = "um"}, self.readings_um);
    visit(Field{.name = "mean_um", .unit = "um"}, self.mean_um);
    visit(Field{.name = "before"}, self.before);
    visit(Field{.name = "rounds"}, self.rounds);
    visit(Field{.name = "taken_um", .unit = "um"}, self.taken_um);
    visit(Field{.name = "by"}, self.by);
    visit(Field{.name = "wall_ms"}, self.wall_ms);
  }
  friend bool operator==(const FilmView&, const FilmView&) = default;
};

struct RoundView {
  RoundId id;
  job::Round round{};
  job::RoundHow how{};
  job::Stage stage{};
  std::vector<MarkId> marks;
  int areas = 0;
  double area_mm2 = 0;
  std::optional<double> work_min;
  PersonId by;
  std::int64_t wall_ms{};
  entries::Order order;
  Hash finished;  // withdraw this to take the round back
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "id"}, self.id);
    visit(Field{.name = "round"}, self.round);
    visit(Field{.name = "how"}, self.how);
    visit(Field{.name = "stage"}, self.stage);
    visit(Field{.name = "marks"}, self.marks);
    visit(Field{.name = "areas"}, self.areas);
    visit(Field{.name = "area_mm2", .unit = "mm2"}, self.area_mm2);
    visit(Field{.name = "work_min", .unit = "min"}, self.work_min);
    visit(Field{.name = "by"}, self.by);
    visit(Field{.name = "wall_ms"}, self.wall_ms);
  }
  friend bool operator==(const RoundView&, const RoundView&) = default;
};

struct BeforeCutView {
  PersonId person;
  std::vector<job::CutCheck> checks;
  bool disputed = false;
  std::int64_t wall_ms{};
  std::vector<Hash> heads;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "person"}, self.person);
    visit(Field{.name = "checks"}, self.checks);
    visit(Field{.name = "disputed"}, self.disputed);
    visit(Field{.name = "wall_ms"}, self.wall_ms);
  }
  friend bool operator==(const BeforeCutView&, const BeforeCutView&) = default;
};

struct CauseView {
  std::optional<job::DirtCause> cause;  // none: a person left it open
  bool disputed = false;
  PersonId by;
  std::int64_t wall_ms{};
  std::vector<Hash> heads;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "cause"}, self.cause);
    visit(Field{.name = "disputed"}, self.disputed);
    visit(Field{.name = "by"}, self.by);
    visit(Field{.name = "wall_ms"}, self.wall_ms);
  }
  friend bool operator==(const CauseView&, const CauseView&) = default;
};

}  // namespace jambline::folds
