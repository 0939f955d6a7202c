// What was sprayed: mixes, coats, air and bake. Climate: trade/climate.h against its own tables;
// pot life as typed from the sheet.
#include "screens/sprayed_view_model.h"

#include "tests/screens/gun_desk.h"

namespace jambline::screens {
namespace {

class SprayedScreen : public GunDesk {
 protected:
  void SetUp() override {
    GunDesk::SetUp();
    session_->set_units(Units::Metric);
    clear_ = product("clear A", job::ProductKind::Clear, true, {{20, 60}});
    base_ = product("base A", job::ProductKind::Base, false);
  }
  static QString hex(const ProductId& id) { return QString::fromStdString(id.hex()); }
  ProductId clear_, base_;
};

TEST_F(SprayedScreen, AMixIsTwoTapsAndItsPotLifeRuns) {
  SprayedViewModel screen(*session_);
  EXPECT_EQ(screen.rowWords(), "nothing logged yet");
  screen.startMix({});
  EXPECT_TRUE(screen.mixWaits());
  screen.chooseProduct(hex(clear_));
  EXPECT_FALSE(screen.asksApproval()) << "a clear has no color";
  screen.setBatch("77");
  screen.setAgoMin(5);
  screen.keepMix();
  settle();
  ASSERT_EQ(car().air.mixes.size(), 1U);
  EXPECT_EQ(cell(screen.mixes(), 0, "words"), "mixed 14:08, Ivo · batch 77");
  EXPECT_EQ(cell(screen.mixes(), 0, "potWords"), "pot life until 15:08, 55 min left");
  EXPECT_TRUE(screen.countdowns().empty());
  wait_min(50);
  ASSERT_EQ(screen.countdowns().size(), 1U) << "5 minutes before its end";
  EXPECT_EQ(screen.countdowns().front().margin, "clear A: pot life ends 15:08");
  wait_min(6);
  ASSERT_EQ(screen.countdowns().size(), 1U);
  EXPECT_EQ(screen.countdowns().front().row,
            "clear A: pot life over since 15:08. Do not spray it.");
  wait_min(10);
  EXPECT_TRUE(screen.countdowns().empty());
  screen.startMix({});
  screen.chooseProduct(hex(clear_));
  EXPECT_EQ(screen.batch(), "77") << "the can is usually the same";
}

TEST_F(SprayedScreen, TwoMixesHaveTheirOwnPotLives) {
  SprayedViewModel screen(*session_);
  act(acts::MixProduct{car().job, clear_, "1"});
  wait_min(20);
  act(acts::MixProduct{car().job, clear_, "2"});
  EXPECT_EQ(cell(screen.mixes(), 0, "potWords"), "pot life until 15:33, 1 h left");
  EXPECT_EQ(cell(screen.mixes(), 1, "potWords"), "pot life until 15:13, 40 min left");
  EXPECT_EQ(screen.rowWords(), "2 mixes");
}

TEST_F(SprayedScreen, AClockThatIsSetDoesNotLengthenAPotLifeAndAChangedMixIsNotMixedAnew) {
  SprayedViewModel screen(*session_);
  act(acts::MixProduct{car().job, clear_, "1"});
  wait_min(30);
  clock_.moment.wall_ms -= 2 * 3'600'000;
  const auto lives = folds::pot_lives(car(), session_->shop(), clock_.moment);
  ASSERT_TRUE(lives.front().left_s);
  EXPECT_NEAR(*lives.front().left_s, 30 * 60, 1);
  clock_.moment.wall_ms += 2 * 3'600'000;
  screen.startMix(cell(screen.mixes(), 0, "key").toString());
  EXPECT_TRUE(screen.changing());
  screen.setBatch("1b");
  screen.keepMix();
  settle();
  ASSERT_EQ(car().air.mixes.size(), 1U);
  EXPECT_EQ(car().air.mixes.front().batch, "1b");
  EXPECT_EQ(cell(screen.mixes(), 0, "potWords"), "pot life until 15:13, 30 min left");
  Moment other_boot = clock_.moment;
  other_boot.boot.bytes[0] = 9;
  other_boot.wall_ms -= 24 * 3'600'000LL;
  EXPECT_FALSE(folds::pot_lives(car(), session_->shop(), other_boot).front().left_s)
      << "from the future: nothing is said";
}

TEST_F(SprayedScreen, WarmerThanTheSheetEndsSooner) {
  act(acts::MixProduct{car().job, clear_, "1"});
  act(acts::ReadClimate{car().job, booth_, 26, 24, 50});
  const auto lives = folds::pot_lives(car(), session_->shop(), clock_.moment);
  EXPECT_TRUE(lives.front().at_most);
  EXPECT_NEAR(*lives.front().left_s, 60 * 60, 1);
}

TEST_F(SprayedScreen, CoatsGoOnPlannedPanelsOnly) {
  SprayedViewModel screen(*session_);
  act(acts::MixProduct{car().job, base_, "1", true});
  EXPECT_EQ(screen.mainText(), "Log coats of base A");
  screen.startCoats(screen.mainMix());
  EXPECT_TRUE(screen.coatsWait());
  screen.flipPanel("roof");
  EXPECT_TRUE(screen.chosenPanels().isEmpty()) << "the roof is not in this job";
  screen.flipPanel("hood");
  screen.setCoats(3);
  screen.setFlashMin(8);
  screen.setGun("gravity gun, 1.3 mm");
  screen.keepCoats();
  settle();
  const auto& coat = car().air.mixes.front().coats.front();
  EXPECT_EQ(coat.coats, 3);
  EXPECT_EQ(coat.flash_min, (std::vector<double>{8, 8}));
  EXPECT_EQ(cell(screen.mixes(), 0, "coats").toStringList().join("|"),
            "Hood: 3 coats, flash 8 min, gravity gun, 1.3 mm");
  EXPECT_EQ(screen.mainText(), "Log a mix");
  screen.startCoats(screen.mainMix());
  EXPECT_EQ(screen.gun(), "gravity gun, 1.3 mm");
}

TEST_F(SprayedScreen, ATriCoatWantsALetDownPanel) {
  acts::PlanPanel plan{car().job, car().find(job::Panel::Hood)->plan};
  plan.plan.finish = job::Finish::TriCoat;
  act(plan);
  SprayedViewModel screen(*session_);
  screen.startMix({});
  screen.chooseProduct(hex(base_));
  EXPECT_TRUE(screen.asksApproval());
  EXPECT_TRUE(screen.approvalWords().contains("let-down panel"));
  screen.keepMix();
  settle();
  EXPECT_FALSE(car().air.mixes.front().color_approved);
}

TEST_F(SprayedScreen, AirIsTypedAndTheReasonToWaitIsSaid) {
  SprayedViewModel screen(*session_);
  auto& air = *screen.climate();
  act(acts::MixProduct{car().job, clear_, "1"});
  air.begin();
  air.type(22);
  air.type(21);
  air.type(50);
  ASSERT_TRUE(air.complete());
  EXPECT_EQ(air.answer(), "Go for the paint");
  // Magnus, 22 C and 50 %: dew point 11.1 C (WMO form), 9.9 C under the surface.
  EXPECT_EQ(cell(air.gates(), 0, "value"), "10 °C");
  EXPECT_EQ(cell(air.gates(), 0, "limit"), "needs 3 °C or more");
  air.chooseField(2);
  air.type(85);
  EXPECT_EQ(air.answer(), "Wait");
  EXPECT_EQ(air.reason(), "Surface too near the dew point, more humid than the sheet.");
  air.chooseField(0);
  EXPECT_FALSE(air.complete()) << "it is typed again";
  air.type(99);
  EXPECT_NE(air.wrong(), "");
  air.type(22);
  air.act();
  settle();
  ASSERT_EQ(car().air.climates.size(), 1U);
  EXPECT_EQ(car().air.climates.front().humidity_percent, 85);
  EXPECT_TRUE(air.lastWords().startsWith("Wait: air 22 °C"));
  wait_min(61);
  EXPECT_TRUE(air.lastWords().startsWith("Read it again"));
}

TEST_F(SprayedScreen, WindowsOfTwoProductsThatDoNotMeetAreSaid) {
  be(mara_);
  job::Product cold;
  cold.product_name = "cold clear";
  cold.kind = job::ProductKind::Clear;
  cold.air_max_c = 15;
  act(acts::SetProduct{{}, cold});
  const ProductId other = session_->shop().air.products.back().product;
  act(acts::MixProduct{car().job, clear_, "1"});
  act(acts::MixProduct{car().job, other, "2"});
  SprayedViewModel screen(*session_);
  auto& air = *screen.climate();
  air.begin();
  for (const int value : {22, 21, 50}) air.type(value);
  EXPECT_EQ(air.answer(), "Wait");
  EXPECT_TRUE(air.reason().startsWith("The windows"));
}

TEST_F(SprayedScreen, AnElectricCarIsNotBakedBeforeTheLimitIsReadAndIsWarnedUnderIt) {
  open_spray_car(job::Drive::Electric);
  SprayedViewModel screen(*session_);
  auto& bake = *screen.bake();
  EXPECT_TRUE(bake.mainWaits());
  EXPECT_EQ(bake.mainSecond(), "waits for the carmaker's limit");
  bake.act();
  settle();
  EXPECT_FALSE(bake.running());
  bake.beginLimit();
  bake.type(15);
  EXPECT_NE(bake.wrong(), "");
  bake.type(60);
  bake.type(30);
  EXPECT_TRUE(bake.keepWaits(" "));
  bake.takeOrKeep("repair manual");
  settle();
  EXPECT_EQ(bake.limitWords(), "At most 60 °C for 30 min: repair manual, read by Ivo");
  bake.act();
  settle();
  EXPECT_TRUE(bake.running());
  EXPECT_EQ(bake.warning(), "");
  act(acts::ReadPanelTemperature{car().job, job::PanelGroup::Roof, 54.9});
  EXPECT_EQ(bake.warning(), "");
  act(acts::ReadPanelTemperature{car().job, job::PanelGroup::Roof, 55});
  EXPECT_EQ(bake.warning(), "A panel is at 55 °C, near the carmaker's limit of 60 °C.");
  act(acts::ReadPanelTemperature{car().job, job::PanelGroup::Sides, 61});
  EXPECT_TRUE(bake.warning().contains("end the bake"));
  wait_min(31);
  EXPECT_TRUE(bake.warning().contains("30 min are over"));
  bake.act();
  settle();
  EXPECT_FALSE(bake.running());
  EXPECT_EQ(bake.warning(), "");
}

TEST_F(SprayedScreen, ABakeThatBeginsWhileTheAirIsCountedStopsTheCount) {
  register_everything();
  BeforeGunViewModel gun(*session_);
  gun.open({});
  answer_now(gun);
  gun.start();
  settle();
  act(acts::ReadBooth{booth_, job::BoothReading::SmokeTest, {5}});
  act(acts::GunDown{booth_});
  EXPECT_EQ(booth_now(), folds::BoothWordNow::Counting);
  SprayedViewModel screen(*session_);
  screen.bake()->act();
  settle();
  EXPECT_TRUE(screen.bake()->running());
  EXPECT_EQ(booth_now(), folds::BoothWordNow::NotCounting);
}

}  // namespace
}  // namespace jambline::screens
