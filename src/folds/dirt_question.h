// folds/dirt_question.h: nibs on a square meter that was sprayed, by month, booth and painter.
//
// Cars:     counted ones (lesson.h), by the end of their spraying; others are `left_out`.
// Rate:     all nibs over all area of a row, with its nibs, area and cars; the cars' own rates as
//           quartiles. A row by painter holds the cars on whose spraying his clock ran: with two
//           painters a car is in both. Whose gun it was is no cause.
// Cases:    cars, `value` in nibs per m2.
#pragma once

#include "folds/lesson.h"
#include "folds/questions.h"

namespace jambline::folds {

struct DirtRow {
  std::string month;
  std::optional<BoothId> booth = {};
  std::optional<PersonId> painter = {};
  int cars = 0;
  std::int64_t nibs = 0;
  double sprayed_m2 = 0;
  double nibs_per_m2 = 0;
  std::optional<Quartiles> of_cars = {};
  std::vector<QuestionCase> cases;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "month"}, self.month);
    visit(Field{.name = "booth"}, self.booth);
    visit(Field{.name = "painter"}, self.painter);
    visit(Field{.name = "cars"}, self.cars);
    visit(Field{.name = "nibs"}, self.nibs);
    visit(Field{.name = "sprayed_m2", .unit = "m2"}, self.sprayed_m2);
    visit(Field{.name = "nibs_per_m2", .unit = "1/m2"}, self.nibs_per_m2);
    visit(Field{.name = "of_cars", .unit = "1/m2"}, self.of_cars);
    visit(Field{.name = "cases"}, self.cases);
  }
  friend bool operator==(const DirtRow&, const DirtRow&) = default;
};

struct DirtAnswer {
  DirtRow all;
  std::vector<DirtRow> months;
  std::vector<DirtRow> booths;    // most area first; without a booth: nobody said
  std::vector<DirtRow> painters;  // most area first
  int left_out = 0;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "all"}, self.all);
    visit(Field{.name = "months"}, self.months);
    visit(Field{.name = "booths"}, self.booths);
    visit(Field{.name = "painters"}, self.painters);
    visit(Field{.name = "left_out"}, self.left_out);
  }
};

// `accounts`: of that time; they know the plates.
DirtAnswer dirt_question(const std::vector<Lesson>& lessons, const std::vector<Account>& accounts,
                         const Period& period, const std::string& zone);

}  // namespace jambline::folds
