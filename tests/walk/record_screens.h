// The record: found cars, its sentence, kept questions, the chosen car, one car over time, the
// check.
#pragma once

#include "screens.h"

namespace jambline::walk {

std::vector<Screen> record_screens();

}  // namespace jambline::walk
