// Hours by the real acts and folds against a count of seconds: at every second, ask what ran.
//
// Outside: local midnights are those of US law, not of a time zone database: from 2007 on daylight
//          time begins at 2:00 on the second Sunday of March and ends at 2:00 on the first Sunday
//          of November (Energy Policy Act of 2005, sec. 110; 15 U.S.C. 260a). New York is 5 h
//          behind UTC, 4 h in daylight time: 2026-03-08 has 23 hours, 2026-11-01 has 25.
// Known:   within one start of the device its timer counts, which goes on in suspend; over a
// restart
//          only the wall clock is left. So a restart comes here only while the wall clock is as it
//          was when each clock began, and a wrong clock only while none began before the restart.
#include <algorithm>
#include <array>
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include "folds/hours_sheet.h"
#include "tests/property/devices.h"

namespace jambline::property {
namespace {

constexpr std::int64_t second_ms = 1000;
constexpr std::int64_t hour_s = 3600;

// What a person's clock does on one car from one second on.
struct Tap {
  std::int64_t at_s{};
  int operation = -1;  // -1: none
  Hash entry;
};

class HoursShop {
 public:
  // `wrong_clocks`: the wall clock jumps; then no act is said to have been at another time.
  HoursShop(std::uint64_t seed, std::int64_t begin_s, bool wrong_clocks)
      : random_(seed), device_(1, 0), wrong_clocks_(wrong_clocks) {
    device_.pass_ms(begin_s * second_ms - Device::start_ms);
    device_.restart();
    now_s_ = begin_s;
    for (int i = 0; i < 3; ++i) {
      const auto added = did(acts::AddPerson{"P" + std::to_string(i), job::Role::Painter});
      people_.push_back(added->entries[0].payload.get<entries::PersonAdded>().person);
    }
    for (int i = 0; i < 2; ++i) {
      acts::OpenCar open;
      open.plate = "K " + std::to_string(i);
      open.panels = {{job::Panel::Hood, true, {}, {}, {}}};
      open.operations = {{job::Stage::Prep, "", 60}, {job::Stage::Spray, "", 45}};
      const auto opened = did(open);
      cars_.push_back(opened->entries[0].subject);
      for (const auto& one : car(i).operations) operations_.push_back(one.operation);
    }
  }

  void live(int steps) {
    for (int i = 0; i < steps; ++i) {
      wait();
      act();
    }
    for (int person = 0; person < 3; ++person) {
      wait();
      did(acts::StopClock{people_[at(person)]});
    }
  }

  // Seconds by person, operation and local day, counted one by one.
  using Counted = std::map<std::tuple<int, int, int>, std::int64_t>;
  template <class Day>
  Counted count(Day day_of) const {
    Counted out;
    each_second([&](int person, int operation, std::int64_t second) {
      ++out[{person, operation, day_of(second)}];
    });
    return out;
  }
  // Seconds by person and day in which anything ran.
  template <class Day>
  std::map<std::pair<int, int>, std::int64_t> count_once(Day day_of) const {
    std::array<std::vector<std::int64_t>, 3> ran;
    each_second([&](int person, int, std::int64_t second) { ran[at(person)].push_back(second); });
    std::map<std::pair<int, int>, std::int64_t> out;
    for (int person = 0; person < 3; ++person) {
      auto& seconds = ran[at(person)];
      std::sort(seconds.begin(), seconds.end());
      seconds.erase(std::unique(seconds.begin(), seconds.end()), seconds.end());
      for (const std::int64_t second : seconds) ++out[{person, day_of(second)}];
    }
    return out;
  }

  folds::CarView car(int number) const { return device_.folds().jobs.at(cars_[at(number)]).view(); }
  std::vector<folds::WorkedRow> spans() const {
    std::vector<folds::WorkedRow> out;
    for (int i = 0; i < 2; ++i)
      for (auto& row : folds::worked_of(car(i)).spans) out.push_back(std::move(row));
    return out;
  }
  const std::vector<PersonId>& people() const { return people_; }
  int number_of(const OperationId& operation) const {
    return static_cast<int>(std::find(operations_.begin(), operations_.end(), operation) -
                            operations_.begin());
  }
  int amended() const { return amended_; }
  int said_earlier() const { return said_earlier_; }
  int restarts() const { return restarts_; }
  int jumps() const { return jumps_; }

 private:
  template <class Use>
  void each_second(Use use) const {
    for (const auto& [of, taps] : taps_)
      for (std::size_t i = 0; i + 1 < taps.size(); ++i)
        for (std::int64_t second = taps[i].at_s; second < taps[i + 1].at_s; ++second)
          if (taps[i].operation >= 0) use(of.first, taps[i].operation, second);
  }
  static std::size_t at(int number) { return static_cast<std::size_t>(number); }
  int below(int most) { return static_cast<int>(random_.below(static_cast<std::uint64_t>(most))); }

