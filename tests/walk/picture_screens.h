// The screens about pictures: the wall, one picture, before and after, what was taken and not kept.
#pragma once

#include "screens.h"

namespace jambline::walk {

std::vector<Screen> picture_screens();

}  // namespace jambline::walk
