// The screens of protection: the register and its forms, limits, exposure.
#pragma once

#include "screens.h"

namespace jambline::walk {

std::vector<Screen> protection_screens();

}  // namespace jambline::walk
