// The demo shop: made by the acts, whole, and one random stream a car.
#include "app/demo/demo_shop.h"

#include <chrono>
#include <gtest/gtest.h>
#include <map>
#include <set>

#include "app/demo/dirt.h"
#include "app/demo/invented.h"
#include "engine/read_entry.h"
#include "folds/floor_view.h"
#include "folds/job_fold.h"
#include "folds/shop_fold.h"
#include "job/body_shape.h"
#include "tests/log/log_folder.h"
#include "trade/vin.h"

namespace jambline::demo {
namespace {

using folds::CarView;
using job::Stage;

struct Made {
  explicit Made(const DemoOptions& options = {}) {
    log::must(make_shop(folder.path(), options));
    auto log = log::open_log(folder.path(), log::OpenMode::ReadOnly);
    log::must(log->read_after(0, [&](const log::Stored& stored) {
      all.push_back(stored.entry);
      const auto entry = engine::read_entry(stored.entry);
      if (entry.subject)
        folds.try_emplace(entry.subject, entry.subject).first->second.apply(entry);
      else
        shop.apply(entry);
      return true;
    }));
    for (const auto& [job, fold] : folds) cars.push_back(fold.view());
  }
  const log::TempFolder folder;
  std::vector<seal::SealedEntry> all;
  std::map<JobId, folds::JobFold> folds;
  std::vector<CarView> cars;
  folds::ShopFold shop;
};

const Made& usual() {
  static const Made made;
  return made;
}

std::vector<CarView> in_work() {
  std::vector<CarView> out;
  for (const auto& car : usual().cars)
    if (!car.delivered_ms) out.push_back(car);
  return out;
}

TEST(DemoShop, HoldsSixPeopleFourRacksAndEveryCar) {
  const auto shop = usual().shop.view();
  EXPECT_EQ(shop.people.size(), 6U);
  EXPECT_EQ(shop.racks.size(), 4U);
  EXPECT_EQ(shop.zone, "America/New_York");
  EXPECT_EQ(usual().cars.size(), 414U);
  EXPECT_EQ(in_work().size(), 14U);
}

TEST(DemoShop, PassesTheWholeAudit) {
  const auto audit = log::audit(usual().folder.path());
  EXPECT_FALSE(audit.first_bad);
  EXPECT_EQ(audit.heads.size(), 2U);
}

TEST(DemoShop, HasNothingUnknownNothingInTheFutureAndOnlyOneDispute) {
  int disputed = 0;
  for (const auto& car : usual().cars) {
    EXPECT_EQ(car.unknown_entries, 0);
    EXPECT_TRUE(car.conflicts.empty());
    const auto row = folds::floor_row(car);
    disputed += row.disputed ? 1 : 0;
  }
  EXPECT_EQ(disputed, 1);
  for (const auto& entry : usual().all) {
    EXPECT_LE(entry.header.wall_ms, invented_evening_ms);
    EXPECT_EQ(entry.header.clock_flags, 0);
  }
}

TEST(DemoShop, HasCarsAtManyStagesTwoRunningClocksAndAPausedOne) {
  std::set<std::optional<Stage>> next;
  int running = 0, paused = 0, late = 0, today = 0;
  for (const auto& car : in_work()) {
    next.insert(folds::floor_row(car).next_stage);
    for (const auto& clock : car.running) (clock.paused ? paused : running) += 1;
    if (*car.promised_ms < invented_evening_ms)
      ++late;
    else if (*car.promised_ms < invented_evening_ms + 6 * 3'600'000)
      ++today;
  }
  EXPECT_GE(next.size(), 9U);
  EXPECT_EQ(running, 2);
  EXPECT_EQ(paused, 1);
  EXPECT_EQ(late, 2);
  EXPECT_EQ(today, 1);
}

TEST(DemoShop, EveryCarBeganWithCheckInAndOnesAreOfferedReturnedAndOnRacks) {
  std::set<folds::ReleaseState> states;
  for (const auto& car : in_work()) {
    states.insert(car.car_release.state);
    for (const auto& panel : car.panels) states.insert(panel.release.state);
  }
  EXPECT_TRUE(states.count(folds::ReleaseState::Offered));
  EXPECT_TRUE(states.count(folds::ReleaseState::Returned));
  for (const auto& car : usual().cars)
    if (car.delivered_ms) EXPECT_EQ(car.car_release.state, folds::ReleaseState::Taken);
}

TEST(DemoShop, EveryMarkLiesOnItsPanelAndEveryVinButOnePasses) {
  int failing = 0;
  for (const auto& car : usual().cars) {
    const auto check = trade::check_vin(car.vin);
    failing += check.passes ? 0 : 1;
    EXPECT_EQ(check.passes, car.vin_passes);
    for (const auto& panel : car.panels)
      for (const auto& mark : panel.marks)
        EXPECT_TRUE(trade::contains(job::pattern(car.body).find(panel.plan.panel)->shape.outline,
                                    {mark.x_mm, mark.y_mm}));
  }
  EXPECT_EQ(failing, 1);
}

// Dirt a square metre of what was painted, of cars painted between two times.
double nibs_per_m2(double days_ago_from, double days_ago_to) {
  double nibs = 0, area_m2 = 0;
  for (const auto& car : usual().cars) {
    const double days = static_cast<double>(invented_evening_ms - car.opened_ms) / 86'400'000.0;
    if (!car.delivered_ms || days > days_ago_from || days < days_ago_to) continue;
    for (const auto& panel : car.panels) {
      area_m2 +=
          trade::area_mm2(job::pattern(car.body).find(panel.plan.panel)->shape.outline) / 1e6;
      nibs += static_cast<double>(panel.marks.size()) + (panel.dirt == job::DirtClass::None ? 0
                                                         : panel.dirt == job::DirtClass::From10To20
                                                             ? 14
                                                             : 30);
    }
  }
  return nibs / area_m2;
}

TEST(DemoShop, LessDirtFallsAfterTheFilterChange) {
  const double before = nibs_per_m2(390, filter_changed_days_ago + 3);
  const double after = nibs_per_m2(filter_changed_days_ago - 3, 0);
  EXPECT_GT(before, 1.5 * after) << before << " " << after;
  EXPECT_GT(after, 0.2);
  EXPECT_LT(before, 5);
}

TEST(DemoShop, TheBadHoseShowsInTheReachOverStrips) {
  int in_strip[2] = {0, 0}, all[2] = {0, 0};
  for (const auto& car : usual().cars) {
    const double days = static_cast<double>(invented_evening_ms - car.opened_ms) / 86'400'000.0 - 2;
    const int bad = days <= hose_bad_from_days_ago && days > hose_bad_until_days_ago ? 1 : 0;
    for (const auto& panel : car.panels) {
      const auto& shape = job::pattern(car.body).find(panel.plan.panel)->shape;
      for (const auto& mark : panel.marks) {
        ++all[bad];
        for (const auto& strip : shape.reach_over)
          if (trade::contains(strip, {mark.x_mm, mark.y_mm})) {
            ++in_strip[bad];
            break;
          }
      }
    }
  }
  ASSERT_GT(all[1], 30);
  const double usual_part = static_cast<double>(in_strip[0]) / all[0];
  const double bad_part = static_cast<double>(in_strip[1]) / all[1];
  EXPECT_GT(bad_part, usual_part + 0.08) << usual_part << " " << bad_part;
}

// Hashes name entries by what stands in their headers, so a payload that names another entry of its
// car is read with that entry's place in the car instead.
std::map<JobId, std::vector<std::string>> payloads_by_car(const Made& made) {
  std::map<JobId, std::vector<const seal::SealedEntry*>> by_car;
  for (const auto& entry : made.all) by_car[entry.header.subject].push_back(&entry);
  std::map<JobId, std::vector<std::string>> out;
  for (const auto& [job, list] : by_car) {
    for (const auto* entry : list) {
      std::string text = std::to_string(entry->header.kind) + " " +
                         std::to_string(entry->header.wall_ms) + " " + entry->header.person.hex() +
                         " " + entry->payload;
      for (std::size_t i = 0; i < list.size(); ++i) {
        const std::string hash = list[i]->hash.hex();
        for (auto at = text.find(hash); at != std::string::npos; at = text.find(hash))
          text.replace(at, hash.size(), "entry " + std::to_string(i));
      }
      out[job].push_back(std::move(text));
    }
  }
  return out;
}

TEST(DemoShop, OneCarMoreShiftsNothingOfTheOthers) {
  const Made few(DemoOptions{.delivered = 60, .in_work = 14});
  const Made more(DemoOptions{.delivered = 61, .in_work = 14});
  const auto before = payloads_by_car(few);
  const auto after = payloads_by_car(more);
  ASSERT_EQ(after.size(), before.size() + 1);
  for (const auto& [job, payloads] : before) {
    const auto found = after.find(job);
    ASSERT_NE(found, after.end());
    if (job) EXPECT_EQ(found->second, payloads);
  }
}

TEST(DemoShop, FourHundredAndOneCarsBeginWithTheFourHundred) {
  const Made more(DemoOptions{.delivered = 401, .in_work = 0});
  const auto before = payloads_by_car(usual());
  const auto after = payloads_by_car(more);
  int same = 0;
  for (const auto& [job, payloads] : after) {
    const auto found = before.find(job);
    if (job && found != before.end() && found->second == payloads) ++same;
  }
  EXPECT_EQ(same, 400);
}

TEST(DemoShop, TheSameSeedGivesTheSameLogAndAnotherSeedAnother) {
  const DemoOptions small{.delivered = 3, .in_work = 2};
  const Made first(small), second(small);
  ASSERT_EQ(first.all.size(), second.all.size());
  EXPECT_EQ(first.all.back().hash, second.all.back().hash);
  DemoOptions other = small;
  other.seed = 42;
  EXPECT_NE(Made(other).all.back().hash, first.all.back().hash);
}

TEST(DemoShop, CanBeSeenFromAnyDayAndHour) {
  for (const std::int64_t hours : {13, 37, 61, 90, 118, 163}) {
    DemoOptions options{.delivered = 2, .in_work = 14};
    options.now.wall_ms += hours * 3'600'000;
    const Made made(options);
    int running = 0;
    for (const auto& car : made.cars)
      for (const auto& clock : car.running) running += clock.paused ? 0 : 1;
    EXPECT_EQ(running, 2) << hours;
    for (const auto& entry : made.all) EXPECT_LE(entry.header.wall_ms, options.now.wall_ms);
  }
}

TEST(DemoShop, AFolderWithALogIsRefused) {
  const auto again = make_shop(usual().folder.path(), {});
  ASSERT_FALSE(again);
  EXPECT_EQ(again.error().code, Code::AlreadyDone);
}

}  // namespace
}  // namespace jambline::demo
