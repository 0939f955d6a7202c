// Day and week sheets, a car's hours, waits and amended clocks as people see them. What is expected
// is added up by hand in each test.
#include "screens/hours_view_model.h"

#include <QFile>
#include <QTemporaryDir>

#include "base/spans.h"
#include "screens/car_hours_view_model.h"
#include "screens/clock_view_model.h"
#include "screens/time_line_view_model.h"
#include "screens/wait_view_model.h"
#include "tests/record/run.h"
#include "tests/screens/shop_desk.h"
#include "tests/screens/until.h"

namespace jambline::screens {
namespace {

std::string said(QAbstractItemModel& rows, int row, const char* role) {
  return rows.data(rows.index(row, 0), rows.roleNames().key(role)).toString().toStdString();
}

// Mon 2026-09-21 10:13:20 in New York.
class HoursTest : public ShopDesk {
 protected:
  void SetUp() override {
    ShopDesk::SetUp();
    act(acts::NameShop{"Shop", "America/New_York"});
    ivo_ = add("Ivo", job::Role::Painter);
    jo_ = add("Jo", job::Role::Manager);
    be(ivo_);
    open_car();
    hours_.emplace(*session_, QString::fromStdString(folder_));
    hours_->wake();
    settle();
  }
  void TearDown() override {
    hours_.reset();
    ShopDesk::TearDown();
  }
  void clock(const PersonId& who, std::size_t operation, std::int64_t for_ms) {
    act(acts::StartClock{who, car().job, car().operations[operation].operation});
    clock_.advance_ms(for_ms);
    act(acts::StopClock{who});
  }
  void seen() {
    settle();
    emit session_->secondPassed();
  }
  // What the command-line program says of the same folder.
  std::string told(const std::string& options) {
    const Said out = run("hours " + folder_ + options);
    EXPECT_EQ(out.code, 0) << out.words;
    return out.words;
  }

