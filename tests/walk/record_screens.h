// The record: found cars, its sentence, kept questions, the chosen car, one car over time, the
// check.
#pragma once

#include "screens.h"

namespace jambline::walk {

std::vector<Screen> record_screens();

// Opens the check of all entries; on the phone the way to it is unfolded first.
bool press_check(Shop& shop);

}  // namespace jambline::walk
