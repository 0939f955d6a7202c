// Before the gun, spraying, clearing and what is kept about protection.
//
// A stop has no way round (29 CFR 1910.134, 1910.94(c), 1910.107); a must is passed over by name
// and with a reason. Times of the clearance: trade/clearance.h and its tests against CDC 2003.
#include "folds/cure_of_car.h"
#include "folds/floor_view.h"
#include "folds/gun_facts.h"
#include "tests/acts/one_device.h"

namespace jambline::acts {
namespace {

using folds::BoothWordNow;
using job::BoothWord;
using job::CutAnswer;
using job::GunItem;
using job::GunReason;

class SprayTest : public DecideTest {
 protected:
  void SetUp() override {
    DecideTest::SetUp();
    did(AddBooth{"booth 1", job::BoothKind::Downdraft});
    booth = shop_view.booths.back().booth;
    hood = respirator("hood 7", job::RespiratorKind::SuppliedHood);
    person = painter;
  }
  RespiratorId respirator(const char* model, job::RespiratorKind kind, const char* allowed = "") {
    const PersonId before = person;
    person = manager;
    did(SetRespirator{{},
                      {model, kind, trade::FactorScheme::Us, job::usual_us_factor(kind),
                       "29 CFR 1910.134", 2006, allowed, false}});
    person = before;
    return shop_view.air.respirators.back().respirator;
  }
  int today() const { return static_cast<int>(now_ms / 86'400'000); }
  void register_everything() {
    const PersonId before = person;
    person = manager;
    did(CheckBreathingAir{{true, true, true, today() - 10, 90}});
    did(SetDue{painter, job::DueKind::PainterTraining, today() + 100});
    job::BoothFacts facts;
    facts.most_pressure_pa = 150;
    facts.volume_m3 = 90;
    facts.rated_exhaust_m3_h = 20'000;
    did(SetBoothFacts{booth, facts});
    did(ReadBooth{booth, job::BoothReading::FilterPressure, {80}});
    person = before;
  }
  // What is asked on the spot, all answered.
  StartSpray good_day() {
    StartSpray out{job, booth, hood, true, {}};
    for (std::size_t i = 0; i < enum_words<GunItem>.size(); ++i)
      if (const auto item = static_cast<GunItem>(i); job::is_of_now(item))
        out.checks.push_back({item, CutAnswer::Yes, {}, {}});
    return out;
  }
  void answer(StartSpray& spray, GunItem item, CutAnswer answer,
              std::optional<GunReason> reason = {}) {
    std::erase_if(spray.checks, [&](const auto& one) { return one.item == item; });
    spray.checks.push_back({item, answer, reason, {}});
  }
  folds::BoothState state() {
    return folds::booth_state(*shop_view.find(booth), shop_view.air.find(booth), now());
  }
  void wait_min(double minutes) { now_ms += static_cast<std::int64_t>(minutes * 60'000); }

  BoothId booth;
  RespiratorId hood;
};

TEST_F(SprayTest, AGoodDayIsFiveAnswersAndTheStart) {
  register_everything();
  const StartSpray spray = good_day();
  EXPECT_EQ(spray.checks.size(), 5U);
  const auto written = did(spray);
  ASSERT_EQ(written.size(), 2U) << "one for the car, one that the whole shop sees";
  const auto& checks = car().air.sprays.back().checks;
  for (const auto& check : checks) {
    EXPECT_EQ(check.answer, CutAnswer::Yes);
    EXPECT_FALSE(check.reason);
  }
  EXPECT_EQ(state().word, BoothWordNow::Spraying);
}

TEST_F(SprayTest, NoStopHasAWayRound) {
  register_everything();
  for (const GunItem item :
       {GunItem::SealOrFlow, GunItem::ExhaustFreshAir, GunItem::NobodyUnprotected}) {
    StartSpray without = good_day();
    answer(without, item, CutAnswer::No, GunReason::ManagerDecided);
    refused(without, Code::NotAllowed);
    answer(without, item, CutAnswer::DoesNotApply);
    refused(without, Code::NotAllowed);
    std::erase_if(without.checks, [&](const auto& one) { return one.item == item; });
    refused(without, Code::Missing);
  }
  EXPECT_EQ(state().word, BoothWordNow::Idle);
}

TEST_F(SprayTest, ActivatedProductWantsSuppliedAirUnlessTheWrittenProgramSaysOtherwise) {
  register_everything();
  const RespiratorId mask = respirator("mask 1", job::RespiratorKind::FullAirPurifying);
  StartSpray spray = good_day();
  spray.respirator = mask;
  answer(spray, GunItem::RightRespirator, CutAnswer::Yes);
  refused(spray, Code::NotAllowed);
  spray.activated = false;
  answer(spray, GunItem::FitTested, CutAnswer::No, GunReason::RecordNotHere);
  answer(spray, GunItem::CartridgeInTime, CutAnswer::No, GunReason::RecordNotHere);
  EXPECT_TRUE(decided(spray));
  spray.respirator = respirator("mask 2", job::RespiratorKind::FullAirPurifying,
                                "written program of 2026, cartridge data");
  spray.activated = true;
  EXPECT_TRUE(decided(spray));
}

TEST_F(SprayTest, WhoIsUnderDoNotSprayDoesNot) {
  register_everything();
  did(SayDoNotSpray{painter});
  StartSpray spray = good_day();
  refused(spray, Code::NotAllowed);
  answer(spray, GunItem::MaySpray, CutAnswer::Yes);
  refused(spray, Code::NotAllowed);
  refused(SayDoNotSpray{painter, false}, Code::NotAllowed);
  const Hash flag = shop_view.air.find(painter)->flag_heads.front();
  refused(Withdraw{{}, flag, "by mistake"}, Code::NotAllowed);
  refused(UndoAction{{{JobId{}, flag}}}, Code::NotAllowed);
  person = manager;
  did(SayDoNotSpray{painter, false});
  person = painter;
  did(good_day());
}

TEST_F(SprayTest, AMustIsPassedOverByReasonAndKeptForGood) {
  register_everything();
  StartSpray spray = good_day();
  answer(spray, GunItem::GlovesSuitEyes, CutAnswer::No);
  refused(spray, Code::Missing);
  answer(spray, GunItem::GlovesSuitEyes, CutAnswer::No, GunReason::NoneAtHand);
  did(spray);
  const auto& checks = car().air.sprays.back().checks;
  const auto passed = std::find_if(checks.begin(), checks.end(),
                                   [](const auto& one) { return one.reason.has_value(); });
  ASSERT_NE(passed, checks.end());
  EXPECT_EQ(passed->item, GunItem::GlovesSuitEyes);
}

TEST_F(SprayTest, WhatTheRecordsDoNotBearOutIsNotTicked) {
  StartSpray spray = good_day();  // nothing is in the register
  refused(spray, Code::Missing);
  answer(spray, GunItem::BreathingAir, CutAnswer::Yes);
  refused(spray, Code::NotYet);
  for (const GunItem item :
       {GunItem::BreathingAir, GunItem::TrainedAndGun, GunItem::FiltersAndGauge})
    answer(spray, item, CutAnswer::No, GunReason::RecordNotHere);
  did(spray);
}

TEST_F(SprayTest, WhatIsOverdueIsNotMet) {
  register_everything();
  person = manager;
  did(CheckBreathingAir{{true, true, true, today() - 91, 90}});
  person = painter;
  StartSpray spray = good_day();
  refused(spray, Code::Missing);
  answer(spray, GunItem::BreathingAir, CutAnswer::Yes);
  refused(spray, Code::NotYet);
}

TEST_F(SprayTest, AFitTestUnderThePassMarkOrOfTheWrongKindIsNotMet) {
  register_everything();
  const RespiratorId full = respirator("airline 3", job::RespiratorKind::SuppliedFull);
  person = manager;
  refused(
      RecordFitTest{painter, hood, {"", job::FitMethod::Quantitative, {900}, false, today(), 365}},
      Code::NotAllowed);
  refused(RecordFitTest{painter, full, {"M", job::FitMethod::Qualitative, {}, true, today(), 365}},
          Code::NotAllowed);
  // Harmonic mean 132.3 (29 CFR 1910.134 app. A): enough for a half mask, not for a full face.
  did(RecordFitTest{painter,
                    full,
                    {"M",
                     job::FitMethod::Quantitative,
                     {200, 150, 100, 120, 180, 90, 160},
                     false,
                     today(),
                     365}});
  person = painter;
  StartSpray spray = good_day();
  spray.respirator = full;
  answer(spray, GunItem::FitTested, CutAnswer::Yes);
  refused(spray, Code::NotYet);
  person = manager;
  did(RecordFitTest{painter,
                    full,
                    {"M",
                     job::FitMethod::Quantitative,
                     {1000, 800, 400, 900, 700, 650, 500},
                     false,
                     today(),
                     365}});
  person = painter;
  std::erase_if(spray.checks, [](const auto& one) { return one.item == GunItem::FitTested; });
  did(spray);
}

TEST_F(SprayTest, TheClearanceCountsFromGunDownOnFreshAirInOnePiece) {
  register_everything();
  person = manager;
  did(ReadBooth{booth, job::BoothReading::SmokeTest, {4, 5}});
  person = painter;
  did(good_day());
  wait_min(12);
  EXPECT_EQ(state().word, BoothWordNow::Spraying);
  did(GunDown{booth});
  EXPECT_EQ(state().word, BoothWordNow::Counting);
  EXPECT_NEAR(state().left_s, 300, 1e-6) << "the longest of the smoke test";
  wait_min(3);
  did(SayExhaust{booth, BoothWord::DoorOpened});
  EXPECT_EQ(state().word, BoothWordNow::NotCounting);
  EXPECT_EQ(state().left_s, 300);
  wait_min(60);
  refused(LogClearanceOver{booth}, Code::NotYet);
  did(SayExhaust{booth, BoothWord::FreshAirDoorsShut});
  EXPECT_NEAR(state().left_s, 300, 1e-6);
  EXPECT_EQ(state().restarts, 1);
  wait_min(4.9);
  refused(LogClearanceOver{booth}, Code::NotYet);
  wait_min(0.2);
  EXPECT_EQ(state().word, BoothWordNow::TimeOver);
  did(LogClearanceOver{booth});
  EXPECT_EQ(state().word, BoothWordNow::Idle);
}

TEST_F(SprayTest, BakeNeverCounts) {
  register_everything();
  did(good_day());
  did(GunDown{booth});
  did(SayExhaust{booth, BoothWord::Bake});
  wait_min(600);
  EXPECT_EQ(state().word, BoothWordNow::NotCounting);
  EXPECT_EQ(state().stopped_by, BoothWord::Bake);
}

// However often it is said again, and also when all of it is of the same moment.
TEST_F(SprayTest, WhatStoppedItIsNeverForgotten) {
  register_everything();
  person = manager;
  did(ReadBooth{booth, job::BoothReading::SmokeTest, {5}});
  person = painter;
  did(good_day());
  did(GunDown{booth});
  for (int i = 0; i < 260; ++i)
    did(SayExhaust{booth, i % 2 == 0 ? BoothWord::FanStopped : BoothWord::DoorOpened});
  EXPECT_EQ(state().word, BoothWordNow::NotCounting);
  did(SayExhaust{booth, BoothWord::FreshAirDoorsShut});
  EXPECT_EQ(state().word, BoothWordNow::Counting);
  EXPECT_NEAR(state().left_s, 300, 1e-6);
  for (int i = 0; i < 130; ++i) {
    did(SayExhaust{booth, BoothWord::Bake});
    did(SayExhaust{booth, BoothWord::FreshAirDoorsShut});
  }
  EXPECT_NEAR(state().left_s, 300, 1e-6);
  did(SayExhaust{booth, BoothWord::Bake});
  Moment before = now();
  before.wall_ms -= 86'400'000;
  before.boot.bytes[0] = 9;
  EXPECT_EQ(folds::booth_state(*shop_view.find(booth), shop_view.air.find(booth), before).word,
            BoothWordNow::NotCounting)
      << "a clock that runs a day behind has all of it just now";
}

// The device's own timer within a boot, the wall clock across boots; never the shorter wait.
TEST_F(SprayTest, AChangedClockNeverShortensTheWait) {
  register_everything();
  person = manager;
  did(ReadBooth{booth, job::BoothReading::SmokeTest, {5}});
  person = painter;
  did(good_day());
  did(GunDown{booth});
  const auto* air = shop_view.air.find(booth);
  const Moment down = now();
  const auto at = [&](std::int64_t wall_ms, std::int64_t boot_ms, bool same_boot) {
    Moment moment = down;
    moment.wall_ms += wall_ms;
    moment.since_boot_ms = same_boot ? down.since_boot_ms + static_cast<std::uint64_t>(boot_ms)
                                     : static_cast<std::uint64_t>(boot_ms);
    if (!same_boot) moment.boot.bytes[0] = 9;
    return folds::booth_state(*shop_view.find(booth), air, moment).left_s;
  };
  EXPECT_NEAR(at(120'000, 120'000, true), 180, 1e-6);
  EXPECT_NEAR(at(7'200'000, 120'000, true), 180, 1e-6) << "clock set two hours forward";
  // Set back, the smoke test lies in the time to come: then the longer of it and the formula.
  EXPECT_GE(at(-7'200'000, 120'000, true), 180) << "and back";
  EXPECT_NEAR(at(120'000, 30'000, false), 180, 1e-6) << "after a restart";
  EXPECT_NEAR(at(-120'000, 30'000, false), 300, 1e-6) << "a clock that woke up in the past";
}

TEST_F(SprayTest, SeveralGunsHoldTheCountUntilTheLastIsDown) {
  register_everything();
  did(good_day());
  const auto first = state().up.front().spray;
  person = manager;
  StartSpray second = good_day();
  answer(second, GunItem::TrainedAndGun, CutAnswer::No, GunReason::RecordNotHere);
  did(second);
  EXPECT_EQ(state().up.size(), 2U);
  did(GunDown{booth, first});
  EXPECT_EQ(state().word, BoothWordNow::Spraying);
  did(GunDown{booth});
  EXPECT_EQ(state().word, BoothWordNow::Counting);
  refused(GunDown{booth}, Code::NotRunning);
}

TEST_F(SprayTest, AnOpenDeckGetsNoTimeByFormula) {
  person = manager;
  did(AddBooth{"deck", job::BoothKind::PrepDeck});
  const BoothId deck = shop_view.booths.back().booth;
  job::BoothFacts facts;
  facts.volume_m3 = 400;
  facts.rated_exhaust_m3_h = 9000;
  did(SetBoothFacts{deck, facts});
  const auto needed = [&] {
    return folds::clearance_needed(*shop_view.find(deck), shop_view.air.find(deck), now());
  };
  EXPECT_FALSE(needed());
  facts.fixed_clear_min = 30;
  did(SetBoothFacts{deck, facts});
  ASSERT_TRUE(needed());
  EXPECT_EQ(needed()->rule, trade::ClearanceRule::FixedTime);
  EXPECT_EQ(needed()->minutes, 30);
}

TEST_F(SprayTest, NothingIsSprayedInAMixingRoom) {
  did(AddBooth{"mix room", job::BoothKind::MixingRoom});
  StartSpray spray = good_day();
  spray.booth = shop_view.booths.back().booth;
  refused(spray, Code::NotAllowed);
}

TEST_F(SprayTest, BadNumbersAreRefusedByName) {
  job::BoothFacts facts;
  facts.volume_m3 = 0;
  refused(SetBoothFacts{booth, facts}, Code::OutOfRange);
  facts.volume_m3 = 90;
  facts.rated_exhaust_m3_h = 0;
  refused(SetBoothFacts{booth, facts}, Code::OutOfRange);
  facts.rated_exhaust_m3_h = {};
  facts.wanted_m_s = 0.5;
  refused(SetBoothFacts{booth, facts}, Code::Missing);
  refused(ReadBooth{booth, job::BoothReading::Exhaust, {0}}, Code::OutOfRange);
  refused(ReadBooth{booth, job::BoothReading::Velocity, {}}, Code::Missing);
  refused(ReadPanelTemperature{job, job::PanelGroup::Roof, 200}, Code::OutOfRange);
  refused(ReadClimate{job, booth, 22, 21, 0}, Code::OutOfRange);
  refused(LogSample{painter, "HDI", 0.1, "ppm", now_ms, now_ms - 1}, Code::OutOfRange);
  refused(LogSample{painter, "HDI", 0.1, "drops", now_ms - 1000, now_ms}, Code::OutOfRange);
}

TEST_F(SprayTest, ItWasSprayedWithoutIsSaidAfterwardsAndOnlyOfStops) {
  refused(ReportSprayedWithout{job, booth, {}}, Code::Missing);
  refused(ReportSprayedWithout{job, booth, {GunItem::GlovesSuitEyes}}, Code::OutOfRange);
  did(ReportSprayedWithout{job, booth, {GunItem::ExhaustFreshAir, GunItem::RightRespirator}});
  EXPECT_EQ(car().air.without.back().items.size(), 2U);
  EXPECT_EQ(state().word, BoothWordNow::NoTime) << "the booth has to clear, by what nobody knows";
  register_everything();
  EXPECT_EQ(state().word, BoothWordNow::NotCounting) << "nobody said that the exhaust runs";
  did(SayExhaust{booth, BoothWord::FreshAirDoorsShut});
  EXPECT_EQ(state().word, BoothWordNow::Counting);
}

TEST_F(SprayTest, ACartridgeCountsTheHoursOfTheGunSinceItsChange) {
  register_everything();
  const RespiratorId mask = respirator("mask 1", job::RespiratorKind::HalfAirPurifying);
  refused(ChangeCartridge{painter, hood, 8, "maker's data"}, Code::NotAllowed);
  refused(ChangeCartridge{painter, mask, 8, " "}, Code::Missing);
  did(ChangeCartridge{painter, mask, 1, "maker's data"});
  StartSpray spray = good_day();
  spray.respirator = mask;
  spray.activated = false;
  answer(spray, GunItem::FitTested, CutAnswer::No, GunReason::RecordNotHere);
  did(spray);
  wait_min(59);
  did(GunDown{booth});
  const auto used = shop_view.air.find(painter)->cartridges.front().used_h;
  ASSERT_EQ(used.size(), 1U);
  EXPECT_NEAR(used.front(), 1.0, 0.03);
  const auto facts = folds::gun_facts({shop_view, car(), booth, painter, mask, false, now()});
  const auto fact = std::find_if(facts.begin(), facts.end(), [](const auto& one) {
    return one.item == GunItem::CartridgeInTime;
  });
  ASSERT_NE(fact, facts.end());
  EXPECT_EQ(fact->known, false);
}

class CureTest : public SprayTest {
 protected:
  ProductId product(job::Product said) {
    const PersonId before = person;
    person = manager;
    did(SetProduct{{}, std::move(said)});
    person = before;
    return shop_view.air.products.back().product;
  }
  static job::Product clear() {
    job::Product out;
    out.product_name = "clear A";
    out.kind = job::ProductKind::Clear;
    out.steps = {{trade::CureMilestone::PolishFrom, {{20, 960}, {60, 30}}}};
    return out;
  }
};

TEST_F(CureTest, AClockRunsForEachMixAndPanelGroupFromTheLastCoat) {
  const ProductId clear_a = product(clear());
  did(MixProduct{job, clear_a, "77"});
  const MixId mix = car().air.mixes.back().mix;
  did(SayCoats{job, mix, {Panel::Hood, Panel::FrontBumper}, 2, {8}, "1.3 mm"});
  EXPECT_FALSE(folds::cure_of_car(car(), shop_view, now()).front().result)
      << "no temperature was read";
  did(ReadPanelTemperature{job, job::PanelGroup::Roof, 60});
  wait_min(40);
  const auto clocks = folds::cure_of_car(car(), shop_view, now());
  ASSERT_EQ(clocks.size(), 2U);
  const auto& roof = clocks[0].group == job::PanelGroup::Roof ? clocks[0] : clocks[1];
  const auto& plastic = clocks[0].group == job::PanelGroup::Roof ? clocks[1] : clocks[0];
  ASSERT_TRUE(roof.result);
  ASSERT_TRUE(*roof.result);
  EXPECT_GT((*roof.result)->standings.front().done_percent, 100);
  EXPECT_EQ((*roof.result)->standings.front().word, trade::CureWord::Gated) << "60 C to the touch";
  EXPECT_FALSE(plastic.result);
  did(CheckThumbnail{job, job::PanelGroup::Roof, false});
  did(ReadPanelTemperature{job, job::PanelGroup::Roof, 60});
  did(ReadPanelTemperature{job, job::PanelGroup::Roof, 24});
  const auto later = folds::cure_of_car(car(), shop_view, now());
  EXPECT_EQ((*later[0].result)->standings.front().word, trade::CureWord::Gated) << "not firm yet";
}

TEST_F(CureTest, AFilmThatWasSoftAtItsTimeTakesLongerOnOtherCars) {
  const ProductId clear_a = product(clear());
  did(MixProduct{job, clear_a, "77"});
  did(SayCoats{job, car().air.mixes.back().mix, {Panel::Hood}, 2, {8}, "1.3 mm"});
  did(ReadPanelTemperature{job, job::PanelGroup::Roof, 20});
  did(CheckThumbnail{job, job::PanelGroup::Plastic, true});
  EXPECT_FALSE(car().air.thumbnails.back().product) << "nothing was sprayed there";
  const auto learned = [&] {
    folds::LearnedFilm out;
    out.add(folds::lesson_of(car()));
    return out;
  };
  wait_min(600);
  did(CheckThumbnail{job, job::PanelGroup::Roof, false});
  EXPECT_NEAR(car().air.thumbnails.back().sheet_percent.value_or(0), 62.5, 0.5);
  EXPECT_EQ(learned().of(clear_a, {}).factor, 1) << "before its time nothing is learned";
  wait_min(600);
  did(CheckThumbnail{job, job::PanelGroup::Roof, false});
  EXPECT_NEAR(learned().of(clear_a, {}).factor, 1.25, 0.005) << "1,200 of 960 min";
  wait_min(240);
  did(CheckThumbnail{job, job::PanelGroup::Roof, true});
  const auto of = learned().of(clear_a, {});
  EXPECT_NEAR(of.factor, 1.5, 0.005) << "firm at 1,440 min";
  EXPECT_EQ(of.cars, 1);
  EXPECT_EQ(of.soft, 1);
  EXPECT_EQ(learned().of(clear_a, job).cars, 0) << "a car does not learn from itself";
  job::Product clear_b = clear();
  clear_b.product_name = "clear B";
  EXPECT_EQ(learned().of(product(clear_b), {}).factor, 1) << "another product";

  folds::LearnedFilm others = learned();
  for (std::uint8_t i = 1; i <= 5; ++i) {
    folds::Lesson firm;
    firm.job.bytes[0] = i;
    firm.films = {{clear_a, job::PanelGroup::Roof, 0, 100, now().wall_ms + i}};
    others.add(firm);
  }
  EXPECT_EQ(others.of(clear_a, {}).factor, 1) << "five cars since then were firm";
  EXPECT_EQ(others.of(clear_a, {}).cars, 5);
}

TEST_F(CureTest, PointsThatContradictEachOtherAreRefused) {
  person = manager;
  job::Product bad = clear();
  bad.steps = {{trade::CureMilestone::PolishFrom, {{20, 30}, {60, 960}}}};
  refused(SetProduct{{}, bad}, Code::Malformed);
  bad = clear();
  bad.air_min_c = 30;
  bad.air_max_c = 10;
  refused(SetProduct{{}, bad}, Code::OutOfRange);
}

TEST_F(CureTest, GlassIsNotDrivenBeforeTheMakersTableSaysSo) {
  job::Product urethane;
  urethane.product_name = "urethane A";
  urethane.kind = job::ProductKind::GlassUrethane;
  urethane.cure = trade::CureKind::MoistureCure;
  urethane.drive_away = {{"two bags", {{5, 30, 480}, {20, 50, 60}}}};
  const ProductId id = product(urethane);
  refused(SayBonded{job, id, "windshield", "no such case"}, Code::Missing);
  did(SayBonded{job, id, "windshield", "two bags"});
  const std::int64_t set_ms = car().air.bonds.back().at.wall_ms;
  auto until = folds::do_not_drive(car(), shop_view, now());
  ASSERT_TRUE(until);
  EXPECT_EQ(until->until_ms, set_ms + 480 * 60'000) << "air not known: the longest of all rows";
  did(ReadClimate{job, booth, 22, 21, 55});
  until = folds::do_not_drive(car(), shop_view, now());
  EXPECT_EQ(until->until_ms, set_ms + 60 * 60'000);
  did(ReadClimate{job, booth, 2, 2, 55});
  until = folds::do_not_drive(car(), shop_view, now());
  ASSERT_TRUE(until);
  EXPECT_FALSE(until->until_ms) << "colder than the table";
}

// From 20 C on it would take 960 minutes: forty at 60 C are believed, the hours after them are not.
TEST_F(CureTest, AWarmReadingIsBelievedForAnHourAndNoLongerThanItsBake) {
  const ProductId clear_a = product(clear());
  did(MixProduct{job, clear_a, "77"});
  did(SayCoats{job, car().air.mixes.back().mix, {Panel::Hood}, 2, {8}, "1.3 mm"});
  const auto clock = [&] { return folds::cure_of_car(car(), shop_view, now()).front(); };
  did(SayBake{job});
  did(ReadPanelTemperature{job, job::PanelGroup::Roof, 60});
  wait_min(9);
  did(SayBake{job, false});
  wait_min(500);
  EXPECT_TRUE(clock().read_again);
  ASSERT_TRUE(clock().result && *clock().result);
  // Ten minutes of 30 at 60 C, then 500 and some of 960 at 20 C.
  EXPECT_LT((*clock().result)->standings.front().done_percent, 92);
  EXPECT_GT((*clock().result)->standings.front().done_percent, 82);
  did(ReadPanelTemperature{job, job::PanelGroup::Roof, 18});
  EXPECT_FALSE(clock().read_again);
  EXPECT_EQ(clock().asked->readings.back().surface_c, 18);

  // What is read within the hour says itself how it cooled: straight between the two.
  did(ReadPanelTemperature{job, job::PanelGroup::Roof, 60});
  const auto before = clock().asked->readings.size();
  wait_min(110);
  did(ReadPanelTemperature{job, job::PanelGroup::Roof, 25});
  EXPECT_EQ(clock().asked->readings.size(), before + 1);
  did(ReadPanelTemperature{job, job::PanelGroup::Roof, 60});
  wait_min(130);
  did(ReadPanelTemperature{job, job::PanelGroup::Roof, 25});
  EXPECT_EQ(clock().asked->readings.size(), before + 5) << "two of them were taken, not read";

  did(SayBake{job});
  did(ReadPanelTemperature{job, job::PanelGroup::Roof, 60});
  const auto baked = clock().asked->readings.size();
  wait_min(29);
  did(SayBake{job, false});
  wait_min(5);
  did(ReadPanelTemperature{job, job::PanelGroup::Roof, 25});
  const auto list = clock().asked->readings;
  ASSERT_EQ(list.size(), baked + 2) << "it was as warm until the bake ended";
  EXPECT_EQ(list[baked].surface_c, 60);
  EXPECT_EQ(list[baked].at_min - list[baked - 1].at_min, 30);

  did(ReadPanelTemperature{job, job::PanelGroup::Roof, 60});
  wait_min(59);
  EXPECT_FALSE(clock().read_again);
  wait_min(10);
  EXPECT_TRUE(clock().read_again) << "no bake was said, and nobody read it for over an hour";
}

TEST_F(CureTest, APanelStandsAsItsLastCoatStands) {
  const ProductId clear_a = product(clear());
  for (const char* batch : {"77", "78"}) {
    did(MixProduct{job, clear_a, batch});
    did(SayCoats{job, car().air.mixes.back().mix, {Panel::Hood}, 2, {8}, "1.3 mm"});
    did(ReadPanelTemperature{job, job::PanelGroup::Roof, 20});
    wait_min(700);
  }
  const auto cures = folds::cure_of_car(car(), shop_view, now());
  const auto at = folds::standing_of(cures, Panel::Hood, trade::CureMilestone::PolishFrom);
  ASSERT_TRUE(at.standing);
  EXPECT_EQ(at.group->mix, car().air.mixes.back().mix);
  EXPECT_EQ(at.standing->word, trade::CureWord::NotYet);
  EXPECT_EQ(folds::standing_of(cures, Panel::FrontBumper, trade::CureMilestone::PolishFrom).group,
            nullptr);
  EXPECT_EQ(folds::standing_of(cures, Panel::Hood, trade::CureMilestone::Handle).group, nullptr);
}

class GlassTest : public CureTest {
 protected:
  void set_windshield(std::optional<std::int64_t> set_ms = {}) {
    job::Product urethane;
    urethane.product_name = "urethane A";
    urethane.kind = job::ProductKind::GlassUrethane;
    urethane.cure = trade::CureKind::MoistureCure;
    urethane.drive_away = {{"two bags", {{5, 30, 480}, {20, 50, 60}}}};
    did(SayBonded{job, product(urethane), "windshield", "two bags", set_ms});
  }
};

TEST_F(GlassTest, AClockThatJumpsForwardDoesNotLetTheCarDrive) {
  set_windshield();
  Moment later = now();
  later.wall_ms += 20 * 3'600'000LL;
  later.since_boot_ms += 30 * 60'000;
  auto until = folds::do_not_drive(car(), shop_view, later);
  ASSERT_TRUE(until);
  EXPECT_EQ(*until->until_ms - later.wall_ms, (480 - 30) * 60'000);
  later.boot.bytes[0] ^= 1;  // started anew: only the wall clock is left
  EXPECT_FALSE(folds::do_not_drive(car(), shop_view, later));
  later.wall_ms = now().wall_ms - 3'600'000;
  until = folds::do_not_drive(car(), shop_view, later);
  ASSERT_TRUE(until) << "set in the future: just now";
  EXPECT_EQ(*until->until_ms - later.wall_ms, 480 * 60'000);
}

TEST_F(GlassTest, ACarIsNotDeliveredBeforeTheTimeOfItsGlass) {
  set_windshield(now_ms - 60 * 60'000);
  const auto row = folds::floor_row(car());
  ASSERT_EQ(row.glass.size(), 1U);
  EXPECT_EQ(folds::do_not_drive(row.glass, shop_view, now())->until_ms,
            folds::do_not_drive(car(), shop_view, now())->until_ms);
  refused(Deliver{job}, Code::NotYet);
  wait_min(410);
  refused(Deliver{job}, Code::NotYet);
  wait_min(15);
  sign();
  did(Deliver{job});
  EXPECT_TRUE(folds::floor_row(car()).glass.empty()) << "a delivered car is nobody's to hold";
}

TEST_F(GlassTest, TheAirIsLoggedWhereTheCarStands) {
  set_windshield();
  did(ReadClimate{job, {}, 22, 21, 55});
  EXPECT_EQ(folds::do_not_drive(car(), shop_view, now())->until_ms,
            car().air.bonds.back().at.wall_ms + 60 * 60'000);
  refused(ReadClimate{job, random.make<BoothId>(), 22, 21, 55}, Code::Unknown);
}

TEST_F(CureTest, AHybridIsNotBakedWithoutTheCarmakersLimit) {
  OpenCar hybrid = usual_car();
  hybrid.plate = "K 1";
  hybrid.drive = job::Drive::Hybrid;
  const JobId other = did(hybrid).front().subject;
  refused(SayBake{other}, Code::NotYet);
  refused(ReadBakeLimit{other, 60, 30, ""}, Code::Missing);
  did(ReadBakeLimit{other, 60, 30, "repair manual"});
  did(SayBake{other});
  refused(SayBake{other}, Code::AlreadyRunning);
  did(SayBake{job});  // a combustion car
}

}  // namespace
}  // namespace jambline::acts
