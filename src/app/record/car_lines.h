// app/record/car_lines.h: a car in one plain line, for the command line.
#pragma once

#include <string>

#include "folds/floor_view.h"

namespace jambline::app {

// Plate or VIN, color, body, what comes next, open marks, where it is; times in `zone`.
std::string car_line(const folds::FloorRow& row, const std::string& zone);

}  // namespace jambline::app
