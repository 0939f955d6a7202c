// The screens of what of a car goes out as a file: report and bundle.
#pragma once

#include "screens.h"

namespace jambline::walk {

std::vector<Screen> report_screens();

}  // namespace jambline::walk
