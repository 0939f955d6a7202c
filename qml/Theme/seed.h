// A small stable random row: the same words give the same torn edge on every machine.
// FNV-1a (64 bit) over UTF-8 starts it, splitmix64 goes on; not for secrets.
#pragma once

#include <QString>
#include <cstdint>

namespace jambline::theme {

class Seed {
 public:
  Seed(const QString& words, std::uint64_t lane) : state_(14695981039346656037ULL) {
    for (const char byte : words.toUtf8()) {
      state_ = (state_ ^ static_cast<unsigned char>(byte)) * 1099511628211ULL;
    }
    state_ ^= lane * 0x9E3779B97F4A7C15ULL;
  }

  // Next value in [0, 1).
  double next() {
    state_ += 0x9E3779B97F4A7C15ULL;
    std::uint64_t z = state_;
    z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9ULL;
    z = (z ^ (z >> 27)) * 0x94D049BB133111EBULL;
    z ^= z >> 31;
    return static_cast<double>(z >> 11) * (1.0 / 9007199254740992.0);
  }

  double between(double low, double high) { return low + (high - low) * next(); }

 private:
  std::uint64_t state_;
};

}  // namespace jambline::theme
