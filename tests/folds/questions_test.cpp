// The questions of a manager, of cars made by hand: what counts, when, and with which number
// beside.
#include <gtest/gtest.h>

#include "folds/due_question.h"
#include "folds/first_time_question.h"
#include "folds/flow_question.h"
#include "folds/hours_question.h"
#include "folds/late_question.h"
#include "folds/pictures_question.h"
#include "folds/spray_question.h"
#include "tests/folds/accounts.h"

namespace jambline::folds {
namespace {

using job::Stage;
using job::Verdict;

constexpr Period always{};

TEST(Quartiles, GoBetweenTheSortedNumbersAndSayHowMany) {
  EXPECT_FALSE(quartiles({}));
  // Python's statistics.quantiles(n=4, method="inclusive") of the same numbers.
  const auto of = *quartiles({7, 1, 3, 10});
  EXPECT_EQ(of.n, 4);
  EXPECT_DOUBLE_EQ(of.least, 1);
  EXPECT_DOUBLE_EQ(of.lower, 2.5);
  EXPECT_DOUBLE_EQ(of.median, 5);
  EXPECT_DOUBLE_EQ(of.upper, 7.75);
  EXPECT_DOUBLE_EQ(of.most, 10);
  EXPECT_DOUBLE_EQ(quartiles({4})->lower, 4);
}

TEST(Months, GoByTheZoneOfTheShop) {
  const std::int64_t last_evening_ms = 1'790'824'800'000;  // 2026-10-01 03:20 UTC
  EXPECT_EQ(Months(new_york).of(last_evening_ms), "2026-09");
  EXPECT_EQ(Months("").of(last_evening_ms), "2026-10");
  Months months(new_york);
  EXPECT_EQ(months.of(last_evening_ms), "2026-09");
  EXPECT_EQ(months.of(last_evening_ms + 2 * hour_in_ms), "2026-10")
      << "midnight there is 04:00 UTC";
}

TEST(HoursQuestion, ComparesDoneWorkThatHasBothAndKeepsRedoBeside) {
  auto car = car_number(1, 0);
  car.operations = {
      work(1, Stage::Prep, 60, 10, {{ivo, 90}}), work(2, Stage::Spray, 45, 12, {{ivo, 30}}),
      work(3, Stage::Wash, 0, 13, {{mara, 20}}), work(4, Stage::Fit, 30, 14, {{mara, 15}}, false)};
  auto redo = work(5, Stage::Spray, 45, 16, {{ivo, 50}});
  redo.work = job::WorkKind::Redo;
  car.operations.push_back(redo);
  const auto answer = hours_question({car}, HoursBy::Operation, always, new_york);
  EXPECT_EQ(answer.all.operations, 2);
  EXPECT_EQ(answer.all.cars, 1);
  EXPECT_DOUBLE_EQ(answer.all.estimate_min, 105);
  EXPECT_DOUBLE_EQ(answer.all.clocked_min, 120);
  EXPECT_EQ(answer.all.without_estimate, 1);
  EXPECT_DOUBLE_EQ(answer.all.without_estimate_min, 20);
  EXPECT_EQ(answer.all.again, 1);
  EXPECT_DOUBLE_EQ(answer.all.again_min, 50);
  EXPECT_EQ(answer.open, 1);
  EXPECT_EQ(answer.all.ratio->n, 2);
  EXPECT_DOUBLE_EQ(answer.all.ratio->most, 1.5);
  ASSERT_EQ(answer.rows.size(), 3U);
  EXPECT_EQ(answer.rows[0].stage, Stage::Prep) << "most clocked first";
  EXPECT_EQ(answer.rows[1].stage, Stage::Spray);
  EXPECT_EQ(answer.rows[1].operations, 1);
  EXPECT_EQ(answer.rows[1].again, 1);
  EXPECT_EQ(answer.rows[1].cases.size(), 2U);
  EXPECT_DOUBLE_EQ(answer.rows[1].cases[0].value, 50);
}

TEST(HoursQuestion, SharesAnEstimateAsItsClockWasShared) {
  auto car = car_number(1, 0);
  car.operations = {work(1, Stage::Prep, 60, 10, {{ivo, 60}, {mara, 30}})};
  const auto answer = hours_question({car}, HoursBy::Person, always, new_york);
  ASSERT_EQ(answer.rows.size(), 2U);
  EXPECT_EQ(answer.rows[0].person, ivo);
  EXPECT_DOUBLE_EQ(answer.rows[0].estimate_min, 40);
  EXPECT_DOUBLE_EQ(answer.rows[0].clocked_min, 60);
  EXPECT_DOUBLE_EQ(answer.rows[1].estimate_min, 20);
  EXPECT_DOUBLE_EQ(answer.rows[1].ratio->median, 1.5) << "of the operation";
}

TEST(HoursQuestion, AnOperationIsOfTheTimeInWhichItsClockEndedLast) {
  auto car = car_number(1, 0);
  car.operations = {work(1, Stage::Prep, 60, 10, {{ivo, 60}}),
                    work(2, Stage::Spray, 60, 24 * 12, {{ivo, 60}})};
  const Period first_day{at_hour(0), at_hour(24)};
  EXPECT_EQ(hours_question({car}, HoursBy::Month, first_day, new_york).all.operations, 1);
  const auto months = hours_question({car}, HoursBy::Month, always, new_york).rows;
  ASSERT_EQ(months.size(), 2U);
  EXPECT_EQ(months[0].month, "2026-09");
  EXPECT_EQ(months[1].month, "2026-10");
}

TEST(FlowQuestion, DaysHoursAndWaitsOfDeliveredCars) {
  auto car = car_number(1, 0);
  car.delivered_ms = at_hour(48);
  car.operations = {work(1, Stage::Prep, 60, 10, {{ivo, 120}, {mara, 60}})};
  car.waits = {{job::WaitReason::Part, at_hour(10), at_hour(20)},
               {job::WaitReason::Part, at_hour(15), at_hour(22)},   // both at once count once
               {job::WaitReason::Booth, at_hour(40), at_hour(60)},  // cut at the delivery
               {job::WaitReason::Cure, at_hour(-5), at_hour(-1)}};
  auto here = car_number(2, 0);
  const auto answer = flow_question({car, here}, always, new_york);
  EXPECT_EQ(answer.all.cycle_days->n, 1);
  EXPECT_DOUBLE_EQ(answer.all.cycle_days->median, 2);
  EXPECT_DOUBLE_EQ(answer.all.touch_h->median, 3);
  EXPECT_DOUBLE_EQ(answer.touch_percent->median, 6.25);
  ASSERT_EQ(answer.waits.size(), 2U);
  EXPECT_EQ(answer.waits[0].reason, job::WaitReason::Part);
  EXPECT_DOUBLE_EQ(answer.waits[0].hours, 12);
  EXPECT_DOUBLE_EQ(answer.waits[1].hours, 8);
  EXPECT_FALSE(flow_question({here}, always, new_york).all.cycle_days);
}

TEST(FirstTimeQuestion, APanelThatWasEverSentBackIsNotThrough) {
  auto car = car_number(1, 0);
  car.panels = {{job::Panel::Hood, {{Verdict::Clean, at_hour(1), entry_number(1)}}, {}},
                {job::Panel::Roof,
                 {{Verdict::ToCorrect, at_hour(1), entry_number(2)},
                  {Verdict::Clean, at_hour(3), entry_number(3)}},
                 {}},
                {job::Panel::LeftFender,
                 {{Verdict::Ask, at_hour(0), entry_number(9)},
                  {Verdict::Redo, at_hour(1), entry_number(4)},
                  {Verdict::Clean, at_hour(9), entry_number(5)}},
                 {job::DefectKind::RunOrSag, job::DefectKind::DrySpray}},
                {job::Panel::RightFender, {{Verdict::BackToBody, at_hour(2), entry_number(6)}}, {}},
                {job::Panel::Decklid, {{Verdict::Ask, at_hour(1), entry_number(7)}}, {}},
                {job::Panel::Hatch, {}, {}}};
  const auto answer = first_time_question({car}, always, new_york);
  EXPECT_EQ(answer.all.panels, 4) << "one is only asked about, one was not looked at";
  EXPECT_EQ(answer.all.through, 2);
  EXPECT_EQ(answer.all.clean_at_once, 1);
  EXPECT_EQ(answer.all.sent_back, 2);
  ASSERT_EQ(answer.all.cases.size(), 2U);
  EXPECT_EQ(answer.all.cases[0].entry, entry_number(4));
  ASSERT_EQ(answer.kinds.size(), 3U);
  int without_kind = 0;
  for (const auto& kind : answer.kinds) without_kind += kind.defect ? 0 : kind.panels;
  EXPECT_EQ(without_kind, 1);
  const Period later{at_hour(2), at_hour(100)};
  EXPECT_EQ(first_time_question({car}, later, new_york).all.panels, 1) << "by the first look";
}

TEST(FirstTimeQuestion, RedoByTheReasonThatWasWritten) {
  auto car = car_number(1, 0);
  auto redo = work(1, Stage::Spray, 45, 16, {{ivo, 50}}, false);
  redo.work = job::WorkKind::Redo;
  redo.why = "run on the edge";
  redo.entry = entry_number(8);
  auto silent = redo;
  silent.why.reset();
  silent.operation.bytes[15] = 2;
  car.operations = {redo, redo, silent, work(3, Stage::Prep, 60, 10, {{ivo, 60}})};
  car.comebacks = {{"clear peels", at_hour(90), entry_number(3)}};
  const auto answer = first_time_question({car}, always, new_york);
  ASSERT_EQ(answer.redo.size(), 2U);
  EXPECT_EQ(answer.redo[0].why, "run on the edge");
  EXPECT_EQ(answer.redo[0].operations, 2);
  EXPECT_EQ(answer.redo[0].cars, 1);
  EXPECT_DOUBLE_EQ(answer.redo[0].clocked_min, 100);
  EXPECT_EQ(answer.redo[0].cases[0].entry, entry_number(8));
  EXPECT_EQ(answer.redo[1].why, "");
  ASSERT_EQ(answer.came_back.size(), 1U);
}

TEST(SprayQuestion, OverridesReportsAndMissingFacts) {
  auto car = car_number(1, 0);
  AccountSpray clean{{}, {}, ivo, at_hour(1), entry_number(1), {}, {}};
  AccountSpray over{{},
                    {},
                    ivo,
                    at_hour(2),
                    entry_number(2),
                    {{job::GunItem::FitTested, job::GunReason::RecordNotHere, "in the office"},
                     {job::GunItem::ColorApproved, job::GunReason::ManagerDecided, ""}},
                    {}};
  AccountSpray should{{}, {}, mara, at_hour(3), entry_number(3), {}, {job::GunItem::Climate}};
  car.sprays = {clean, over, should};
  car.without = {{{}, mara, at_hour(4), {job::GunItem::SealOrFlow}, entry_number(4)}};
  const auto answer = spray_question({car}, always, new_york);
  EXPECT_EQ(answer.all.starts, 3);
  EXPECT_EQ(answer.all.with_overrides, 1);
  EXPECT_EQ(answer.all.facts_missing, 2);
  EXPECT_EQ(answer.all.without, 1);
  EXPECT_EQ(answer.all.cases.size(), 3U);
  ASSERT_EQ(answer.people.size(), 2U);
  EXPECT_EQ(answer.people[0].person, ivo);
  EXPECT_EQ(answer.people[0].starts, 2);
  ASSERT_EQ(answer.items.size(), 4U);
  ASSERT_EQ(answer.reasons.size(), 2U);
  EXPECT_EQ(spray_question({car}, {at_hour(3), at_hour(9)}, new_york).all.starts, 1);
}

TEST(LateQuestion, ByTheLongestWaitThenRedoThenTheStageThatIsLeft) {
  const std::int64_t now = at_hour(100);
  const auto promised = [](int number, double hour) {
    auto car = car_number(number, 0);
    car.promised_ms = at_hour(hour);
    return car;
  };
  auto in_time = promised(1, 50);
  in_time.delivered_ms = at_hour(50);
  auto waited = promised(2, 50);
  waited.delivered_ms = at_hour(56);
  waited.waits = {{job::WaitReason::Booth, at_hour(5), at_hour(7)},
                  {job::WaitReason::Part, at_hour(10), at_hour(40)}};
  auto again = promised(3, 60);
  again.delivered_ms = at_hour(62);
  again.operations = {work(1, Stage::Spray, 45, 16, {{ivo, 90}})};
  again.operations[0].work = job::WorkKind::Redo;
  auto here = promised(4, 90);
  here.next_stage = Stage::Wash;
  const auto later = promised(5, 200);
  const auto silent = [&] {
    auto car = promised(6, 10);
    car.delivered_ms = at_hour(11);
    return car;
  }();
  const auto answer =
      late_question({in_time, waited, again, here, later, silent}, always, new_york, now);
  EXPECT_EQ(answer.due, 5) << "one is still to come";
  EXPECT_EQ(answer.late, 4);
  EXPECT_EQ(answer.still_here, 1);
  EXPECT_EQ(answer.hours_late->n, 4);
  EXPECT_DOUBLE_EQ(answer.hours_late->most, 10);
  ASSERT_EQ(answer.rows.size(), 4U);
  EXPECT_EQ(answer.rows[0].held, HeldBy::Wait);
  EXPECT_EQ(answer.rows[0].wait, job::WaitReason::Part);
  EXPECT_DOUBLE_EQ(answer.rows[0].held_h, 30);
  EXPECT_EQ(answer.rows[1].held, HeldBy::Redo);
  EXPECT_DOUBLE_EQ(answer.rows[1].held_h, 1.5);
  EXPECT_EQ(answer.rows[2].stage, Stage::Wash);
  EXPECT_EQ(answer.rows[3].held, HeldBy::NotSaid);
}

TEST(PicturesQuestion, StagesEndedWithoutTheirPictures) {
  auto car = car_number(1, 0);
  car.stages = {{Stage::CheckIn, at_hour(1), 2, job::WithoutShots::NoCamera, entry_number(1)},
                {Stage::Mask, at_hour(2), 0, {}, {}}};
  auto other = car_number(2, 0);
  other.stages = {{Stage::CheckIn, at_hour(3), 0, {}, {}}};
  const auto answer = pictures_question({car, other}, ShopView{}, always);
  const int of_mask = job::usual_shots(Stage::Mask).empty() ? 0 : 1;
  EXPECT_EQ(answer.all.ended, 2 + of_mask);
  EXPECT_EQ(answer.all.with_missing, 1);
  EXPECT_EQ(answer.all.missing, 2);
  ASSERT_FALSE(answer.stages.empty());
  EXPECT_EQ(answer.stages[0].stage, Stage::CheckIn);
  EXPECT_EQ(answer.stages[0].ended, 2);
  ASSERT_EQ(answer.reasons.size(), 1U);
  EXPECT_EQ(answer.reasons[0].why, job::WithoutShots::NoCamera);
  EXPECT_EQ(answer.reasons[0].cases[0].entry, entry_number(1));
}

class DueQuestion : public testing::Test {
 protected:
  static constexpr int today = 20'717;
  static constexpr std::int64_t now_ms = today * 86'400'000LL + 1000;
  DueQuestion() {
    shop.people = {{ivo, "Ivo", {}, false, {}, {}}};
    RespiratorView half;
    half.respirator = mask;
    half.said.kind = job::RespiratorKind::HalfAirPurifying;
    shop.air.respirators = {half};
    shop.booths = {{booth, "booth 1", {}, {}}};
  }
  void fit_test(int tested_day) {
    FitTestView test;
    test.respirator = mask;
    test.said.tested_day = tested_day;
    test.said.valid_days = 365;
    test.heads = {entry_number(1)};
    PersonAirView air;
    air.person = ivo;
    air.fit_tests = {test};
    shop.air.people = {air};
  }
  RespiratorId mask{{5}};
  BoothId booth{{6}};
  ShopView shop;
};

TEST_F(DueQuestion, TheWholeLastDayCountsAndThenItIsExpired) {
  fit_test(today - 365);
  EXPECT_EQ(due_question({}, shop, always, now_ms).expired, 0);
  fit_test(today - 366);
  const auto answer = due_question({}, shop, always, now_ms);
  EXPECT_EQ(answer.expired, 1);
  EXPECT_EQ(answer.missing, 1) << "the booth has no smoke test";
  ASSERT_EQ(answer.rows.size(), 2U);
  EXPECT_EQ(answer.rows[0].days_left, -1);
  EXPECT_EQ(answer.rows[0].entry, entry_number(1));
}

TEST_F(DueQuestion, SaysWhatWasSprayedAfterATestHadExpired) {
  fit_test(today - 400);
  auto car = car_number(1, 0);
  const std::int64_t out_ms = (today - 400 + 365 + 1) * 86'400'000LL;
  car.sprays = {{booth, mask, ivo, out_ms - 1, entry_number(2), {}, {}},
                {booth, mask, ivo, out_ms, entry_number(3), {}, {}},
                {booth, RespiratorId{{7}}, ivo, out_ms + 5, entry_number(4), {}, {}},
                {booth, mask, mara, out_ms + 5, entry_number(5), {}, {}}};
  const auto answer = due_question({car}, shop, always, now_ms);
  EXPECT_EQ(answer.sprayed, 1);
  ASSERT_EQ(answer.rows[0].cases.size(), 1U);
  EXPECT_EQ(answer.rows[0].cases[0].entry, entry_number(3));
  EXPECT_EQ(due_question({car}, shop, {0, out_ms}, now_ms).sprayed, 0) << "not in that time";
}

TEST(Accounts, ReachIntoATimeFromOpeningToTheLastThingThatWasDone) {
  auto car = car_number(1, 10);
  EXPECT_TRUE(reaches_into(car, at_hour(1000), at_hour(1001))) << "in work without an end";
  car.last_ms = at_hour(20);
  EXPECT_TRUE(reaches_into(car, at_hour(20), at_hour(30)));
  EXPECT_FALSE(reaches_into(car, at_hour(21), at_hour(30)));
  EXPECT_FALSE(reaches_into(car, at_hour(0), at_hour(10)));
}

}  // namespace
}  // namespace jambline::folds
