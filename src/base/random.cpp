#include "base/random.h"

#include <cstdlib>
#include <cstring>
#include <sys/random.h>

namespace jambline {

void SystemRandom::fill(std::span<std::uint8_t> bytes) {
  std::size_t done = 0;
  while (done < bytes.size()) {
    const ssize_t got = getrandom(bytes.data() + done, bytes.size() - done, 0);
    if (got <= 0) std::abort();  // no randomness, no keys: there is nothing sensible to go on with
    done += static_cast<std::size_t>(got);
  }
}

void SeededRandom::fill(std::span<std::uint8_t> bytes) {
  for (std::size_t i = 0; i < bytes.size(); i += 8) {
    const std::uint64_t word = engine_();
    std::memcpy(bytes.data() + i, &word, std::min<std::size_t>(8, bytes.size() - i));
  }
}

std::uint64_t SeededRandom::below(std::uint64_t bound) {
  const std::uint64_t limit = UINT64_MAX - UINT64_MAX % bound;
  std::uint64_t word = engine_();
  while (word >= limit) word = engine_();
  return word % bound;
}

double SeededRandom::unit() {
  return static_cast<double>(engine_() >> 11) * 0x1.0p-53;
}

}  // namespace jambline
