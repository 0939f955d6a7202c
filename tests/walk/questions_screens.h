// The questions of months and years, each with its answer, its cars and its table.
#pragma once

#include "screens.h"

namespace jambline::walk {

std::vector<Screen> questions_screens();

}  // namespace jambline::walk
