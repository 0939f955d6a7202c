#include "screens/forgotten_clock_view_model.h"

#include "base/spans.h"
#include "tests/screens/shop_desk.h"

namespace jambline::screens {
namespace {

// Mon 2026-09-21 10:13:20 in New York: Ivo's clock starts, an hour later he is last seen.
class ForgottenClock : public ShopDesk {
 protected:
  void SetUp() override {
    ShopDesk::SetUp();
    act(acts::NameShop{"Shop", "America/New_York"});
    ivo_ = add("Ivo", job::Role::Painter);
    mara_ = add("Mara", job::Role::Manager);
    be(ivo_);
    open_car();
    start_ms_ = clock_.moment.wall_ms;
    act(acts::StartClock{ivo_, *session_->job(), car().operations[1].operation});
    clock_.advance_ms(hour_ms);
    act(acts::WriteNote{*session_->job(), "seen"});
    job_ = QString::fromStdString(session_->job()->hex());
  }

  void start_anew() {
    close();
    open();
    session_->openCar(job_);
    settle();
  }
  const folds::OperationView& inspect() { return car().operations[1]; }

  PersonId ivo_;
  PersonId mara_;
  QString job_;
  std::int64_t start_ms_ = 0;
};

TEST_F(ForgottenClock, AClockOfTodayIsNotAskedAbout) {
  clock_.advance_ms(8 * hour_ms);
  start_anew();
  const ForgottenClockViewModel screen(*session_);
  EXPECT_FALSE(screen.asking());
}

TEST_F(ForgottenClock, OneOfYesterdayIsAskedAtTheStartWithTheLastTimeThePersonWasSeen) {
  clock_.advance_ms(22 * hour_ms);
  start_anew();
  const ForgottenClockViewModel screen(*session_);
  ASSERT_TRUE(screen.asking());
  EXPECT_EQ(screen.who(), "Ivo");
  EXPECT_EQ(screen.what(), "Inspect on K 41-206");
  EXPECT_EQ(screen.endDay(), "Mon Sep 21");
  EXPECT_EQ(screen.endTime(), "11:13");
  EXPECT_EQ(screen.counts(), "1 h");
  EXPECT_EQ(car().running.size(), 1U);  // nothing is closed by asking
}

TEST_F(ForgottenClock, OneOverFourteenHoursOldIsAskedAboutThoughItIsOfToday) {
  clock_.moment.wall_ms = start_ms_ - 9 * hour_ms;  // 1:13 in the night
  act(acts::StartClock{ivo_, *session_->job(), car().operations[2].operation});
  clock_.advance_ms(14 * hour_ms);
  EXPECT_FALSE(ForgottenClockViewModel(*session_).asking());
  clock_.advance_ms(minute_ms);
  EXPECT_TRUE(ForgottenClockViewModel(*session_).asking());
}

TEST_F(ForgottenClock, TheTimeMovesByStepsOfFiveMinutesBetweenStartAndNow) {
  clock_.advance_ms(22 * hour_ms);
  ForgottenClockViewModel screen(*session_);
  screen.shift(5);
  EXPECT_EQ(screen.endTime(), "11:15");
  screen.shift(-5);
  EXPECT_EQ(screen.endTime(), "11:10");
  screen.shift(-60);
  EXPECT_EQ(screen.endTime(), "10:13");
  EXPECT_FALSE(screen.mayEarlier());
  for (int i = 0; i < 30; ++i) screen.shift(60);
  EXPECT_FALSE(screen.mayLater());
  EXPECT_EQ(screen.counts(), "23 h");
}

TEST_F(ForgottenClock, TheAnswerStopsTheClockAsOfThen) {
  clock_.advance_ms(22 * hour_ms);
  start_anew();
  ForgottenClockViewModel screen(*session_);
  screen.shift(5);
  screen.ended();
  settle();
  EXPECT_FALSE(screen.asking());
  EXPECT_FALSE(failed_);
  EXPECT_TRUE(car().running.empty());
  EXPECT_EQ(inspect().clocked_ms, hour_ms + 100'000);  // 10:13:20 to 11:15
}

TEST_F(ForgottenClock, StillRunningWritesNothingAndIsNotAskedAgainTheSameDay) {
  clock_.advance_ms(22 * hour_ms);
  ForgottenClockViewModel screen(*session_);
  const auto entries = session_->snapshot().own_entries;
  screen.stillRuns();
  be(mara_);
  be(ivo_);
  EXPECT_FALSE(screen.asking());
  EXPECT_EQ(session_->snapshot().own_entries, entries);
  EXPECT_EQ(car().running.size(), 1U);
  clock_.advance_ms(24 * hour_ms);
  be(mara_);
  be(ivo_);
  EXPECT_TRUE(screen.asking());
}

TEST_F(ForgottenClock, PutOffItIsAskedAgainWhenThePersonIsChosen) {
  clock_.advance_ms(22 * hour_ms);
  be(mara_);
  ForgottenClockViewModel screen(*session_);
  ASSERT_TRUE(screen.asking());
  screen.putOff();
  EXPECT_FALSE(screen.asking());
  be(ivo_);
  EXPECT_TRUE(screen.asking());
}

TEST_F(ForgottenClock, OneWithAPinIsAskedOnlyWhenHeIsChosen) {
  bool set = false;
  engine_->set_pin(ivo_, "2704", [&](const Status& done) { set = static_cast<bool>(done); });
  settle();
  ASSERT_TRUE(set);
  be(mara_);
  clock_.advance_ms(22 * hour_ms);
  ForgottenClockViewModel screen(*session_);
  EXPECT_FALSE(screen.asking());
  session_->choose_unlocked(ivo_);
  EXPECT_TRUE(screen.asking());
}

}  // namespace
}  // namespace jambline::screens
