// The screens of how long records are kept and who may be forgotten.
#pragma once

#include "screens.h"

namespace jambline::walk {

std::vector<Screen> retention_screens();

}  // namespace jambline::walk
