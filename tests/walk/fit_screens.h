// The screens of the fit of panels.
#pragma once

#include "screens.h"

namespace jambline::walk {

std::vector<Screen> fit_screens();

}  // namespace jambline::walk
