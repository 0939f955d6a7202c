// The floor: who waits for whom, when a car will be ready, what comes next, and the calendar that
// all of it is counted in. Times are worked out by hand on the usual durations: 0.7, 0.95 and 1.6
// of what was planned (common practice, no source).
#include "screens/floor_view_model.h"

#include "base/spans.h"
#include "screens/calendar_view_model.h"
#include "screens/ready_view_model.h"
#include "tests/screens/shop_desk.h"

namespace jambline::screens {
namespace {

using job::Stage;

// It is Monday 10:13:20 in New York, open from 8 to 17.
class FloorScreen : public ShopDesk {
 protected:
  void SetUp() override {
    ShopDesk::SetUp();
    act(acts::NameShop{"North Street", "America/New_York"});
    mara_ = add("Mara", job::Role::Manager);
    be(mara_);
    ivo_ = add("Ivo", job::Role::Painter);
    be(ivo_);
    forecasts_ = std::make_unique<FloorForecasts>(*session_);
    floor_ = std::make_unique<FloorViewModel>(*session_);
    floor_->follow(*forecasts_);
  }
  void TearDown() override {
    floor_.reset();
    forecasts_.reset();
    ShopDesk::TearDown();
  }
  JobId open(const char* plate, std::optional<std::int64_t> promised_in_min,
             std::vector<acts::PlannedOperation> work) {
    acts::OpenCar open;
    open.plate = plate;
    open.color = {"G7", "deep green", "#1F4D3A"};
    open.panels = {{job::Panel::Hood, true}};
    open.operations = std::move(work);
    if (promised_in_min) open.promised_ms = clock_.moment.wall_ms + *promised_in_min * minute_ms;
    JobId job;
    session_->post(open, [&](const Result<engine::Wrote>& wrote) {
      if (wrote) job = wrote->job;
    });
    settle();
    return job;
  }
  void look() {
    forecasts_->look();
    for (int i = 0; i < 50 && !forecasts_->ready(); ++i) settle();
    ASSERT_TRUE(forecasts_->ready());
  }
  void pass(std::int64_t ms) {
    clock_.advance_ms(ms);
    emit session_->secondPassed();
    look();
  }
  QString said(int row, const char* role) {
    auto* rows = floor_->rows();
    return rows->data(rows->index(row, 0), rows->roleNames().key(role)).toString();
  }
  QStringList plates() {
    QStringList out;
    for (int i = 0; i < floor_->cars(); ++i) out << said(i, "plate");
    return out;
  }
  const folds::FloorRow& row(const JobId& job) {
    for (const auto& one : *session_->snapshot().floor)
      if (one.job == job) return one;
    throw std::runtime_error("no such car");
  }

