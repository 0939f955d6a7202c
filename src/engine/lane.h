// engine/lane.h: one thread with a queue. What is posted runs in order, one at a time.
//
// Threads: post() and stop() from any thread. The destructor runs what is queued, then joins.
//          Urgent work (taps) goes before what is not (import slices, rebuilding lists).
//          A lane in the background gets the processor after the other lanes and the screens.
#pragma once

#include <condition_variable>
#include <deque>
#include <functional>
#include <mutex>
#include <sys/resource.h>
#include <thread>

namespace jambline::engine {

class Lane {
 public:
  enum class Haste : bool { Later, Now };

  enum class Place : bool { Front, Background };
  explicit Lane(Place place = Place::Front)
      : thread_([this, place](const std::stop_token& stop) {
          // Linux keeps niceness a thread; where it is refused the lane is as good as the others.
          if (place == Place::Background) (void)setpriority(PRIO_PROCESS, 0, background_nice);
          run(stop);
        }) {}
  ~Lane() {
    thread_.request_stop();
    wake_.notify_all();
  }

  void post(std::function<void()> work, Haste haste = Haste::Now) {
    {
      const std::lock_guard lock(mutex_);
      (haste == Haste::Now ? now_ : later_).push_back(std::move(work));
    }
    wake_.notify_one();
  }

  // On the lane itself, in the middle of long work: runs the urgent work that waits.
  void let_urgent_work_through() {
    while (true) {
      std::function<void()> work;
      {
        const std::lock_guard lock(mutex_);
        if (now_.empty()) return;
        work = std::move(now_.front());
        now_.pop_front();
      }
      work();
    }
  }

  bool on_this_lane() const { return std::this_thread::get_id() == thread_.get_id(); }

 private:
  static constexpr int background_nice = 10;

  void run(const std::stop_token& stop) {
    while (true) {
      std::function<void()> work;
      {
        std::unique_lock lock(mutex_);
        wake_.wait(lock, stop, [this] { return !now_.empty() || !later_.empty(); });
        auto& queue = now_.empty() ? later_ : now_;
        if (queue.empty()) return;  // asked to stop and nothing is left
        work = std::move(queue.front());
        queue.pop_front();
      }
      work();
    }
  }

  std::mutex mutex_;
  std::condition_variable_any wake_;
  std::deque<std::function<void()>> now_;
  std::deque<std::function<void()>> later_;
  std::jthread thread_;
};

}  // namespace jambline::engine
