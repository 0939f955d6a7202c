// The screens of hours, amended clocks and waits.
#pragma once

#include "screens.h"

namespace jambline::walk {

std::vector<Screen> hours_screens();

}  // namespace jambline::walk
