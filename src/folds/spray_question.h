// folds/spray_question.h: starts of spraying: what was passed over with name and reason, what was
// not met, and what somebody said was sprayed without.
//
// Counts:   a start in the time in which it was made. `with_overrides`: a must was answered "no".
// Facts missing: a must that was passed over because its record is not here, and a should that was
//           answered "no"; a start with several is one start.
// Without:  reports, each of which names one thing or several. Only what was reported is here.
// Never:    a place without entries here says nothing about what was breathed.
// Cases:    starts and reports, `value` the number of things.
#pragma once

#include "folds/questions.h"

namespace jambline::folds {

struct SprayRow {
  std::optional<job::GunItem> item = {};
  std::optional<PersonId> person = {};
  std::string month;
  int starts = 0;  // of a person or a month; of an item: with it passed over or not met
  int with_overrides = 0;
  int facts_missing = 0;
  int without = 0;  // reports
  std::vector<QuestionCase> cases;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "item"}, self.item);
    visit(Field{.name = "person"}, self.person);
    visit(Field{.name = "month"}, self.month);
    visit(Field{.name = "starts"}, self.starts);
    visit(Field{.name = "with_overrides"}, self.with_overrides);
    visit(Field{.name = "facts_missing"}, self.facts_missing);
    visit(Field{.name = "without"}, self.without);
    visit(Field{.name = "cases"}, self.cases);
  }
  friend bool operator==(const SprayRow&, const SprayRow&) = default;
};

struct SprayReason {
  std::optional<job::GunReason> reason = {};
  int times = 0;
  std::vector<QuestionCase> cases;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "reason"}, self.reason);
    visit(Field{.name = "times"}, self.times);
    visit(Field{.name = "cases"}, self.cases);
  }
  friend bool operator==(const SprayReason&, const SprayReason&) = default;
};

struct SprayAnswer {
  SprayRow all;
  std::vector<SprayRow> items;   // most overrides first
  std::vector<SprayRow> people;  // most starts first
  std::vector<SprayRow> months;
  std::vector<SprayReason> reasons;  // of musts passed over; most often first
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "all"}, self.all);
    visit(Field{.name = "items"}, self.items);
    visit(Field{.name = "people"}, self.people);
    visit(Field{.name = "months"}, self.months);
    visit(Field{.name = "reasons"}, self.reasons);
  }
};

SprayAnswer spray_question(const std::vector<Account>& accounts, const Period& period,
                           const std::string& zone);

}  // namespace jambline::folds
