// tests/bench/screens/start.h: how long the program takes from its start to the floor.
//
// A child process a start, like a person who starts the program: what main.cpp does, without the
// window of the desktop (QPA offscreen, software renderer). The clock of both processes is
// CLOCK_MONOTONIC; it begins before fork() and ends when the first frame that shows a card of the
// floor has been swapped.
#pragma once

#include <filesystem>

namespace jambline::bench {

struct Start {
  double ms = 0;
  double rss_mb = 0;  // VmRSS then
};

// In the child; returns its exit code.
int show_floor(int argc, char** argv, const std::filesystem::path& folder);
// In the parent.
Start start_program(const std::filesystem::path& folder);
Start start_empty_window();

void bench_start();

}  // namespace jambline::bench
