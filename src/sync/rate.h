// sync/rate.h: how often somebody may ask, and how long to wait after a failure.
//
// Units:  milliseconds of a clock that only goes forward.
#pragma once

#include <algorithm>
#include <cstdint>
#include <unordered_map>

#include "base/random.h"
#include "sync/limits.h"

namespace jambline::sync {

// So many a second, with so many saved up.
class Bucket {
 public:
  Bucket(double a_second, double saved_up)
      : a_second_(a_second), most_(saved_up), left_(saved_up) {}
  bool take(std::int64_t now_ms) {
    left_ = std::min(most_, left_ + static_cast<double>(now_ms - last_ms_) / 1000.0 * a_second_);
    last_ms_ = now_ms;
    if (left_ < 1) return false;
    left_ -= 1;
    return true;
  }
  bool full(std::int64_t now_ms) const {
    return left_ + static_cast<double>(now_ms - last_ms_) / 1000.0 * a_second_ >= most_;
  }

 private:
  double a_second_;
  double most_;
  double left_;
  std::int64_t last_ms_ = 0;
};

// Whether to look through all that is kept: once a second, however many ask.
class LookThrough {
 public:
  bool due(std::int64_t now_ms) {
    if (now_ms < next_ms_) return false;
    next_ms_ = now_ms + 1000;
    return true;
  }

 private:
  std::int64_t next_ms_ = 0;
};

// One bucket a name; those that are full again are forgotten.
template <class Name>
class Buckets {
 public:
  Buckets(double a_second, double saved_up) : fresh_(a_second, saved_up) {}
  bool take(const Name& name, std::int64_t now_ms) {
    if (buckets_.size() > most_names && look_through_.due(now_ms))
      for (auto one = buckets_.begin(); one != buckets_.end();)
        one = one->second.full(now_ms) ? buckets_.erase(one) : std::next(one);
    if (buckets_.size() >= 2 * most_names && !buckets_.contains(name)) return false;
    return buckets_.try_emplace(name, fresh_).first->second.take(now_ms);
  }

 private:
  static constexpr std::size_t most_names = 4096;
  Bucket fresh_;
  LookThrough look_through_;
  std::unordered_map<Name, Bucket> buckets_;
};

// Doubles with each failure, between half and all of it by chance, so that many do not come back
// at once.
class BackOff {
 public:
  std::int64_t next_ms(SeededRandom& random, std::int64_t asked_for_ms = 0) {
    step_ms_ = std::clamp(2 * step_ms_, first_back_off_ms, longest_back_off_ms);
    const auto half = static_cast<std::uint64_t>(step_ms_ / 2);
    const auto wait = static_cast<std::int64_t>(half + random.below(half + 1));
    return std::clamp(wait, std::min(asked_for_ms, longest_back_off_ms), longest_back_off_ms);
  }
  void good() { step_ms_ = 0; }

 private:
  std::int64_t step_ms_ = 0;
};

}  // namespace jambline::sync