  PersonId ivo_, jo_;
  std::optional<HoursViewModel> hours_;
};

TEST_F(HoursTest, SpansAreAddedUpByCarAndOperationToTheSecond) {
  EXPECT_EQ(hours_->lineCount(), 0);
  clock(ivo_, 0, 61 * minute_ms + 7'000);  // 10:13:20 to 11:14:27
  clock_.advance_ms(20 * minute_ms);
  clock(ivo_, 1, 30 * minute_ms);  // 11:34:27 to 12:04:27
  clock(ivo_, 0, 10 * minute_ms + 3'000);
  clock(jo_, 0, 3 * hour_ms);  // a helper is a person of his own
  settle();
  EXPECT_EQ(hours_->total(), "1:41:10");
  EXPECT_EQ(hours_->totalNote(), "10:13 to 12:14 \u00b7 0:20:00 between not clocked");
  ASSERT_EQ(hours_->lineCount(), 2);
  EXPECT_EQ(said(*hours_->lines(), 0, "title"), "Prep");
  EXPECT_EQ(said(*hours_->lines(), 0, "hours"), "1:11:10");
  EXPECT_EQ(said(*hours_->lines(), 1, "hours"), "0:30:00");
  ASSERT_EQ(hours_->spans()->rowCount(), 3);
  EXPECT_EQ(said(*hours_->spans(), 0, "when"), "10:13 to 11:14");
  hours_->choosePerson(QString::fromStdString(jo_.hex()));
  EXPECT_EQ(hours_->total(), "3:00:00");
}

TEST_F(HoursTest, WhatRunsCountsUpToNow) {
  act(acts::StartClock{ivo_, car().job, car().operations[1].operation});
  clock_.advance_ms(31 * minute_ms);
  seen();
  EXPECT_EQ(hours_->total(), "0:31:00");
  EXPECT_TRUE(hours_->totalNote().startsWith("so far"));
  EXPECT_EQ(said(*hours_->spans(), 0, "when"), "since 10:13, runs");
  // It began earlier: the tap is amended while it runs.
  hours_->openSpan(QString::fromStdString(said(*hours_->spans(), 0, "key")));
  auto& amend = *hours_->amend();
  ASSERT_TRUE(amend.shown());
  amend.set_typed("1000");
  amend.chooseReason(2);
  amend.keep({});
  settle();
  EXPECT_EQ(hours_->total(), "0:44:20");  // 10:00:00 to 10:44:20
}

TEST_F(HoursTest, AnAmendedEndShowsBothTimesWhereverTheSpanIsShown) {
  clock(ivo_, 1, 3 * hour_ms);  // to 13:13:20
  settle();
  be(jo_);
  hours_->choosePerson(QString::fromStdString(ivo_.hex()));
  hours_->openSpan(QString::fromStdString(said(*hours_->spans(), 0, "key")));
  auto& amend = *hours_->amend();
  EXPECT_EQ(amend.title(), "Inspect, K 41-206");
  EXPECT_EQ(amend.who(), "Ivo");
  amend.set_typed("0900");
  amend.keep("x");
  EXPECT_EQ(amend.wrongWords(), "Before it began, 10:13.");
  amend.set_typed("1230");
  EXPECT_EQ(amend.countsWords(), "0:43:20 earlier");
  amend.keep(" ");
  EXPECT_EQ(amend.wrongField(), "reason");
  amend.chooseReason(0);
  amend.keep({});
  settle();
  EXPECT_FALSE(amend.shown());
  EXPECT_FALSE(failed_);
  const std::string both = "12:30, clock said 13:13, Jo: went home";
  EXPECT_EQ(said(*hours_->spans(), 0, "said"), both);
  EXPECT_EQ(hours_->total(), "2:16:40");
  CarHoursViewModel of_car(*session_);
  of_car.open(QString::fromStdString(car().operations[1].operation.hex()));
  EXPECT_EQ(said(*of_car.spans(), 0, "said"), both);
  TimeLineViewModel line(*session_);
  bool told_both = false;
  for (int row = 0; row < line.rowCount(); ++row)
    told_both = told_both || said(line, row, "words") == "Inspect stopped, counts " + both;
  EXPECT_TRUE(told_both);
  EXPECT_NE(told(" --from 2026-09-21").find("clock said 2026-09-21 13:13: went home"),
            std::string::npos);
}

TEST_F(HoursTest, AClockIsAmendedFromItsRowOfTheTimeLine) {
  clock(ivo_, 1, hour_ms);
  TimeLineViewModel line(*session_);
  line.open(QString::fromStdString(said(line, 0, "entryId")));
  ASSERT_TRUE(line.openMayBeAmended());
  line.amendOpen();
  EXPECT_FALSE(line.opened());
  line.amend()->set_typed("1100");
  line.amend()->keep("left for the parts store");
  settle();
  EXPECT_EQ(car().find(car().operations[1].operation)->clocked_ms, 46 * minute_ms + 40'000);
}

TEST_F(HoursTest, DaysOf23And25HoursSaySo) {
  // 2026-11-01 0:30 in New York, UTC-4 until 2:00 (tzdata).
  clock_.moment.wall_ms = 1'793'507'400'000;
  clock(ivo_, 0, 3 * hour_ms);
  hours_->toNow();
  settle();
  EXPECT_EQ(hours_->dayNote(), "A day of 25 hours: the clocks go back");
  EXPECT_EQ(hours_->total(), "3:00:00");
  EXPECT_EQ(said(*hours_->spans(), 0, "when"), "00:30 to 02:30") << "2:00 came twice";
  hours_->showWeek(true);
  settle();
  ASSERT_EQ(hours_->days()->rowCount(), 7);
  EXPECT_EQ(said(*hours_->days(), 6, "hours"), "3:00:00");
  EXPECT_EQ(said(*hours_->days(), 6, "note"), "a day of 25 hours");
}

TEST_F(HoursTest, RedoAndComebackStandApart) {
  act(acts::PlanOperation{car().job,
                          {job::Stage::Spray, "", 0, job::WorkKind::Redo, "run on the door"}});
  const auto redo = std::find_if(car().operations.begin(), car().operations.end(),
                                 [](const auto& one) { return one.work == job::WorkKind::Redo; });
  ASSERT_NE(redo, car().operations.end());
  clock(ivo_, static_cast<std::size_t>(redo - car().operations.begin()), hour_ms);
  clock(ivo_, 0, 2 * hour_ms);
  settle();
  ASSERT_EQ(hours_->kinds()->rowCount(), 2);
  EXPECT_EQ(said(*hours_->kinds(), 0, "hours"), "2:00:00");
  EXPECT_EQ(said(*hours_->kinds(), 1, "title"), "Redo");
  EXPECT_EQ(said(*hours_->kinds(), 1, "hours"), "1:00:00");
}

TEST_F(HoursTest, EstimatedAgainstClockedIsByOperationAndCar) {
  clock(ivo_, 0, 90 * minute_ms);  // of one hour
  clock(jo_, 0, 30 * minute_ms);
  act(acts::FinishStage{car().job, job::Stage::Prep, true, job::WithoutShots::NotNeeded});
  const CarHoursViewModel of_car(*session_);
  EXPECT_EQ(of_car.rowWords(), "2.0 h of 3.5 h estimated, 1 operation is over");
  auto& rows = *const_cast<CarHoursViewModel&>(of_car).operations();
  EXPECT_EQ(said(rows, 0, "hours"), "2:00:00");
  EXPECT_EQ(said(rows, 0, "ofWords"), "over 1:00:00");
  EXPECT_EQ(said(rows, 0, "note"), "Ivo \u00b7 Jo \u00b7 done");
  EXPECT_EQ(of_car.totalOf(), "of 3:30:00");
  EXPECT_EQ(of_car.totalNote(), "what is done was estimated at 50 % of what was clocked");
}

TEST_F(HoursTest, TheCommandLineHasTheSameNumbers) {
  clock(ivo_, 0, 61 * minute_ms + 7'000);
  clock(ivo_, 1, 30 * minute_ms);
  clock_.advance_ms(10 * hour_ms);
  clock(ivo_, 2, 3 * hour_ms);  // over midnight
  hours_->showWeek(true);
  settle();
  const std::string words = told("");
  for (int row = 0; row < 2; ++row) {
    const std::string sum = said(*hours_->days(), row, "hours");
    EXPECT_NE(words.find("  2026-09-2" + std::to_string(row + 1) + "  " + sum), std::string::npos)
        << sum << " in\n"
        << words;
  }
  EXPECT_NE(words.find("Ivo  " + hours_->total().toStdString()), std::string::npos) << words;
  for (int row = 0; row < 2; ++row)  // the third is on two days
    EXPECT_NE(words.find("    " + said(*hours_->lines(), row, "hours") + "  K 41-206, "),
              std::string::npos)
        << words;
  EXPECT_EQ(run("hours " + folder_ + " --person nobody").code, 2);
  EXPECT_EQ(run("hours " + folder_ + " --from 2026-02-30").code, 2);
  EXPECT_EQ(run("hours " + folder_ + " --round 6").code, 2) << "only the table is rounded";
}

TEST_F(HoursTest, OnlyTheTableIsRoundedAndNeutrally) {
  clock(ivo_, 0, 8 * minute_ms);            // to the quarter: 15
  clock(ivo_, 1, 7 * minute_ms);            // 0
  clock(ivo_, 2, 22 * minute_ms + 30'000);  // a half goes to the even multiple: 30
  settle();
  QTemporaryDir place;
  hours_->writeTable(place.path(), 3, false);
  until([this] { return hours_->written().startsWith("Written"); });
  QFile file(place.filePath("hours 2026-09-21 Ivo.csv"));
  ASSERT_TRUE(file.open(QIODevice::ReadOnly)) << hours_->written().toStdString();
  const std::string table = file.readAll().toStdString();
  EXPECT_EQ(table,
            "person,day,day_length_min,car,operation,work,worked_s,clock_in_doubt,amended,"
            "worked_min_to_nearest_15\r\n"
            "Ivo,2026-09-21,1440,K 41-206,prep,first time,480.000,no,no,15\r\n"
            "Ivo,2026-09-21,1440,K 41-206,inspect,first time,420.000,no,no,0\r\n"
            "Ivo,2026-09-21,1440,K 41-206,correct,first time,1350.000,no,no,30\r\n");
  EXPECT_EQ(run("hours " + folder_ + " --csv --round 15 --person ivo").words, table);
  EXPECT_EQ(hours_->total(), "0:37:30");
}

TEST_F(HoursTest, ACarWaitsInOneTapWithItsReasonAndGoesOnInOne) {
  WaitViewModel wait(*session_);
  ASSERT_TRUE(wait.mayWait());
  clock(ivo_, 0, minute_ms);
  wait.say("part");
  settle();
  ASSERT_EQ(wait.waitCount(), 1);
  EXPECT_EQ(said(*wait.waits(), 0, "title"), "Waits for a part");
  EXPECT_EQ(said(*wait.waits(), 0, "words"), "since 10:14");
  wait.expect({}, "0900");
  EXPECT_EQ(wait.wrongWords(), "That time is over.");
  wait.expect("9/24/2026", "1540");
  settle();
  EXPECT_EQ(said(*wait.waits(), 0, "words"), "since 10:14, expected Thu 15:40");
  EXPECT_EQ(said(*hours_->waits(), 0, "title"), "K 41-206 waits for a part");
  EXPECT_EQ(said(*hours_->waits(), 0, "when"), "since 10:14, expected Thu 15:40");
  clock_.advance_ms(hour_ms);
  wait.goesOn("part");
  settle();
  EXPECT_EQ(wait.waitCount(), 0);
  EXPECT_EQ(said(*hours_->waits(), 0, "when"), "10:14 to 11:14");
  EXPECT_EQ(wait.beforeWords(), "A part, 10:14 to 11:14");
  EXPECT_FALSE(failed_);
}

TEST_F(HoursTest, AForgottenStartIsSaidInMinutesOrAsATime) {
  ClockViewModel clock_screen(*session_);
  const QString inspect = QString::fromStdString(car().operations[1].operation.hex());
  ASSERT_TRUE(clock_screen.mayEarlier());
  clock_screen.sayEarlier(20);
  EXPECT_EQ(clock_screen.startTime(), "09:53");
  clock_screen.start(inspect);
  settle();
  EXPECT_FALSE(clock_screen.mayEarlier()) << "one clock runs";
  EXPECT_EQ(clock_screen.seconds(), 20 * 60) << "it counts from then on";
  act(acts::StopClock{ivo_});
  clock_screen.sayStarted("1200");
  EXPECT_EQ(clock_screen.earlierWrong(), "That time is still to come.");
  clock_screen.sayStarted("1013");
  EXPECT_EQ(clock_screen.startTime(), "10:13");
  clock_screen.start(inspect);
  settle();
  ASSERT_TRUE(failed_) << "not before the clock's last act, at 10:13:20";
  EXPECT_EQ(failed_->code, Code::OutOfRange);
}

}  // namespace
}  // namespace jambline::screens
