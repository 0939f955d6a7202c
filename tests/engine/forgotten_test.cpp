// A clock that was forgotten ends when it is said to have ended; a leaver's name is erased for
// good.
#include <filesystem>
#include <gtest/gtest.h>
#include <iterator>
#include <string>

#include "tests/engine/every_command.h"
#include "tests/log/log_folder.h"
#include "tests/whole_file.h"

namespace jambline::engine {
namespace {

constexpr std::int64_t hour_ms = 3'600'000;

class Forgotten : public testing::Test {
 protected:
  void SetUp() override {
    clock_.moment = {1'790'000'000'000, 1000, BootId{{1}}, -240};
    open();
    furnish(*engine_, clock_, shop_);
  }

  void open() {
    engine_.reset();
    engine_ = log::must(Engine::open(
        {folder_.path(), clock_, std::make_unique<SeededRandom>(++seed_), "cart", {}, {}}));
    engine_->watch(shop_.job);
    engine_->drain();
  }

  PersonId leaver(const char* name) {
    EXPECT_TRUE(act(*engine_, acts::AddPerson{name, job::Role::Helper}, shop_.ivo));
    return engine_->snapshot()->shop->people.back().person;
  }

  Status erase(const PersonId& person, const PersonId& by) {
    Status out = fail(Code::Missing, "", "");
    engine_->erase_name(person, by, [&](Status erased) { out = std::move(erased); });
    engine_->drain();
    return out;
  }

  std::string all_bytes() const { return test::whole_folder(folder_.path()); }

  const folds::CarView& car() const { return *engine_->snapshot()->car; }

