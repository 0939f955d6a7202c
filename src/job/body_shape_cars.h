// job/body_shape_cars.h: the five cars, one file each; drawn anew at every call. Inner to
// body_shape.cpp, which keeps them.
#pragma once

#include "job/body_shape.h"

namespace jambline::job::draw {

CarPattern two_door_hatchback();
CarPattern four_door_sedan();
CarPattern suv_wagon();
CarPattern crew_cab_pickup();
CarPattern cargo_van();

}  // namespace jambline::job::draw
