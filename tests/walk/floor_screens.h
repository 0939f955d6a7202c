// What the floor's forecasts open to, and the calendar that they are counted in.
#pragma once

#include "screens.h"

namespace jambline::walk {

std::vector<Screen> floor_screens();

}  // namespace jambline::walk
