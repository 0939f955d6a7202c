#include "tests/simulator/schedule.h"

#include "tests/simulator/world.h"

namespace jambline::simulator {

namespace {
constexpr std::uint64_t hub_on_disk_one_in = 20;

class Schedule {
 public:
  Schedule(std::uint64_t seed, std::function<void(const std::string&)> say)
      : random_(seed * 0x9e3779b97f4a7c15ULL + 1),
        world_({random_.below(UINT64_MAX - 1), random_.below(hub_on_disk_one_in) == 0, say}),
        say_(std::move(say)) {
    // A copied folder and a hub that forgets are two disasters: not in one schedule.
    twins_ = random_.below(3) == 0;
    world_.hub.read_most(random_.below(3) ? 0 : 1 + random_.below(7));
    for (std::size_t i = 0; i < world_.devices(); ++i)
      if (random_.below(3) == 0)
        world_.device(i).most_run_entries = static_cast<std::size_t>(1 + random_.below(6));
  }

  Ran run() {
    const auto steps = 20 + random_.below(41);
    for (std::uint64_t i = 0; i < steps; ++i) {
      if (say_) say_("step " + std::to_string(i));
      pass_time();
      step();
      world_.move_flights();
      world_.look();
      if (!world_.complaints().empty()) break;
    }
    if (world_.complaints().empty()) world_.calm();
    if (revoked_ && random_.below(2) && world_.complaints().empty() &&
        world_.take_over(0, *revoked_))
      world_.calm();
    if (world_.complaints().empty()) judge(world_);
    return {world_.complaints(), world_.acts_done, world_.network.mishaps_done, world_.network.met};
  }

 private:
  std::size_t any_device() { return random_.below(world_.devices()); }
  Mishap any_mishap() {
    return random_.below(3) ? Mishap::None : static_cast<Mishap>(random_.below(mishaps));
  }

  void pass_time() {
    switch (random_.below(20)) {
      case 0:
        return world_.pass_half_a_year();  // in a drawer
      case 1:
      case 2:
        return world_.pass_ms(3'700'000);  // a token's life
      case 3:
      case 4:
      case 5:
        return world_.pass_ms(static_cast<std::int64_t>(random_.below(600'000)));
      default:
        return world_.pass_ms(static_cast<std::int64_t>(random_.below(5'000)));
    }
  }

  void step() {
    const auto what = random_.below(100);
    if (what < 32) return act();
    if (what < 72) return sync();
    fault();
  }

  void act() {
    const std::size_t by = any_device();
    for (auto times = 1 + random_.below(3); times > 0; --times) {
      if (!world_.device(by).running()) return;
      switch (random_.below(12)) {
        case 0:
        case 1:
          (void)world_.take_picture(by, random_.below(4) == 0);
          break;
        case 2:
          (void)world_.say_poison(by);
          break;
        case 3:
          (void)world_.erase_something(by);
          break;
        case 4:
          (void)world_.say_plate(by);
          break;
        default:
          (void)world_.act(by);
      }
    }
  }

  void sync() {
    const std::size_t who = any_device();
    if (random_.below(4) == 0 && world_.device(who).running()) world_.device(who).end->try_now();
    if (random_.below(3) == 0) return sync_on(who);
    for (auto times = 1 + random_.below(14); times > 0; --times) {
      const std::size_t lane = random_.below(lanes_of_device);
      if (random_.below(5) == 0)
        world_.send(who, lane, any_mishap());
      else
        (void)world_.request(who, lane, any_mishap());
      world_.look();
      if (random_.below(6) == 0) world_.move_flights();
    }
  }

  // Goes on as long as it takes to send pictures, over a network that is bad now and then.
  void sync_on(std::size_t who) {
    for (std::size_t i = 0; i < 60; ++i) {
      const Mishap mishap =
          random_.below(6) ? Mishap::None : static_cast<Mishap>(random_.below(mishaps));
      if (!world_.request(who, i % lanes_of_device, mishap))
        world_.pass_ms(static_cast<std::int64_t>(random_.below(1'000)));
      world_.look();
    }
  }

  void fault() {
    const std::size_t who = any_device();
    SimDevice& one = world_.device(who);
    switch (random_.below(23)) {
      case 0:
        return world_.restart(who);
      case 1:
        return world_.lose_power(who);
      case 2:
        return world_.hub.running() ? world_.restart_hub() : world_.start_hub();
      case 3:
        return world_.hub.running() ? world_.stop_hub() : world_.start_hub();
      case 4:
        if (one.running()) one.set_full(!one.full());
        return;
      case 5:
        if (world_.hub.running()) world_.hub.set_full(!world_.hub.full());
        return;
      case 6:
      case 7:
        one.clock.error_ms = clock_errors_ms()[random_.below(clock_errors_ms().size())];
        return;
      case 8:
        world_.hub.clock.error_ms = clock_errors_ms()[random_.below(clock_errors_ms().size())];
        return;
      case 9:
        if (twins_) return copy_or_put_back(who);
        return world_.backup_hub();
      case 10:
      case 11:
        if (twins_) return copy_or_put_back(who);
        (void)world_.put_hub_back(random_.below(2) == 0);
        return;
      case 12:
        if (revoked_ && world_.hub.running()) return (void)world_.take_over(0, *revoked_);
        if (!revoked_ && !twins_ && who != 0 && who < devices_of_shop && one.member &&
            world_.revoke(random_.below(3) == 0 && who != 1 ? 1 : 0, who))
          revoked_ = who;
        return;
      case 13:
        (void)world_.damage_at_hub();
        return;
      case 14:
        return world_.forget_uploads();
      case 15:
      case 16:
        return world_.kill_in_act(who);
      case 17:
        return world_.hub_loses_power();
      case 18:
        for (std::size_t i = 0; i < world_.devices(); ++i) {
          world_.move_to_new_key(i, any_mishap());
          world_.say_again(i);
        }
        return;
      case 19:
        if (twins_) return copy_or_put_back(who);
        [[fallthrough]];
      default:
        world_.move_enrolment(any_mishap());
    }
  }

  void copy_or_put_back(std::size_t who) {
    if (!world_.device(who).running() || who >= devices_of_shop || !world_.device(who).member)
      return;
    if (copied_) {
      if (random_.below(2)) return;
      if (random_.below(2) && world_.device(*copied_).running()) {  // the copy then lacks a tail
        (void)world_.act(*copied_);
        sync_on(*copied_);
      }
      (void)world_.put_back(*copied_);
      return;
    }
    copied_ = who;
    if (random_.below(2))
      (void)world_.clone(who);
    else
      world_.back_up(who);
  }

  SeededRandom random_;
  World world_;
  std::function<void(const std::string&)> say_;
  bool twins_ = false;
  std::optional<std::size_t> copied_;
  std::optional<std::size_t> revoked_;
};
}  // namespace

Ran run_schedule(std::uint64_t seed, std::function<void(const std::string&)> say) {
  return Schedule(seed, std::move(say)).run();
}

}  // namespace jambline::simulator
