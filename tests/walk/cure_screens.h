// The screens of cure, bonded parts and products.
#pragma once

#include "screens.h"

namespace jambline::walk {

std::vector<Screen> cure_screens();

}  // namespace jambline::walk
