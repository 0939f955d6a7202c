// The screens of sync: sending, joining a hub, the devices of the shop.
#pragma once

#include "screens.h"

namespace jambline::walk {

std::vector<Screen> sync_screens();

}  // namespace jambline::walk
