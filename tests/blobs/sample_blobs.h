// tests/blobs/sample_blobs.h: bytes to store, the same for the same number.
#pragma once

#include <cstdint>
#include <vector>

#include "base/random.h"

namespace jambline::test {

inline std::vector<std::uint8_t> sample(std::uint64_t number, std::size_t size_bytes) {
  std::vector<std::uint8_t> bytes(size_bytes);
  SeededRandom(number).fill(bytes);
  return bytes;
}

}  // namespace jambline::test
