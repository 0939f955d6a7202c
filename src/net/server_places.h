// net/server_places.h: one strand a place, and the polls that wait there; for net/*.cpp only.
//
// Threads: run(), beside() and wait() from any thread; work runs on the server's threads, and for
//          one place one at a time.
#pragma once

#include <boost/asio/io_context.hpp>
#include <boost/asio/post.hpp>
#include <boost/asio/steady_timer.hpp>
#include <boost/asio/strand.hpp>
#include <list>
#include <map>
#include <mutex>

#include "net/server.h"

namespace jambline::net {

class Places {
 public:
  // Called once, at the place; who still waits says so anew.
  using Again = std::function<void()>;

  explicit Places(boost::asio::io_context& io) : io_(io) {}

  void run(const std::shared_ptr<Place>& place, std::function<void()> work) {
    const auto lane = lane_of(place);
    boost::asio::post(lane->strand, [lane, work = std::move(work)] {
      work();
      lane->wake_if_changed();
    });
  }

  // What belongs to no place and may wait for a disk.
  void beside(std::function<void()> work) { boost::asio::post(io_, std::move(work)); }
  // At the place itself: `again` is asked when the place has changed or the time is over.
  void wait(const std::shared_ptr<Place>& place, std::chrono::milliseconds for_ms, Again again) {
    const auto lane = lane_of(place);
    auto timer = std::make_shared<boost::asio::steady_timer>(lane->strand, for_ms);
    lane->waiting.push_back({std::move(again), timer});
    timer->async_wait([lane, timer = timer.get()](const boost::system::error_code& ec) {
      if (!ec) lane->ask(timer);
    });
  }

 private:
  struct Waiting {
    Again again;
    std::shared_ptr<boost::asio::steady_timer> timer;
  };
  struct Lane {
    Lane(boost::asio::io_context& io, std::shared_ptr<Place> at)
        : strand(boost::asio::make_strand(io)), place(std::move(at)) {}
    void wake_if_changed() {
      const std::uint64_t now = place->changes();
      if (now == seen) return;
      seen = now;
      ask_all();
    }
    void ask(const boost::asio::steady_timer* timer) {
      for (auto one = waiting.begin(); one != waiting.end(); ++one) {
        if (one->timer.get() != timer) continue;
        const Waiting asked = std::move(*one);
        waiting.erase(one);
        return asked.again();
      }
    }
    void ask_all() {
      std::list<Waiting> asked;
      asked.swap(waiting);
      for (auto& one : asked) one.again();
    }
    boost::asio::strand<boost::asio::io_context::executor_type> strand;
    std::shared_ptr<Place> place;
    std::list<Waiting> waiting;
    std::uint64_t seen = 0;
  };

  std::shared_ptr<Lane> lane_of(const std::shared_ptr<Place>& place) {
    const std::lock_guard lock(mutex_);
    auto& lane = lanes_[place.get()];
    if (!lane) lane = std::make_shared<Lane>(io_, place);
    return lane;
  }

  boost::asio::io_context& io_;
  std::mutex mutex_;
  std::map<Place*, std::shared_ptr<Lane>> lanes_;  // keeps the places alive
};

}  // namespace jambline::net