  log::TempFolder folder_;
  FakeClock clock_;
  std::uint64_t seed_ = 0;
  std::unique_ptr<Engine> engine_;
  SmallShop shop_;
};

TEST_F(Forgotten, AStopSaidAfterwardsCountsToTheTimeItWasSaidToEnd) {
  const std::int64_t start_ms = car().running.front().start_ms;
  clock_.moment = {start_ms + 16 * hour_ms, 500, BootId{{2}}, -240};
  open();
  ASSERT_TRUE(act(*engine_, acts::StopClock{shop_.ivo, start_ms + 2 * hour_ms}, shop_.ivo));
  EXPECT_TRUE(car().running.empty());
  EXPECT_EQ(car().find(shop_.inspect)->clocked_ms, 2 * hour_ms);
  open();
  EXPECT_EQ(car().find(shop_.inspect)->clocked_ms, 2 * hour_ms);
}

TEST_F(Forgotten, AStopBeforeTheStartIsRefusedAndTheClockStillRuns) {
  const std::int64_t start_ms = car().running.front().start_ms;
  const auto refused = act(*engine_, acts::StopClock{shop_.ivo, start_ms - 1}, shop_.ivo);
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().code, Code::OutOfRange);
  EXPECT_EQ(car().running.size(), 1U);
}

TEST_F(Forgotten, TheFloorKnowsWhenAPersonWasLastSeenAlsoAfterARestart) {
  clock_.moment.wall_ms += 3 * hour_ms;
  clock_.moment.since_boot_ms += 3 * hour_ms;
  ASSERT_TRUE(act(*engine_, acts::WriteNote{shop_.job, "seen"}, shop_.ivo));
  const std::int64_t then_ms = clock_.moment.wall_ms;
  clock_.moment.wall_ms += hour_ms;
  const PersonId other = leaver("Lou");
  ASSERT_TRUE(act(*engine_, acts::WriteNote{shop_.job, "later"}, other));
  for (int round = 0; round < 2; ++round) {
    const auto& seen = engine_->snapshot()->floor->front().seen;
    ASSERT_EQ(seen.size(), 3U);
    for (const auto& one : seen)
      if (one.person != shop_.kim) {
        EXPECT_EQ(one.wall_ms, one.person == other ? clock_.moment.wall_ms : then_ms);
      }
    open();
  }
}

TEST_F(Forgotten, WhoIsLetGoLeavesNoClockRunning) {
  const PersonId lou = leaver("Lou");
  ASSERT_TRUE(act(*engine_, acts::StartClock{lou, shop_.job, shop_.correct}, lou));
  ASSERT_EQ(car().running.size(), 2U);
  ASSERT_TRUE(act(*engine_, acts::LetPersonGo{lou}, shop_.ivo));
  ASSERT_EQ(car().running.size(), 1U);
  EXPECT_EQ(car().running.front().person, shop_.ivo);
}

TEST_F(Forgotten, EveryNameOfALeaverIsErasedFromTheFolder) {
  const PersonId person = leaver("Ottilie");
  ASSERT_TRUE(act(*engine_, acts::RenamePerson{person, "Ottokar"}, shop_.ivo));
  ASSERT_TRUE(act(*engine_, acts::LetPersonGo{person}, shop_.ivo));
  ASSERT_NE(all_bytes().find("Ottokar"), std::string::npos);
  ASSERT_TRUE(erase(person, shop_.ivo));
  for (int round = 0; round < 2; ++round) {
    const auto* known = engine_->snapshot()->shop->find(person);
    ASSERT_NE(known, nullptr);
    EXPECT_EQ(known->name, "");
    EXPECT_TRUE(known->left);
    open();
  }
  engine_.reset();
  const std::string bytes = all_bytes();
  EXPECT_EQ(bytes.find("Ottilie"), std::string::npos);
  EXPECT_EQ(bytes.find("Ottokar"), std::string::npos);
  EXPECT_NE(bytes.find("Ivo"), std::string::npos);
  const auto audit = log::must(log::EntryLog::audit(folder_.path(), {}, [](double) {}));
  EXPECT_FALSE(audit.first_bad);
}

TEST_F(Forgotten, WhatTheRegisterHoldsOfALeaverIsErasedWithTheName) {
  const PersonId person = leaver("Ottilie");
  job::FitTest test{"size tiny", job::FitMethod::Qualitative, {}, true, 20'500, 365};
  ASSERT_TRUE(act(*engine_, acts::RecordFitTest{person, shop_.mask, test}, shop_.ivo));
  ASSERT_TRUE(act(*engine_, acts::SayDoNotSpray{person}, shop_.ivo));
  ASSERT_TRUE(
      act(*engine_, acts::SetDue{person, job::DueKind::HealthSurveillance, 20'600}, shop_.ivo));
  ASSERT_TRUE(act(
      *engine_,
      acts::LogSample{person, "of a leaver", 0.002, "ppm", 1'789'990'000'000, 1'789'993'600'000},
      shop_.ivo));
  ASSERT_TRUE(act(*engine_, acts::LetPersonGo{person}, shop_.ivo));
  ASSERT_NE(engine_->snapshot()->shop->air.find(person), nullptr);
  ASSERT_TRUE(erase(person, shop_.ivo));
  EXPECT_EQ(engine_->snapshot()->shop->air.find(person), nullptr);
  EXPECT_TRUE(engine_->snapshot()->shop->air.samples.empty());
  engine_.reset();
  const std::string bytes = all_bytes();
  EXPECT_EQ(bytes.find("size tiny"), std::string::npos);
  EXPECT_EQ(bytes.find("of a leaver"), std::string::npos);
  const auto audit = log::must(log::EntryLog::audit(folder_.path(), {}, [](double) {}));
  EXPECT_FALSE(audit.first_bad);
}

TEST_F(Forgotten, ANameIsErasedByAManagerOnceAndOnlyOfSomebodyWhoHasLeft) {
  const PersonId lou = leaver("Lou");
  EXPECT_EQ(erase(lou, shop_.ivo).error().code, Code::NotYet);
  EXPECT_EQ(erase(lou, lou).error().code, Code::NotAllowed);
  EXPECT_EQ(erase(PersonId{{9}}, shop_.ivo).error().code, Code::Unknown);
  ASSERT_TRUE(act(*engine_, acts::LetPersonGo{lou}, shop_.ivo));
  ASSERT_TRUE(erase(lou, shop_.ivo));
  EXPECT_EQ(erase(lou, shop_.ivo).error().code, Code::AlreadyDone);
}

}  // namespace
}  // namespace jambline::engine
