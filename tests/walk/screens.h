// The screens of the program and the way to each, in the window as it stands.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "shops.h"

namespace jambline::walk {

struct Screen {
  std::string name;
  bool of_car = false;  // needs a car on the tape
  std::function<bool(Shop&)> go;
  bool narrow_only = false;  // elsewhere it is part of another one
  bool disputed = false;     // needs a car that two people disagree on
};

// With JAMBLINE_WALK=wall,look set, only those.
const std::vector<Screen>& screens();

bool place(Shop& shop, const char* where, const char* work);
bool press(Shop& shop, const char* object_name);  // false when it is not there

// Closes what is open and goes; false when the screen did not come.
bool go_to(Shop& shop, const Screen& screen);

}  // namespace jambline::walk