  struct Began {
    int boot = 0;
    std::int64_t error_s = 0;
  };

  void wait() {
    std::int64_t seconds = 1 + below(1500);
    if (below(12) == 0) seconds += 7 * hour_s;  // asleep: the timer of the device goes on
    now_s_ += seconds;
    device_.pass_ms(seconds * second_ms);
    const auto all_began = [&](auto fits) {
      return std::all_of(began_.begin(), began_.end(),
                         [&](const auto& one) { return fits(one.second); });
    };
    if (below(6) == 0 && all_began([&](const Began& one) { return one.error_s == error_s_; })) {
      device_.restart();
      ++boot_;
      ++restarts_;
    }
    if (wrong_clocks_ && below(4) == 0 &&
        all_began([&](const Began& one) { return one.boot == boot_; })) {
      error_s_ = below(40'000) - 20'000;
      device_.set_clock_error(error_s_ * second_ms);
      ++jumps_;
    }
  }

  void act() {
    const int person = below(3);
    const PersonId who = people_[at(person)];
    const int operation = below(static_cast<int>(operations_.size()));
    const JobId job = cars_[at(operation / 2)];
    switch (below(wrong_clocks_ ? 6 : 9)) {
      case 0:
        did(acts::PauseClock{who});
        return;
      case 1:
        did(acts::StopClock{who});
        return;
      case 2:
        did(acts::FinishOperation{job, operations_[at(operation)], below(2) == 0}, who);
        return;
      case 6: {
        const std::int64_t ago_s = below(1800);
        if (did(acts::StartClock{who, job, operations_[at(operation)],
                                 (now_s_ - ago_s) * second_ms}))
          ++said_earlier_;
        return;
      }
      case 7:
        did(acts::StopClock{who, (now_s_ - below(1800)) * second_ms});
        return;
      case 8:
        amend();
        return;
      default:
        did(acts::StartClock{who, job, operations_[at(operation)]});
    }
  }

  void amend() {
    if (taps_.empty()) return;
    auto one = taps_.begin();
    std::advance(one, below(static_cast<int>(taps_.size())));
    auto& taps = one->second;
    const std::size_t which = at(below(static_cast<int>(taps.size())));
    const std::int64_t at_s = std::min(now_s_, taps[which].at_s + below(3600) - 1800);
    const auto done = did(acts::AmendClock{cars_[at(one->first.second)], taps[which].entry,
                                           at_s * second_ms, "forgot"});
    if (!done) return;
    // No act of a clock changes its place among the others.
    const bool after = which == 0 || taps[which - 1].at_s <= at_s;
    const bool before = which + 1 == taps.size() || at_s <= taps[which + 1].at_s;
    RC_ASSERT(after);
    RC_ASSERT(before);
    taps[which].at_s = at_s;
    ++amended_;
  }

  std::optional<Action> did(const acts::Command& command) {
    return did(command, people_.empty() ? PersonId{} : people_.front());
  }
  std::optional<Action> did(const acts::Command& command, const PersonId& by) {
    auto written = device_.act(command, by, random_);
    if (!written) return std::nullopt;
    for (const auto& entry : written->entries) {
      const auto* clock = entry.payload.get_if<entries::ClockActed>();
      if (!clock) continue;
      const int person = static_cast<int>(std::find(people_.begin(), people_.end(), clock->worker) -
                                          people_.begin());
      const int on =
          static_cast<int>(std::find(cars_.begin(), cars_.end(), entry.subject) - cars_.begin());
      const bool begins =
          clock->act == entries::ClockActKind::Start || clock->act == entries::ClockActKind::Switch;
      const std::int64_t at_s = clock->happened_ms ? *clock->happened_ms / second_ms : now_s_;
      taps_[{person, on}].push_back({at_s, begins ? number_of(clock->operation) : -1, entry.hash});
      if (begins)
        began_[{person, on}] = {boot_, error_s_};
      else
        began_.erase({person, on});
    }
    return std::move(*written);
  }

  SeededRandom random_;
  Device device_;
  bool wrong_clocks_;
  std::int64_t now_s_ = 0;
  std::int64_t error_s_ = 0;
  int boot_ = 0;
  std::vector<PersonId> people_;
  std::vector<JobId> cars_;
  std::vector<OperationId> operations_;
  std::map<std::pair<int, int>, std::vector<Tap>> taps_;  // by person and car
  std::map<std::pair<int, int>, Began> began_;            // what runs
  int amended_ = 0, said_earlier_ = 0, restarts_ = 0, jumps_ = 0;
};

// 2026-03-08 07:00 UTC and 2026-11-01 06:00 UTC; midnights of 2026-03-07 and 2026-10-31 there.
constexpr std::int64_t spring_s = 1'772'953'200, autumn_s = 1'793'512'800;
constexpr std::int64_t spring_first_midnight_s = spring_s - 7 * hour_s + 5 * hour_s - 24 * hour_s;
constexpr std::int64_t autumn_first_midnight_s = autumn_s - 6 * hour_s + 4 * hour_s - 24 * hour_s;

// The day, counted from the one before the change, at that second.
int spring_day(std::int64_t second) {
  const std::int64_t behind_s = second < spring_s ? 5 * hour_s : 4 * hour_s;
  const std::int64_t first_s = spring_first_midnight_s - 5 * hour_s;
  return static_cast<int>((second - behind_s - first_s) / (24 * hour_s));
}
int autumn_day(std::int64_t second) {
  const std::int64_t behind_s = second < autumn_s ? 4 * hour_s : 5 * hour_s;
  const std::int64_t first_s = autumn_first_midnight_s - 4 * hour_s;
  return static_cast<int>((second - behind_s - first_s) / (24 * hour_s));
}

template <class Day>
void sheets_are_the_seconds(std::uint64_t seed, std::int64_t begin_s, const LocalDate& first,
                            Day day_of) {
  HoursShop shop(seed, begin_s, false);
  shop.live(60);
  const auto days = folds::sheet_days("America/New_York", first, 40);
  RC_ASSERT(days.has_value());
  HoursShop::Counted found;
  std::map<std::pair<int, int>, std::int64_t> found_once;
  for (int person = 0; person < 3; ++person) {
    const auto sheet = folds::hours_sheet(shop.people()[static_cast<std::size_t>(person)],
                                          shop.spans(), {}, *days);
    for (const auto& line : sheet.lines) {
      RC_ASSERT(line.ms % second_ms == 0);
      found[{person, shop.number_of(line.operation), line.day}] = line.ms / second_ms;
    }
    for (std::size_t day = 0; day < sheet.sums.size(); ++day)
      if (sheet.sums[day].worked_ms > 0)
        found_once[{person, static_cast<int>(day)}] = sheet.sums[day].worked_ms / second_ms;
  }
  RC_ASSERT(found == shop.count(day_of));
  RC_ASSERT(found_once == shop.count_once(day_of));
  RC_TAG(std::string(shop.amended() > 0 ? "amended" : "not amended") +
         (shop.said_earlier() > 0 ? ", said earlier" : ""));
}

void hours_hold(const std::function<void(std::uint64_t)>& check) {
  EXPECT_TRUE(rc::check([&](std::uint64_t seed) { check(seed); }));
}

TEST(Hours, SheetsOfDaysOf23HoursAreTheSecondsCounted) {
  const auto days = folds::sheet_days("America/New_York", {2026, 3, 8}, 1);
  ASSERT_TRUE(days);
  EXPECT_EQ(days->front().span.length_ms(), 23 * hour_s * second_ms);
  hours_hold([](std::uint64_t seed) {
    sheets_are_the_seconds(seed, spring_first_midnight_s + 15 * hour_s, {2026, 3, 7}, spring_day);
  });
}

TEST(Hours, SheetsOfDaysOf25HoursAreTheSecondsCounted) {
  const auto days = folds::sheet_days("America/New_York", {2026, 11, 1}, 1);
  ASSERT_TRUE(days);
  EXPECT_EQ(days->front().span.length_ms(), 25 * hour_s * second_ms);
  hours_hold([](std::uint64_t seed) {
    sheets_are_the_seconds(seed, autumn_first_midnight_s + 15 * hour_s, {2026, 10, 31}, autumn_day);
  });
}

TEST(Hours, AWrongWallClockChangesNoLengthWhateverIsTapped) {
  int draws = 0, restarts = 0, jumps = 0;
  hours_hold([&](std::uint64_t seed) {
    ++draws;
    HoursShop shop(seed, 1'780'000'000, true);
    shop.live(60);
    restarts += shop.restarts();
    jumps += shop.jumps();
    HoursShop::Counted found;
    for (const auto& span : shop.spans()) {
      const int person =
          static_cast<int>(std::find(shop.people().begin(), shop.people().end(), span.person) -
                           shop.people().begin());
      found[{person, shop.number_of(span.operation), 0}] +=
          (span.end_ms - span.start_ms) / second_ms;
    }
    RC_ASSERT(found == shop.count([](std::int64_t) { return 0; }));
    for (int i = 0; i < 2; ++i)
      for (const auto& operation : shop.car(i).operations) {
        std::int64_t each_ms = 0;
        for (const auto& span : shop.spans())
          if (span.operation == operation.operation) each_ms += span.end_ms - span.start_ms;
        RC_ASSERT(operation.clocked_ms == each_ms);
      }
  });
  EXPECT_GT(restarts, 3 * draws);
  EXPECT_GT(jumps, 3 * draws);
}

}  // namespace
}  // namespace jambline::property
