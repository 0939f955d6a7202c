// One booth while it is sprayed in and while it clears, and what counts down for every screen. How
// long and whether it counts is tested with folds and trade; here that the screens follow them.
#include "screens/clearance_view_model.h"

#include "screens/countdown_view_model.h"
#include "tests/screens/booth_desk.h"

namespace jambline::screens {
namespace {

using State = ClearanceViewModel::State;

class ClearanceScreen : public BoothDesk {
 protected:
  void SetUp() override {
    BoothDesk::SetUp();
    smoke_test(booth_, 5, 20);
    screen_.emplace(*session_, knocks_);
    screen_->open(key(booth_));
  }
  void TearDown() override {
    screen_.reset();
    BoothDesk::TearDown();
  }
  void spray_and_gun_down() {
    spray(booth_);
    later(8);
    screen_->gunDown();
    settle();
  }
  std::optional<ClearanceViewModel> screen_;
};

TEST_F(ClearanceScreen, FromGunDownTheDigitsRunOnWhatWasMeasured) {
  EXPECT_EQ(screen_->state(), State::Nothing);
  spray(booth_);
  EXPECT_EQ(screen_->state(), State::Spraying);
  EXPECT_TRUE(screen_->mine());
  later(12.5);
  EXPECT_EQ(screen_->digits(), "12:30");
  screen_->gunDown();
  settle();
  EXPECT_EQ(screen_->state(), State::Counting);
  EXPECT_EQ(screen_->digits(), "5:00");
  EXPECT_EQ(screen_->headWords(), "Stay out");
  EXPECT_EQ(screen_->restsWords(), "smoke test 5:00, measured Sep 1");
  EXPECT_EQ(screen_->clearsAt(), "14:31") << "14:13:20, 12:30 and 5:00 later: never a minute early";
  later(1.5);
  EXPECT_EQ(screen_->digits(), "3:30");
  EXPECT_NEAR(screen_->gone(), 0.3, 1e-9);
  EXPECT_FALSE(screen_->lastSeconds());
  later(3.4);
  EXPECT_EQ(screen_->digits(), "0:06");
  EXPECT_TRUE(screen_->lastSeconds());
  screen_->logOver();
  settle();
  EXPECT_TRUE(failed_) << "six seconds early";
  failed_.reset();
  later(0.2);
  EXPECT_EQ(screen_->state(), State::TimeOver);
  EXPECT_EQ(screen_->headWords(), "The time is over");
  EXPECT_EQ(screen_->whyWords(), "Then your local rule decides, not this clock.");
  int logged = 0;
  QObject::connect(&*screen_, &ClearanceViewModel::logged, &*screen_, [&] { ++logged; });
  screen_->logOver();
  settle();
  EXPECT_EQ(logged, 1);
  EXPECT_EQ(screen_->state(), State::Nothing);
  EXPECT_FALSE(failed_);
}

TEST_F(ClearanceScreen, FanBakeAndDoorEachStartTheWholeTimeAgain) {
  spray_and_gun_down();
  const std::pair<void (ClearanceViewModel::*)(), const char*> stops[] = {
      {&ClearanceViewModel::fanStopped, "The fan stopped. Nothing counts."},
      {&ClearanceViewModel::switchedToBake, "Bake sends the air round again. Nothing counts."},
      {&ClearanceViewModel::doorOpened, "A door was opened. Nothing counts."}};
  int restarts = 0;
  for (const auto& [stop, why] : stops) {
    later(4);
    ((*screen_).*stop)();
    settle();
    EXPECT_EQ(screen_->state(), State::NotCounting);
    EXPECT_EQ(screen_->whyWords(), why);
    EXPECT_EQ(screen_->clearsAt(), "");
    later(600);
    EXPECT_EQ(screen_->digits(), "5:00");
    screen_->freshAir();
    settle();
    EXPECT_EQ(screen_->state(), State::Counting);
    EXPECT_EQ(screen_->digits(), "5:00");
    EXPECT_EQ(screen_->restartWords(), ++restarts == 1
                                           ? "begun again once"
                                           : "begun again " + QString::number(restarts) + " times");
  }
}

TEST_F(ClearanceScreen, OfASmokeTestNoPercentageIsSaid) {
  act(acts::SetBoothFacts{booth_, {.volume_m3 = 98, .rated_exhaust_m3_h = 20'000}});
  spray_and_gun_down();
  screen_->openSum();
  QString all = screen_->sum()->method() + screen_->sum()->note();
  for (int row = 0; row < screen_->sum()->rows()->rowCount(); ++row)
    for (const int role : {0, 1, 2, 3})
      all += screen_->sum()->rows()->index(row, 0).data(Qt::UserRole + role).toString() + " ";
  EXPECT_TRUE(all.contains("smoke test"));
  EXPECT_FALSE(all.contains("%")) << all.toStdString();
}

TEST_F(ClearanceScreen, WithoutATestItSaysWhatItRestsOn) {
  const BoothId other = add_booth("Booth 2", job::BoothKind::CrossDraft);
  spray(other);
  screen_->open(key(other));
  screen_->gunDown();
  settle();
  EXPECT_EQ(screen_->state(), State::NoTime);
  EXPECT_EQ(screen_->digits(), "");
  act(acts::SetBoothFacts{other, {.volume_m3 = 98, .rated_exhaust_m3_h = 20'000}});
  // 3 x ln(1000) x 98/20000 h = 6.09 min: CDC 2003, appendix B, with the factor of 3.
  EXPECT_EQ(screen_->digits(), "6:06");
  EXPECT_EQ(screen_->restsWords(), "formula, the weaker basis: do a smoke test");
  smoke_test(other, 4, 500);
  EXPECT_EQ(screen_->digits(), "6:06");
  EXPECT_TRUE(screen_->restsWords().contains("overdue")) << screen_->restsWords().toStdString();
}

TEST_F(ClearanceScreen, AnOpenDeckGetsNoTimeByFormula) {
  const BoothId deck = add_booth("Deck", job::BoothKind::PrepDeck);
  act(acts::SetBoothFacts{deck, {.volume_m3 = 98, .rated_exhaust_m3_h = 20'000}});
  spray(deck);
  screen_->open(key(deck));
  screen_->gunDown();
  settle();
  EXPECT_EQ(screen_->state(), State::NoTime);
  EXPECT_TRUE(screen_->whyWords().startsWith("An open deck is no mixed room"));
  act(acts::SetBoothFacts{deck, {.fixed_clear_min = 120}});
  EXPECT_EQ(screen_->digits(), "120");
  EXPECT_EQ(screen_->digitsUnit(), "minutes");
  EXPECT_EQ(screen_->restsWords(), "the shop's fixed time, no test");
}

TEST_F(ClearanceScreen, OnSomebodyElsesScreenItIsReadOnlyUntilItIsSaidTwice) {
  spray(booth_);
  be(rosa_);
  EXPECT_FALSE(screen_->mine());
  EXPECT_EQ(screen_->headWords(), "Spraying, stay out");
  screen_->gunDown();
  settle();
  EXPECT_EQ(screen_->state(), State::Spraying);
  screen_->gunDownOf(screen_->sprayers()->index(0, 0).data(Qt::UserRole).toString());
  settle();
  EXPECT_EQ(screen_->state(), State::Counting);
  EXPECT_FALSE(failed_);
}

TEST_F(ClearanceScreen, TwoGunsInOneBoothAreBothToBePutDown) {
  spray(booth_);
  const PersonId ana = add("Ana", job::Role::Painter);
  be(ana);
  spray(booth_);
  EXPECT_EQ(screen_->sprayers()->rowCount(), 2);
  screen_->gunDown();
  settle();
  EXPECT_EQ(screen_->state(), State::Spraying);
  be(ivo_);
  screen_->gunDown();
  settle();
  EXPECT_EQ(screen_->state(), State::Counting);
}

TEST_F(ClearanceScreen, ItGoesOnOverARestartASuspendAndAChangedClock) {
  spray_and_gun_down();
  later(2);
  const Moment two_in = clock_.moment;
  const auto shows = [&](const Moment& now) {
    clock_.moment = now;
    emit session_->secondPassed();
    return screen_->digits();
  };
  EXPECT_EQ(shows(two_in), "3:00");
  Moment bent = two_in;
  bent.wall_ms += 3'600'000;
  EXPECT_EQ(shows(bent), "3:00") << "the clock was set forward";
  bent.wall_ms = two_in.wall_ms - 3'600'000;
  EXPECT_EQ(shows(bent), "3:00") << "and back";
  Moment slept = two_in;
  slept.wall_ms += 60'000;
  slept.since_boot_ms += 60'000;  // goes on in suspend
  EXPECT_EQ(shows(slept), "2:00");
  // The program is killed and started again in the same boot.
  screen_.reset();
  close();
  open();
  be(ivo_);
  screen_.emplace(*session_, knocks_);
  screen_->open(key(booth_));
  EXPECT_EQ(screen_->digits(), "2:00");
  // The machine is started again: only the wall clock is left.
  screen_.reset();
  close();
  clock_.moment.boot.bytes[0] = 9;
  clock_.moment.since_boot_ms = 5000;
  clock_.moment.wall_ms += 30'000;
  open();
  be(ivo_);
  screen_.emplace(*session_, knocks_);
  screen_->open(key(booth_));
  EXPECT_EQ(screen_->digits(), "1:30");
  clock_.moment.wall_ms -= 86'400'000;
  emit session_->secondPassed();
  EXPECT_EQ(screen_->digits(), "5:00") << "set back a day: the whole time, never less";
}

TEST_F(ClearanceScreen, TheCardAtTheEndOfSprayingIsPutAwayWithOneTap) {
  EXPECT_FALSE(screen_->wasteShown());
  spray_and_gun_down();
  EXPECT_TRUE(screen_->wasteShown());
  screen_->wasteSeen();
  EXPECT_FALSE(screen_->wasteShown());
  spray_and_gun_down();
  EXPECT_TRUE(screen_->wasteShown());
}

TEST_F(ClearanceScreen, TheMarginNamesTheMostUrgentOfSeveralBooths) {
  CountdownViewModel count(*session_, knocks_);
  EXPECT_EQ(count.marginWords(), "");
  const BoothId other = add_booth("Booth 2", job::BoothKind::CrossDraft);
  smoke_test(other, 9);
  spray(other);
  screen_->open(key(other));
  screen_->gunDown();
  settle();
  EXPECT_EQ(count.marginWords(), "Booth 2 clears 14:23") << "14:13:20 and 9:00";
  screen_->open(key(booth_));
  spray_and_gun_down();
  EXPECT_EQ(count.marginWords(), "Booth 2 clears 14:23") << "1:00 left, the other 5:00";
  EXPECT_TRUE(count.rowShown());
  EXPECT_EQ(count.rowWords(), "Booth 2: 1:00. Stay out");
  later(1.1);
  EXPECT_EQ(count.marginWords(), "Booth 1 clears 14:27");
  EXPECT_TRUE(count.rowOver());
  EXPECT_EQ(count.rowWords(), "Booth 2: the time is over. Log it.");
  EXPECT_EQ(count.rowBooth(), key(other));
  later(3.5);
  EXPECT_EQ(count.rowWords(), "Booth 1: 0:24. Stay out") << "what still counts comes first";
}

TEST_F(ClearanceScreen, ItKnocksAtTheEndAndAgainAfterOneAndThreeMinutesUntilItIsLogged) {
  CountdownViewModel count(*session_, knocks_);
  spray_and_gun_down();
  later(4.9);
  EXPECT_EQ(knocks_.count, 0);
  later(0.2);
  EXPECT_EQ(knocks_.count, 1);
  later(0.5);
  EXPECT_EQ(knocks_.count, 1);
  later(0.6);
  EXPECT_EQ(knocks_.count, 2);
  later(1);
  EXPECT_EQ(knocks_.count, 2);
  later(1);
  EXPECT_EQ(knocks_.count, 3);
  later(60);
  EXPECT_EQ(knocks_.count, 3);
  CountdownViewModel late(*session_, knocks_);
  later(1);
  EXPECT_EQ(knocks_.count, 3) << "a start with a time long over is silent";
  screen_->logOver();
  settle();
  EXPECT_FALSE(count.rowShown());
  EXPECT_EQ(count.marginWords(), "");
}

TEST_F(ClearanceScreen, ADeviceWithoutALoudspeakerSaysSo) {
  EXPECT_TRUE(screen_->soundWords().contains("while this program runs"));
  knocks_.loud = false;
  screen_->open(key(booth_));
  EXPECT_TRUE(screen_->soundWords().contains("no sound"));
}

}  // namespace
}  // namespace jambline::screens