  PersonId mara_;
  PersonId ivo_;
  std::unique_ptr<FloorForecasts> forecasts_;
  std::unique_ptr<FloorViewModel> floor_;
};

const std::vector<acts::PlannedOperation> prep_and_more = {
    {Stage::Prep, "", 60}, {Stage::Inspect, "", 60}, {Stage::Correct, "", 90}};

// 210 minutes planned: at least 147, likely 199.5, from 10:13:20.
TEST_F(FloorScreen, ACarSaysWhenItWillBeReadyAndWhatThatDoesToItsPromise) {
  open("K 1", 120, prep_and_more);
  look();
  EXPECT_EQ(said(0, "ready"), "likely 13:45");
  EXPECT_EQ(said(0, "earliest"), "earliest 12:45");
  EXPECT_EQ(said(0, "chance"), "30 min late");
  EXPECT_EQ(said(0, "about"), "at best");
  EXPECT_EQ(said(0, "slack"), "1 h 15 min short");
  EXPECT_EQ(said(0, "holds"), "3.3 h of work left");
  EXPECT_EQ(said(0, "line"), "Likely 13:45, earliest 12:45");
  EXPECT_EQ(said(0, "percent"), "");
}

TEST_F(FloorScreen, WhatIsLateStandsFirstThenWhatIsUnlikelyThenTheRest) {
  open("calm", 30 * 60, prep_and_more);
  open("unlikely", 180, prep_and_more);
  open("late", -30, prep_and_more);
  open("sooner", 29 * 60, prep_and_more);
  look();
  EXPECT_EQ(plates(), (QStringList{"late", "unlikely", "sooner", "calm"}));
  EXPECT_EQ(said(1, "outlook"), QString::number(static_cast<int>(Outlook::Careful)));
  EXPECT_TRUE(said(1, "chance").contains(" in ")) << said(1, "chance").toStdString();
  EXPECT_EQ(said(1, "about"), "on time");
  EXPECT_EQ(said(2, "chance"), "over 19 in 20");
}

TEST_F(FloorScreen, WhatIsNextIsBegunByOneTapAndIsNothingWhileAClockRuns) {
  const JobId late = open("late", -30, prep_and_more);
  open("calm", 30 * 60, prep_and_more);
  look();
  EXPECT_EQ(floor_->nextText(), "Start prep");
  EXPECT_EQ(floor_->nextCar(), "late");
  EXPECT_EQ(said(0, "nextWhy"), "first, for it is late");
  EXPECT_EQ(said(1, "nextText"), "");
  QString started;
  QObject::connect(floor_.get(), &FloorViewModel::nextStarted, floor_.get(),
                   [&](const QString& job) { started = job; });
  floor_->startNext();
  settle();
  ASSERT_EQ(row(late).running.size(), 1U);
  EXPECT_EQ(row(late).running.front().person, ivo_);
  EXPECT_EQ(started, QString::fromStdString(late.hex()));
  EXPECT_EQ(floor_->nextText(), "");
  act(acts::PauseClock{ivo_});
  look();
  EXPECT_EQ(floor_->nextText(), "Go on: prep");
  EXPECT_EQ(floor_->nextWhy(), "you paused it");
  floor_->startNext();
  settle();
  EXPECT_FALSE(row(late).running.front().paused);
}

TEST_F(FloorScreen, SprayingIsNotBegunFromTheFloor) {
  const JobId job = open("K 1", 600, {{Stage::Spray, "", 60}});
  look();
  EXPECT_EQ(floor_->nextText(), "Before the gun");
  QString asked;
  QObject::connect(floor_.get(), &FloorViewModel::gunAsked, floor_.get(),
                   [&](const QString& car) { asked = car; });
  floor_->startNext();
  settle();
  EXPECT_EQ(asked, QString::fromStdString(job.hex()));
  EXPECT_TRUE(row(job).running.empty());
}

TEST_F(FloorScreen, APartWithoutADateHoldsTheCarAndNoChanceIsSaid) {
  const JobId job = open("K 1", 600, {{Stage::Correct, "", 60}, {Stage::Assemble, "", 60}});
  act(acts::SayPart{job, {}, {"left lamp", job::PartState::Ordered, {}}});
  look();
  EXPECT_EQ(said(0, "chance"), "no date");
  EXPECT_EQ(said(0, "ready"), "");
  EXPECT_EQ(said(0, "line"), "Waits for left lamp, no date");
  EXPECT_EQ(floor_->nextText(), "Start correct") << "what comes before it goes on";
  const PartId part = [&] {
    session_->openCar(QString::fromStdString(job.hex()));
    settle();
    return car().visit.parts.front().part;
  }();
  act(acts::SayPart{
      job, part, {"left lamp", job::PartState::Ordered, clock_.moment.wall_ms + 24 * hour_ms}});
  look();
  EXPECT_EQ(said(0, "line"), "Likely Tue 11:15 \u00b7 waits for left lamp, Tue 10:13");
  EXPECT_EQ(said(0, "chance"), "15 h late") << "promised 20:13, Tuesday 10:55 at best";
}

// The clock runs for 30 of 60 minutes: what is left is less by as much as time went on.
TEST_F(FloorScreen, WhatRunsCountsAsClockedWhenTheQuarterIsOver) {
  const JobId job = open("K 1", 600, {{Stage::Prep, "", 60}});
  look();
  const auto likely = [&] { return *forecasts_->of(job)->forecast->likely_ms; };
  const auto before_ms = likely();
  pass(30 * minute_ms);
  EXPECT_EQ(likely(), before_ms + 30 * minute_ms) << "nobody worked";
  floor_->startNext();
  settle();
  look();
  pass(30 * minute_ms);
  EXPECT_EQ(likely(), before_ms + 30 * minute_ms) << "somebody did";
}

TEST_F(FloorScreen, ANumberOpensToWhatItRestsOn) {
  const JobId job = open("K 1", 600, prep_and_more);
  session_->openCar(QString::fromStdString(job.hex()));
  settle();
  ReadyViewModel ready(*session_, *forecasts_);
  EXPECT_FALSE(ready.ofInterest());
  look();
  ASSERT_TRUE(ready.ofInterest());
  EXPECT_EQ(ready.words(), "Likely 13:45 \u00b7 over 19 in 20 on time");
  ready.open();
  const auto text = [&] {
    QString out = ready.sum()->note();
    auto* rows = ready.sum()->rows();
    for (int i = 0; i < rows->rowCount(); ++i)
      for (const char* role : {"name", "value", "source"})
        out += '\n' + rows->data(rows->index(i, 0), rows->roleNames().key(role)).toString();
    return out;
  };
  EXPECT_TRUE(text().contains("under 10 own cars")) << text().toStdString();
  EXPECT_TRUE(text().contains("0.7 to 1.6 h, likely 1.0 h")) << text().toStdString();
  // Ten cars whose prep took half of what was planned teach that; the rest stays usual.
  for (int i = 0; i < 10; ++i) {
    const JobId taught = open(("T " + std::to_string(i)).c_str(), {}, {{Stage::Prep, "", 60}});
    act(acts::StartClock{ivo_, taught, row(taught).operations.front().operation});
    clock_.advance_ms(30 * minute_ms);
    act(acts::StopClock{ivo_});
    act(acts::FinishStage{taught, Stage::Prep, true, job::WithoutShots::NoCamera});
  }
  look();
  ready.open();
  EXPECT_TRUE(text().contains("from 10 own cars")) << text().toStdString();
  EXPECT_TRUE(text().contains("0.5 to 0.5 h, likely 0.5 h")) << text().toStdString();
  EXPECT_FALSE(failed_);
}

// 900 hours are more than the shop is open in 120 days, 771.
TEST_F(FloorScreen, WorkWithoutEndAndNoWorkAreSaidInWords) {
  open("long", 60, {{Stage::Prep, "", 54'000}});
  open("none", 61, {});
  look();
  EXPECT_EQ(said(0, "line"), "The open hours end before the work does");
  EXPECT_EQ(said(0, "outlook"), QString::number(static_cast<int>(Outlook::Trouble)));
  EXPECT_EQ(said(0, "ready"), "");
  EXPECT_EQ(said(1, "line"), "No work is planned");
}

class CalendarScreen : public FloorScreen {};

TEST_F(CalendarScreen, ADayClosedByAManagerMovesWhatIsReady) {
  open("K 1", 26 * 60, {{Stage::Correct, "", 480}});  // 456 min likely: to Tuesday 8:49:20
  look();
  EXPECT_EQ(said(0, "ready"), "likely Tue 09:00");
  EXPECT_EQ(said(0, "slack"), "3 h to spare");
  CalendarViewModel calendar(*session_);
  EXPECT_FALSE(calendar.manager());
  be(mara_);
  EXPECT_TRUE(calendar.manager());
  EXPECT_EQ(calendar.summary(), "45.0 h a week");
  EXPECT_FALSE(calendar.addClosed("tomorrow"));
  EXPECT_EQ(calendar.wrongDay(), "type a day like 12/25/2026");
  EXPECT_FALSE(calendar.addClosed("9/1/2026"));
  EXPECT_EQ(calendar.wrongDay(), "that day is over");
  EXPECT_TRUE(calendar.addClosed("9/22/2026"));
  EXPECT_EQ(calendar.promised(), QStringList{"K 1 is promised for Tue 12:13"});
  calendar.keep();
  settle();
  look();
  EXPECT_FALSE(failed_);
  EXPECT_FALSE(calendar.edited());
  EXPECT_EQ(calendar.closedCount(), 1);
  EXPECT_EQ(said(0, "ready"), "likely Wed 09:00");
  EXPECT_EQ(said(0, "slack"), "21 h short");
}

TEST_F(CalendarScreen, HoursOfAWeekdayAreTypedAndWhatCannotBeIsSaid) {
  be(mara_);
  CalendarViewModel calendar(*session_);
  EXPECT_EQ(calendar.waitsFor(), "nothing is changed");
  calendar.choose(5);
  EXPECT_EQ(calendar.dayTitle(), "Saturday");
  EXPECT_FALSE(calendar.dayOpen());
  calendar.openDay();
  EXPECT_EQ(calendar.opens(), "08:00");
  calendar.setHours("9:30", "9:00");
  EXPECT_EQ(calendar.wrongHours(), "it closes before it opens");
  EXPECT_EQ(calendar.waitsFor(), calendar.wrongHours());
  calendar.setHours("9:30", "24:00");
  EXPECT_EQ(calendar.waitsFor(), "");
  calendar.keep();
  settle();
  EXPECT_EQ(session_->shop().calendar.week[5], (job::OpenDay{570, 1440}));
  for (int day = 0; day < 7; ++day) {
    calendar.choose(day);
    if (calendar.dayOpen()) calendar.closeDay();
  }
  EXPECT_EQ(calendar.waitsFor(), "no day is open");
}

}  // namespace
}  // namespace jambline::screens
