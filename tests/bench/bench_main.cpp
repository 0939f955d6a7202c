#include "tests/bench/figures.h"

int main() {
  for (const auto& part : jambline::bench::Part::all()) part();
  return 0;
}
