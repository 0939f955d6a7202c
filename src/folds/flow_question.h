// folds/flow_question.h: how long cars were in the shop, and how much of that they were worked on.
//
// Cars:     delivered in that time.
// Cycle:    from opening to delivery, in days of 24 hours.
// Touch:    all that was clocked on the car, by everybody, done again or not, in hours: two people
//           at once are two hours an hour.
// Waits:    of those cars, cut to the time between opening and delivery, by what they waited for;
//           two waits of one reason at once count once. Cars that waited for several things are in
//           several rows.
// Months:   of the delivery. Cases: cars, `value` in days of cycle; of a wait in hours.
#pragma once

#include "folds/questions.h"

namespace jambline::folds {

struct FlowMonth {
  std::string month;
  std::optional<Quartiles> cycle_days = {};
  std::optional<Quartiles> touch_h = {};
  std::vector<QuestionCase> cases;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "month"}, self.month);
    visit(Field{.name = "cycle_days", .unit = "d"}, self.cycle_days);
    visit(Field{.name = "touch_h", .unit = "h"}, self.touch_h);
    visit(Field{.name = "cases"}, self.cases);
  }
  friend bool operator==(const FlowMonth&, const FlowMonth&) = default;
};

struct FlowWait {
  job::WaitReason reason{};
  int cars = 0;
  double hours = 0;
  std::optional<Quartiles> hours_a_car = {};
  std::vector<QuestionCase> cases;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "reason"}, self.reason);
    visit(Field{.name = "cars"}, self.cars);
    visit(Field{.name = "hours", .unit = "h"}, self.hours);
    visit(Field{.name = "hours_a_car", .unit = "h"}, self.hours_a_car);
    visit(Field{.name = "cases"}, self.cases);
  }
  friend bool operator==(const FlowWait&, const FlowWait&) = default;
};

struct FlowAnswer {
  FlowMonth all;
  std::optional<Quartiles> touch_percent = {};  // of the cycle, car by car
  std::vector<FlowMonth> months;
  std::vector<FlowWait> waits;  // most hours first
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "all"}, self.all);
    visit(Field{.name = "touch_percent", .unit = "%"}, self.touch_percent);
    visit(Field{.name = "months"}, self.months);
    visit(Field{.name = "waits"}, self.waits);
  }
};

FlowAnswer flow_question(const std::vector<Account>& accounts, const Period& period,
                         const std::string& zone);

// How long the car waited for that in [from, to), in ms.
std::int64_t waited_ms(const Account& car, job::WaitReason reason, std::int64_t from_ms,
                       std::int64_t to_ms);

}  // namespace jambline::folds
