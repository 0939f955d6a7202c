// bench-photo: what pictures cost: a wall of 5,000 of them, taking one in, judging it, and how
// often judgement and barcodes are wrong. It needs no display. `--wall`, `--store`, `--judge` or
// `--barcode` measures only that.
#include <cstdlib>
#include <cstring>
#include <sys/wait.h>
#include <unistd.h>

#include "tests/bench/photo/photo_bench.h"
#include "tests/bench/screens/shops.h"

int main(int argc, char** argv) {
  using namespace jambline::bench;
  setenv("QT_QPA_PLATFORM", "offscreen", 1);
  setenv("QT_QUICK_BACKEND", "software", 1);
  const struct {
    const char* name;
    int (*measure)(int, char**);
  } parts[] = {{"--store", store}, {"--wall", wall}, {"--judge", judge}, {"--barcode", barcode}};
  for (const auto& part : parts) {
    if (argc > 1 && std::strcmp(argv[1], part.name) != 0) continue;
    const pid_t child = fork();
    if (child == 0) return part.measure(argc, argv);
    int status = 1;
    waitpid(child, &status, 0);
    must_be(child > 0 && WIFEXITED(status) && WEXITSTATUS(status) == 0, "a measurement failed");
  }
  return 0;
}
