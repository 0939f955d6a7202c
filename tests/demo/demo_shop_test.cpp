// The demo shop: made by the acts, whole, and one random stream a car.
#include "app/demo/demo_shop.h"

#include <chrono>
#include <gtest/gtest.h>
#include <map>
#include <set>

#include "app/demo/dirt.h"
#include "app/demo/invented.h"
#include "folds/dirt_of_car.h"
#include "folds/floor_view.h"
#include "folds/forecast.h"
#include "folds/learned.h"
#include "job/body_shape.h"
#include "tests/demo/made_shop.h"
#include "trade/vin.h"

namespace jambline::demo {
namespace {

using folds::CarView;
using job::Stage;

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

TEST(DemoShop, HoldsSixPeopleFourRacksTwoBoothsAndEveryCar) {
  const auto shop = usual().shop.view();
  EXPECT_EQ(shop.people.size(), 6U);
  EXPECT_EQ(shop.racks.size(), 4U);
  EXPECT_EQ(shop.booths.size(), 2U);
  EXPECT_EQ(shop.zone, "America/New_York");
  EXPECT_EQ(usual().cars.size(), 415U);
  EXPECT_EQ(in_work().size(), 15U);
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
  int running = 0, paused = 0, late = 0;
  for (const auto& car : in_work()) {
    next.insert(folds::floor_row(car).next_stage);
    for (const auto& clock : car.running) (clock.paused ? paused : running) += 1;
    if (*car.promised_ms < invented_evening_ms) ++late;
  }
  EXPECT_GE(next.size(), 9U);
  EXPECT_EQ(running, 2);
  EXPECT_EQ(paused, 1);
  EXPECT_EQ(late, 2);
}

TEST(DemoShop, MostCarsAreInTimeOneIsNotAnyMoreAndOneIsHeldByAPartWithoutADate) {
  folds::LearnedDurations learned;
  for (const auto& car : usual().cars) learned.add(folds::lesson_of(car));
  EXPECT_GE(learned.stages().size(), 6U);
  for (const std::int64_t hours : {0, 37, 61}) {  // Thursday, Saturday and Sunday
    DemoOptions options{.delivered = 2};
    options.now.wall_ms += hours * 3'600'000;
    const Made made(options);
    int likely = 0, open = 0, not_any_more = 0, held = 0, part = 0;
    for (const auto& car : made.cars) {
      if (car.delivered_ms || *car.promised_ms < options.now.wall_ms) continue;
      const auto said =
          folds::forecast_of(folds::floor_row(car), made.shop.view(), learned, options.now.wall_ms);
      ASSERT_TRUE(said) << car.plate;
      if (!said->likely_ms) {
        ++held;
      } else if (*said->earliest_ms > *car.promised_ms) {
        ++not_any_more;
      } else {
        if (*said->promise_percent > 80) ++likely;
        if (*said->promise_percent > 15 && *said->promise_percent < 70) ++open;
      }
      part += said->likely_ms && said->held_by;
    }
    EXPECT_GE(likely, 6) << hours;
    EXPECT_GE(open, 1) << hours;
    EXPECT_EQ(not_any_more, 1) << hours;
    EXPECT_EQ(held, 1) << hours;
    EXPECT_EQ(part, 1) << hours;
  }
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
    if (car.delivered_ms) {
      EXPECT_EQ(car.car_release.state, folds::ReleaseState::Taken);
    }
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

// The story of the dirt

TEST(DemoShop, EveryCarWasSprayedInABoothAndHalfOfTheDirtyOnesHaveACauseOrAreLeftOpen) {
  int dirty = 0, said = 0, open = 0, hose = 0, hose_cars = 0;
  for (const auto& car : usual().cars) {
    if (!car.delivered_ms) continue;
    EXPECT_TRUE(car.booth);
    const auto lesson = folds::lesson_of(car);
    EXPECT_TRUE(lesson.counted);
    EXPECT_EQ(lesson.painters.size(), 1U);
    dirty += lesson.nibs > 0 ? 1 : 0;
    said += lesson.cause_said ? 1 : 0;
    open += lesson.cause_said && !lesson.cause ? 1 : 0;
    hose += lesson.cause == job::DirtCause::Hose ? 1 : 0;
    const double days = static_cast<double>(invented_evening_ms - lesson.sprayed_ms) / 86'400'000.0;
    const bool bad =
        Booth{days, car.booth == usual().shop.view().booths[1].booth ? hose_lane : 0}.hose_is_bad();
    hose_cars += bad && lesson.cause_said ? 1 : 0;
  }
  EXPECT_GT(said, dirty / 3);
  EXPECT_LT(said, 2 * dirty / 3);
  EXPECT_GT(open, said / 10);
  EXPECT_GT(hose, 0);
  EXPECT_LE(hose, hose_cars) << "nobody says hose when it was none";
}

TEST(DemoShop, TeachesItsOwnTimesWhatComesBackAndWhatSequencesTake) {
  folds::Learned learned;
  int burnt = 0, last_polish = 0, most_looks = 0;
  for (const auto& car : usual().cars) {
    learned.add(folds::lesson_of(car));
    int looks = 0;
    for (const auto& panel : car.panels)
      for (const auto& mark : panel.marks) {
        burnt += mark.end == job::MarkEnd::BurnThrough ? 1 : 0;
        last_polish += mark.stage == Stage::LastPolish ? 1 : 0;
        looks += mark.look ? 1 : 0;
        if (car.delivered_ms) {
          EXPECT_TRUE(mark.end) << "a delivered car has no open mark";
        }
      }
    most_looks = std::max(most_looks, looks);
  }
  ASSERT_EQ(learned.times().size(), enum_words<job::Round>.size());
  for (const auto& time : learned.times()) EXPECT_TRUE(time.shown());
  EXPECT_TRUE(learned.returns().front().shown());
  EXPECT_GT(learned.returns().front().came_back, 0);
  const auto sequences = learned.sequences();
  EXPECT_TRUE(
      std::any_of(sequences.begin(), sequences.end(), [](const auto& one) { return one.shown(); }));
  EXPECT_EQ(burnt, 1);
  EXPECT_GT(last_polish, 5);
  EXPECT_EQ(most_looks, 3);
}

TEST(DemoShop, CarsInWorkWaitForTheCauseForThePlanAndInTheMiddleOfTheRounds) {
  int for_cause = 0, for_plan = 0, in_rounds = 0;
  for (const auto& car : in_work()) {
    int open = 0;
    std::size_t rounds = 0;
    for (const auto& panel : car.panels) {
      open += panel.open_marks();
      rounds += panel.rounds.size();
    }
    if (folds::floor_row(car).next_stage != Stage::Correct || open == 0) continue;
    const bool begun = rounds > 0;
    for_cause += !car.cause && open >= 8 ? 1 : 0;
    for_plan += car.cause && !begun ? 1 : 0;
    in_rounds += begun ? 1 : 0;
  }
  EXPECT_EQ(for_cause, 1);
  EXPECT_EQ(for_plan, 1);
  EXPECT_EQ(in_rounds, 1);
}

// Counted here once more, mark by mark.
TEST(DemoShop, FlatAndUprightOfTheLessonsAreTheMarksThatLieThere) {
  trade::FlatHistory counted;
  std::vector<folds::Lesson> lessons;
  for (const auto& car : usual().cars) {
    lessons.push_back(folds::lesson_of(car));
    if (!car.delivered_ms) {
      lessons.pop_back();
      continue;
    }
    for (const auto& panel : car.panels) {
      if (panel.dirt != job::DirtClass::None) continue;
      const auto& shape = job::pattern(car.body).find(panel.plan.panel)->shape;
      std::int64_t nibs = 0;
      for (const auto& mark : panel.marks)
        if (mark.defect == job::DefectKind::Nib) ++nibs;
      const double area_m2 = trade::area_mm2(shape.outline) / 1e6;
      if (shape.attitude == trade::Attitude::Flat) {
        counted.flat_marks += nibs;
        counted.flat_m2 += area_m2;
      } else if (shape.attitude == trade::Attitude::Upright) {
        counted.upright_marks += nibs;
        counted.upright_m2 += area_m2;
      }
    }
  }
  const auto history = folds::flat_history(lessons, JobId{});
  ASSERT_TRUE(history);
  EXPECT_EQ(history->flat_marks, counted.flat_marks);
  EXPECT_EQ(history->upright_marks, counted.upright_marks);
  EXPECT_NEAR(history->flat_m2, counted.flat_m2, 1e-6);
  EXPECT_NEAR(history->upright_m2, counted.upright_m2, 1e-6);
  EXPECT_GT(counted.flat_marks, 300);
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

TEST(DemoShop, SomeDeliveredCarsWereLateAndEachOfThemWaitedForSomething) {
  int delivered = 0, late = 0;
  std::set<job::WaitReason> reasons;
  for (const auto& car : usual().cars) {
    if (!car.delivered_ms) continue;
    ++delivered;
    if (*car.delivered_ms <= car.promised_ms) continue;
    ++late;
    ASSERT_EQ(car.visit.waits.size(), 1U);
    EXPECT_TRUE(car.visit.waits_for.empty());
    reasons.insert(car.visit.waits[0].reason);
  }
  EXPECT_GT(late, delivered / 20);
  EXPECT_LT(late, delivered / 6);
  EXPECT_EQ(reasons.size(), 5U);
}

TEST(DemoShop, OneCarMoreShiftsNothingOfTheOthers) {
  const Made few(DemoOptions{.delivered = 60, .in_work = 15});
  const Made more(DemoOptions{.delivered = 61, .in_work = 15});
  const auto before = payloads_by_car(few);
  const auto after = payloads_by_car(more);
  ASSERT_EQ(after.size(), before.size() + 1);
  for (const auto& [job, payloads] : before) {
    const auto found = after.find(job);
    ASSERT_NE(found, after.end());
    if (job) {
      EXPECT_EQ(found->second, payloads);
    }
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
    DemoOptions options{.delivered = 2, .in_work = 15};
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
