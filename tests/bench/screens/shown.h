// tests/bench/screens/shown.h: what a child process of the bench tells when its frame is there.
#pragma once

#include <cstdio>
#include <ctime>
#include <fstream>
#include <string>

namespace jambline::bench {

inline long long monotonic_ns() {
  timespec now{};
  clock_gettime(CLOCK_MONOTONIC, &now);
  return now.tv_sec * 1'000'000'000LL + now.tv_nsec;
}

inline long rss_kb() {
  std::ifstream status("/proc/self/status");
  for (std::string line; std::getline(status, line);)
    if (line.rfind("VmRSS:", 0) == 0) return std::stol(line.substr(6));
  return 0;
}

inline void tell_shown() {
  const long long at_ns = monotonic_ns();
  std::printf("shown %lld %ld\n", at_ns, rss_kb());
  std::fflush(stdout);
}

}  // namespace jambline::bench
