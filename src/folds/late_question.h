// folds/late_question.h: cars that were promised in a time, those that were late, and what held
// them.
//
// Due:      promised in that time, by the promise that stands now: one that was put off is late
//           only against the new one. Cars in work whose promise is still to come are not counted.
// Late:     delivered after the promise, or in work after it (`still_here`).
// Held by:  what a car waited for longest between opening and delivery (or now); without any wait,
//           work that was done again; without that, the stage that is still to do; without that,
//           nothing was said. One cause a car: what else it waited for stands in its own hours.
//           It says what the record holds and not whose fault it was.
// Cases:    cars, `value` in hours late.
#pragma once

#include "folds/questions.h"

namespace jambline::folds {

enum class HeldBy : std::uint8_t { Wait, Redo, Stage, NotSaid };

struct LateRow {
  HeldBy held{};
  std::optional<job::WaitReason> wait = {};
  std::optional<job::Stage> stage = {};
  int cars = 0;
  std::optional<Quartiles> hours_late = {};
  double held_h = 0;  // waited, or clocked on redo; of all its cars
  std::vector<QuestionCase> cases;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "held"}, self.held);
    visit(Field{.name = "wait"}, self.wait);
    visit(Field{.name = "stage"}, self.stage);
    visit(Field{.name = "cars"}, self.cars);
    visit(Field{.name = "hours_late", .unit = "h"}, self.hours_late);
    visit(Field{.name = "held_h", .unit = "h"}, self.held_h);
    visit(Field{.name = "cases"}, self.cases);
  }
  friend bool operator==(const LateRow&, const LateRow&) = default;
};

struct LateMonth {
  std::string month;
  int due = 0;
  int late = 0;
  std::vector<QuestionCase> cases;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "month"}, self.month);
    visit(Field{.name = "due"}, self.due);
    visit(Field{.name = "late"}, self.late);
    visit(Field{.name = "cases"}, self.cases);
  }
  friend bool operator==(const LateMonth&, const LateMonth&) = default;
};

struct LateAnswer {
  int due = 0;
  int late = 0;
  int still_here = 0;
  std::optional<Quartiles> hours_late = {};
  std::vector<LateMonth> months;  // of the promise
  std::vector<LateRow> rows;      // most cars first
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "due"}, self.due);
    visit(Field{.name = "late"}, self.late);
    visit(Field{.name = "still_here"}, self.still_here);
    visit(Field{.name = "hours_late", .unit = "h"}, self.hours_late);
    visit(Field{.name = "months"}, self.months);
    visit(Field{.name = "rows"}, self.rows);
  }
};

LateAnswer late_question(const std::vector<Account>& accounts, const Period& period,
                         const std::string& zone, std::int64_t now_ms);

}  // namespace jambline::folds

template <>
inline constexpr auto jambline::enum_words<jambline::folds::HeldBy> =
    std::to_array<std::string_view>({"wait", "redo", "stage", "not said"});
