// folds/hours_question.h: hours estimated against hours clocked, by operation, person or month.
//
// Counts:   an operation when it is done, in the time in which its clock ended last. It is
//           `compared` when it has an estimate and a clock and is first-time work or a supplement.
//           What was clocked without an estimate, and what was done again (redo, comeback), is
//           beside it in columns of its own and never in the comparison.
// Share:    where several people clocked one operation, each has the part of its estimate that he
//           has of its clock. Nobody's clock says who was slow: that is not what it measures.
// Ratio:    clocked to estimated minutes, operation by operation: quartiles.
// Open:     operations clocked in that time that are not done; they are in no row.
// Rows:     by operation: stage and title, most clocked first; by person: most clocked first; by
//           month: in order. Cases: operations, `value` in minutes clocked.
#pragma once

#include "folds/questions.h"

namespace jambline::folds {

enum class HoursBy : std::uint8_t { Operation, Person, Month };

struct HoursRow {
  std::optional<job::Stage> stage = {};
  std::string title;
  std::optional<PersonId> person = {};
  std::string month;
  int operations = 0;  // compared
  int cars = 0;        // of those
  double estimate_min = 0;
  double clocked_min = 0;
  std::optional<Quartiles> ratio = {};
  int without_estimate = 0;
  double without_estimate_min = 0;
  int again = 0;
  double again_min = 0;
  std::vector<QuestionCase> cases;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "stage"}, self.stage);
    visit(Field{.name = "title"}, self.title);
    visit(Field{.name = "person"}, self.person);
    visit(Field{.name = "month"}, self.month);
    visit(Field{.name = "operations"}, self.operations);
    visit(Field{.name = "cars"}, self.cars);
    visit(Field{.name = "estimate_min", .unit = "min"}, self.estimate_min);
    visit(Field{.name = "clocked_min", .unit = "min"}, self.clocked_min);
    visit(Field{.name = "ratio"}, self.ratio);
    visit(Field{.name = "without_estimate"}, self.without_estimate);
    visit(Field{.name = "without_estimate_min", .unit = "min"}, self.without_estimate_min);
    visit(Field{.name = "again"}, self.again);
    visit(Field{.name = "again_min", .unit = "min"}, self.again_min);
    visit(Field{.name = "cases"}, self.cases);
  }
  friend bool operator==(const HoursRow&, const HoursRow&) = default;
};

struct HoursAnswer {
  HoursBy by{};
  HoursRow all;
  std::vector<HoursRow> rows;
  int open = 0;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "by"}, self.by);
    visit(Field{.name = "all"}, self.all);
    visit(Field{.name = "rows"}, self.rows);
    visit(Field{.name = "open"}, self.open);
  }
};

HoursAnswer hours_question(const std::vector<Account>& accounts, HoursBy by, const Period& period,
                           const std::string& zone);

}  // namespace jambline::folds

template <>
inline constexpr auto jambline::enum_words<jambline::folds::HoursBy> =
    std::to_array<std::string_view>({"operation", "person", "month"});
