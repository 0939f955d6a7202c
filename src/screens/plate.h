// What a car is called on the tape: its plate, else the end of its VIN.
#pragma once

#include "folds/floor_view.h"
#include "screens/text.h"

namespace jambline::screens {

inline QString plate_of(const folds::FloorRow& car) {
  return car.plate.empty() ? text(car.vin).right(8) : text(car.plate);
}

}  // namespace jambline::screens
