// exchange/lanes.h: what the threads of the exchange wait for.
//
// Shape:   a bell: ring() wakes everybody who waits, and a ring that nobody heard is not lost.
// Threads: any.
#pragma once

#include <chrono>
#include <condition_variable>
#include <cstdint>
#include <mutex>

namespace jambline::exchange {

class Bell {
 public:
  void ring() {
    {
      const std::lock_guard lock(mutex_);
      ++rings_;
    }
    rung_.notify_all();
  }
  std::uint64_t rings() const {
    const std::lock_guard lock(mutex_);
    return rings_;
  }
  // Until it has rung since `heard`, or the time is over.
  void wait(std::uint64_t heard, std::chrono::milliseconds most) {
    std::unique_lock lock(mutex_);
    rung_.wait_for(lock, most, [&] { return rings_ != heard; });
  }

 private:
  mutable std::mutex mutex_;
  std::condition_variable rung_;
  std::uint64_t rings_ = 0;
};

}  // namespace jambline::exchange
