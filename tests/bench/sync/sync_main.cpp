// bench-sync: all parts, or those that are named: push photos cut load. The hub and the baseline
// run in processes of their own.
#include <csignal>
#include <cstring>
#include <iostream>
#include <sys/resource.h>

#include "tests/bench/sync/bench_hub.h"
#include "tests/bench/sync/sync_parts.h"

int main(int argc, char** argv) {
  using namespace jambline::bench;
  std::signal(SIGPIPE, SIG_IGN);
  if (argc == 3 && std::strcmp(argv[1], "--serve-hub") == 0) return serve_hub(argv[2]);
  if (argc == 3 && std::strcmp(argv[1], "--serve-bare") == 0) return serve_bare(argv[2]);
  rlimit files{4096, 4096};
  setrlimit(RLIMIT_NOFILE, &files);
  const auto wanted = [&](const char* name) {
    if (argc == 1) return true;
    for (int i = 1; i < argc; ++i)
      if (std::strcmp(argv[i], name) == 0) return true;
    return false;
  };
  if (wanted("push")) push_and_pull();
  if (wanted("photos")) photos_against_rsync();
  if (wanted("cut")) photos_cut_again_and_again();
  if (wanted("load")) load_of_a_day();
}
