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

const std::vector<Screen>& screens();

// Closes what is open and goes; false when the screen did not come.
bool go_to(Shop& shop, const Screen& screen);

}  // namespace jambline::walk
