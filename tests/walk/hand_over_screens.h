// How a car comes and goes: check-in, signature, walk-around, the customer's note, a comeback.
#pragma once

#include "screens.h"

namespace jambline::walk {

std::vector<Screen> hand_over_screens();

}  // namespace jambline::walk
