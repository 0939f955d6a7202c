// The screens of a booth: sprayed in, clearing, stopped, over; its facts and its readings.
#pragma once

#include "screens.h"

namespace jambline::walk {

std::vector<Screen> booth_screens();

}  // namespace jambline::walk
