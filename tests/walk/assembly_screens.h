// The work of a car, what it waits for, its parts and the order in which it goes together.
#pragma once

#include "screens.h"

namespace jambline::walk {

std::vector<Screen> assembly_screens();

}  // namespace jambline::walk
