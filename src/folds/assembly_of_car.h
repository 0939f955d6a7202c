// folds/assembly_of_car.h: which steps of putting together this car has, what is done, and what
// stands in the way of the next.
//
// Applies: by the panels painted loose, the stages planned and what was bonded. A rule binds only
//          where both its steps apply.
// Done:    by a tap; or by what the car itself knows (a stage that is done, glass that was set, a
//          clock that has run out). A latch or a hinge that was moved after the latch was checked
//          makes that check undone.
// Holds:   `until_ms` is when the clock runs out at the present temperature; none: it cannot be
//          said, and the step is not done.
// Pure.
#pragma once

#include <optional>
#include <vector>

#include "folds/car_view.h"
#include "folds/shop_view.h"

namespace jambline::folds {

struct StepOfCar {
  job::Step step{};
  bool done = false;
  bool by_itself = false;                // the car knows; nobody has to tap it
  std::optional<std::int64_t> until_ms;  // of a hold that still runs
};
std::vector<StepOfCar> steps_of_car(const CarView& car, const ShopView& shop, const Moment& now);

// As they are done: what comes before something by a rule stands before it; the delivery last.
std::vector<StepOfCar> in_order(std::vector<StepOfCar> steps, const ShopView& shop);

struct RuleInTheWay {
  RuleId rule;
  job::AssemblyRule said;
  std::optional<std::int64_t> until_ms;
};
// The rules whose first step is not done, the strictest first.
std::vector<RuleInTheWay> in_the_way(const CarView& car, const ShopView& shop, job::Step step,
                                     const Moment& now);
std::vector<RuleInTheWay> in_the_way(const std::vector<StepOfCar>& steps, const ShopView& shop,
                                     job::Step step);

}  // namespace jambline::folds
