// base/random.h: where new ids, salts and keys come from.
//
// Nothing below app/ draws randomness by itself; it is passed in. SystemRandom is the kernel's
// generator; SeededRandom repeats itself and serves the demo shop and the tests only.
// Threads: one owner at a time.
#pragma once

#include <cstdint>
#include <random>
#include <span>

#include "base/ids.h"

namespace jambline {

class Random {
 public:
  virtual ~Random() = default;
  virtual void fill(std::span<std::uint8_t> bytes) = 0;

  template <class Name>
  Name make() {
    Name name;
    fill(name.bytes);
    return name;
  }
};

class SystemRandom final : public Random {
 public:
  void fill(std::span<std::uint8_t> bytes) override;  // getrandom(2); aborts if the kernel refuses
};

class SeededRandom final : public Random {
 public:
  explicit SeededRandom(std::uint64_t seed) : engine_(seed) {}
  void fill(std::span<std::uint8_t> bytes) override;
  // An own distribution, so that a seed gives the same result everywhere. Uniform in [0, below).
  std::uint64_t below(std::uint64_t bound);
  double unit();  // uniform in [0, 1), 53 bits
  std::mt19937_64& engine() { return engine_; }

 private:
  std::mt19937_64 engine_;
};

}  // namespace jambline
