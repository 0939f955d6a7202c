// bench-screens: how long the program takes to start, a tap to show, a map to move, what threw
// the dirt to be said and sixty cars to be sorted, and what memory it wants. It needs no display.
// `--tap`, `--pan`, `--evidence`, `--floor` or `--start` measures only that.
#include <cstdlib>
#include <cstring>
#include <sys/wait.h>
#include <unistd.h>

#include "tests/bench/screens/evidence.h"
#include "tests/bench/screens/floor.h"
#include "tests/bench/screens/pan.h"
#include "tests/bench/screens/shops.h"
#include "tests/bench/screens/start.h"
#include "tests/bench/screens/tap.h"

int main(int argc, char** argv) {
  using namespace jambline::bench;
  setenv("QT_QPA_PLATFORM", "offscreen", 1);
  setenv("QT_QUICK_BACKEND", "software", 1);
  const char* what = argc > 1 ? argv[1] : "";
  if (std::strcmp(what, "--show-floor") == 0 && argc == 3) return show_floor(argc, argv, argv[2]);
  if (std::strcmp(what, "--tap") == 0) return tap(argc, argv);
  if (std::strcmp(what, "--pan") == 0) return pan(argc, argv);
  if (std::strcmp(what, "--evidence") == 0) return evidence(argc, argv);
  if (std::strcmp(what, "--floor") == 0) return floor_60(argc, argv);
  bench_start();
  if (std::strcmp(what, "--start") == 0) return 0;
  for (const auto measure : {tap, pan, evidence, floor_60}) {
    const pid_t child = fork();
    if (child == 0) return measure(argc, argv);
    int status = 1;
    waitpid(child, &status, 0);
    must_be(child > 0 && WIFEXITED(status) && WEXITSTATUS(status) == 0, "a measurement failed");
  }
  return 0;
}
