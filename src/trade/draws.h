// trade/draws.h: chance that comes out the same on every machine.
//
// Source:  std::mt19937_64, whose numbers the C++ standard fixes; the distributions of the standard
//          library are not fixed, so they are made here. Integers are exact everywhere, reals agree
//          to 1e-9 (the C library's log, sqrt and cos differ in the last bit).
// Threads: one Draws a thread. No errors: what a function asks of its numbers stands beside it.
#pragma once

#include <cstddef>
#include <cstdint>
#include <random>
#include <string_view>
#include <utility>
#include <vector>

namespace jambline::trade {

// A seed of its own for each named part of one calculation, so that a part's chance does not hang
// on what was drawn before it. FNV-1a over the name, stirred as splitmix64 does.
std::uint64_t seed_of(std::uint64_t seed, std::string_view name);

class Draws {
 public:
  explicit Draws(std::uint64_t seed) : bits_(seed) {}

  std::uint64_t bits() { return bits_(); }
  double unit() { return static_cast<double>(bits_() >> 11U) * 0x1p-53; }  // [0, 1)
  double between(double low, double high) { return low + (high - low) * unit(); }
  std::size_t below(std::size_t count);                       // 0 .. count-1, unbiased; count > 0
  double normal(double mean, double sd);                      // Box-Muller, both values used
  double triangular(double low, double likely, double high);  // low <= likely <= high
  double exponential(double mean);                            // mean > 0
  std::uint64_t poisson(double mean);  // mean in [0, 1e6]; by exponential gaps under 30, else PTRS

  template <class T>
  void shuffle(std::vector<T>& items) {
    for (std::size_t i = items.size(); i > 1; --i) std::swap(items[i - 1], items[below(i)]);
  }

 private:
  std::mt19937_64 bits_;
  double spare_ = 0;
  bool has_spare_ = false;
};

}  // namespace jambline::trade
