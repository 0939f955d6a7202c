// screens/this_visit.h: what belongs to the visit that a car is on now, where it came back.
#pragma once

#include <algorithm>

#include "folds/car_view.h"

namespace jambline::screens {

inline std::int64_t visit_start_ms(const folds::CarView& car) {
  return car.visit.comebacks.empty() ? car.opened_ms : car.visit.comebacks.back().wall_ms;
}

inline bool checked_in(const folds::CarView& car) {
  return car.visit.check_in && car.visit.check_in->wall_ms >= visit_start_ms(car);
}

// The last one of this visit; null: none.
inline const folds::SignatureView* signature_for(const folds::CarView& car, job::SignedFor what) {
  const auto& all = car.visit.signatures;
  const auto found = std::find_if(all.rbegin(), all.rend(), [&](const auto& one) {
    return one.what == what && one.wall_ms >= visit_start_ms(car);
  });
  return found == all.rend() ? nullptr : &*found;
}

inline bool may_be_written(const folds::CarView* car, bool read_only) {
  return car && !read_only && car->unknown_entries == 0 && !car->delivered_ms;
}

}  // namespace jambline::screens
