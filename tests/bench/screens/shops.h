// tests/bench/screens/shops.h: the folders that the figures of the screens are measured on.
//
// All of them lie where the system keeps throw-away files (TMPDIR, else /tmp), made new each time.
#pragma once

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <string>
#include <vector>

#include "base/error.h"

namespace jambline::bench {

template <class T>
T must(Result<T> result, const char* what) {
  if (!result) {
    std::fprintf(stderr, "bench-screens: %s: %s\n", what,
                 std::string(code_name(result.error().code)).c_str());
    std::exit(1);
  }
  return std::move(*result);
}
inline void must(const Status& status, const char* what) {
  if (status) return;
  std::fprintf(stderr, "bench-screens: %s: %s\n", what,
               std::string(code_name(status.error().code)).c_str());
  std::exit(1);
}
inline void must_be(bool good, const char* what) {
  if (good) return;
  std::fprintf(stderr, "bench-screens: %s\n", what);
  std::exit(1);
}

struct ShopSize {
  int delivered = 400;
  int in_work = 14;
};

// The demo shop of now, and how many entries it has.
std::uint64_t make_demo(const std::filesystem::path& folder, ShopSize size);
// Admits one more tablet to the shop of `folder`, lets it write two years of `cars` delivered cars
// in a copy of the shop, and lays its packs of 500 entries into `into`, one a folder that can be
// imported, in the order in which they have to come.
std::vector<std::filesystem::path> packs_of_other_tablet(const std::filesystem::path& folder,
                                                         const std::filesystem::path& into,
                                                         int cars, std::uint64_t seed);

}  // namespace jambline::bench
