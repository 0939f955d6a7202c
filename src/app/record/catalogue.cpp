#include <iostream>

#include "app/record/commands.h"
#include "entries/entry.h"

namespace jambline::app {

int catalogue() {
  std::cout << entries::catalogue();
  return 0;
}

}  // namespace jambline::app
