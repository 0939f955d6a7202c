// The screens of what comes before the gun and of what was sprayed.
#pragma once

#include "screens.h"

namespace jambline::walk {

std::vector<Screen> gun_screens();

}  // namespace jambline::walk
