// screens/floor_order.h: in which order the cars of the floor stand for a person, and what that
// person does next. Decides what is shown first, never who may do it.
//
// Order:   what waits for the person first; in each part what is late or cannot be on time any
//          more, by promise; then what is under 5 in 10, the least first; then what is disputed or
//          waits without a date; then the rest by promise.
// Next:    of what waits for the person, the first car on which the person's own clock was paused;
//          without one, the first that has work which can begin now, is usually this person's and
//          runs for nobody. Nothing while the person's clock runs. Source: common practice, no
//          source.
// Threads: pure.
#pragma once

#include <optional>
#include <tuple>

#include "folds/floor_view.h"
#include "folds/shop_view.h"
#include "screens/floor_forecasts.h"

namespace jambline::screens {

struct FloorPlace {
  bool others = false;
  int trouble = 0;  // 0 the worst
  double worth = 0;
  std::int64_t promised_ms{};
  friend bool operator<(const FloorPlace& a, const FloorPlace& b) {
    return std::tie(a.others, a.trouble, a.worth, a.promised_ms) <
           std::tie(b.others, b.trouble, b.worth, b.promised_ms);
  }
};

// By the clock, by what is offered to the role, by whose work the next stage usually is; what is
// disputed waits for the manager too.
bool waits_for(const folds::FloorRow& car, const folds::PersonView* person);

// `forecast` may be null: not known yet.
FloorPlace place_of(const folds::FloorRow& car, const folds::Forecast* forecast, bool for_person,
                    std::int64_t now_ms);

enum class NextWhy : std::uint8_t { Paused, Late, Unlikely, Promised, Alone };

struct NextForPerson {
  JobId job;
  OperationId operation;
  job::Stage stage{};
  NextWhy why{};
};
// `cars` in their order, those of others too.
std::optional<NextForPerson> next_for(
    const folds::PersonView& person,
    const std::vector<std::pair<const folds::FloorRow*, const folds::Forecast*>>& cars,
    std::int64_t now_ms);

}  // namespace jambline::screens
