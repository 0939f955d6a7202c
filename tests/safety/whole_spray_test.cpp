// A whole spray on the running program, with a finger and nothing else: what is asked before the
// gun, a stop, a must, the spraying, gun down, the clearance; over a restart, a suspend and a clock
// that is set. A stop has no way round: 29 CFR 1910.134, 1910.94(c), 1910.107.
#include <QDir>
#include <QTemporaryDir>
#include <gtest/gtest.h>

#include "folds/booth_state.h"
#include "tests/safety/spray_shop.h"
#include "tests/threads/screen_hand.h"

namespace jambline::safety {
namespace {

using folds::BoothWordNow;
using job::GunItem;

class WholeSpray : public testing::Test {
 protected:
  void SetUp() override {
    clock_.moment = {1'790'000'000'000, 5'000'000, BootId{{1}}, 0};  // 2026-09-21 14:13:20 UTC
    ASSERT_NO_FATAL_FAILURE(start_program());
    shop_ = make_shop(engine(), clock_.moment.wall_ms);
    job_ = open_car(engine(), shop_, "K 41-207");
    take_car(job_);
  }
  void TearDown() override { stop_program(); }

  void start_program() {
    app::Options options;
    options.size = QSize(412, 892);
    auto opened = app::Program::open(folder_.path().toStdString(), clock_, options);
    ASSERT_TRUE(opened);
    program_ = std::move(*opened);
    ASSERT_TRUE(program_->show());
    hand_ = std::make_unique<ScreenHand>(*program_);
  }
  void stop_program() {
    hand_.reset();
    program_.reset();
  }
  void take_car(const JobId& job, bool painter = true) {
    settle();
    session().choosePerson(QString::fromStdString((painter ? shop_.ivo : shop_.mara).hex()));
    session().openCar(QString::fromStdString(job.hex()));
    ASSERT_TRUE(hand_->wait_for([&] { return session().hasCar() && *session().job() == job; }));
    ASSERT_TRUE(hand_->go("Floor", "Car"));
  }

  engine::Engine& engine() { return program_->engine(); }
  screens::Session& session() { return program_->session(); }
  const folds::CarView& car() { return *engine().snapshot()->car; }
  folds::BoothState booth(const BoothId& booth) {
    const auto& shop = *engine().snapshot()->shop;
    return folds::booth_state(*shop.find(booth), shop.air.find(booth), clock_.moment);
  }
  void settle() {
    for (int i = 0; i < 2; ++i) {
      engine().drain();
      hand_->wait_for_quiet(30, 400);
    }
  }
  // Until the second's tick of the session has come to the screens.
  void tick() {
    emit session().secondPassed();
    settle();
  }

  QQuickItem* here(const QString& name) {
    QQuickItem* item = nullptr;
    hand_->wait_for([&] { return (item = hand_->find_named(name.toUtf8().constData())); }, 3000);
    return item;
  }
  // The middle of what can be seen of it; none: it is out of sight.
  std::optional<QPointF> seen_middle(QQuickItem* item) {
    QRectF seen = item->mapRectToScene(QRectF(0, 0, item->width(), item->height()));
    for (auto* above = item->parentItem(); above; above = above->parentItem())
      if (above->clip())
        seen &= above->mapRectToScene(QRectF(0, 0, above->width(), above->height()));
    seen &= QRectF(QPointF(0, 0), QSizeF(hand_->window().size()));
    if (seen.height() < item->height() / 2) return std::nullopt;
    return seen.center();
  }
  QPointF place_of(const QString& name) {
    QQuickItem* item = here(name);
    EXPECT_NE(item, nullptr) << name.toStdString();
    if (!item) return {};
    std::optional<QPointF> middle = seen_middle(item);
    EXPECT_TRUE(hand_->wait_for([&] {
      const auto before = middle;
      hand_->wait_for_quiet(40, 300);
      middle = seen_middle(item);
      return middle && before == middle;
    })) << name.toStdString()
        << " is out of sight";
    return middle.value_or(QPointF());
  }
  void tap(const QString& name) {
    const QPointF place = place_of(name);
    if (HasFailure()) return;
    hand_->touch(place);
    ++taps_;
    settle();
    hand_->wait_for([] { return false; }, 260);  // a second touch within 250 ms is not taken
  }
  // What lies further down in its sheet is dragged into sight first.
  void tap_scrolled(const QString& name) {
    QQuickItem* item = here(name);
    ASSERT_NE(item, nullptr) << name.toStdString();
    for (int i = 0; i < 8 && !seen_middle(item); ++i) {
      QPointF at(30, 640);
      hand_->press(at);
      for (int step = 0; step < 10; ++step) {
        at.ry() -= 20;
        hand_->move(at);
        hand_->wait_for_quiet(10, 40);
      }
      hand_->wait_for([] { return false; }, 120);  // no flick
      hand_->release(at);
      settle();
    }
    tap(name);
  }
  QString text_of_name(const char* name) {
    QQuickItem* item = here(QString::fromLatin1(name));
    return item ? item->property("name").toString() : QString();
  }
  void hold(const QString& name) {
    const QPointF place = place_of(name);
    if (HasFailure()) return;
    hand_->press(place);
    hand_->wait_for([] { return false; }, 700);
    hand_->release(place);
    settle();
  }
  static QString tile(GunItem item) {
    const auto word = word_of(item);
    return QStringLiteral("gun ") +
           QString::fromUtf8(word.data(), static_cast<qsizetype>(word.size()));
  }
  static std::vector<GunItem> of_now() {
    std::vector<GunItem> out;
    for (std::size_t i = 0; i < enum_words<GunItem>.size(); ++i)
      if (job::is_of_now(static_cast<GunItem>(i))) out.push_back(static_cast<GunItem>(i));
    return out;
  }
  void answer_all_but(std::optional<GunItem> left_out) {
    for (const GunItem item : of_now())
      if (item != left_out) tap(tile(item));
  }
  QString text_of(const char* name) {
    QQuickItem* item = here(QString::fromLatin1(name));
    return item ? item->property("text").toString() : QString();
  }
  QString digits() {
    auto* clearance = hand_->window()
                          .property("models")
                          .value<QObject*>()
                          ->property("clearance")
                          .value<QObject*>();
    return clearance ? clearance->property("digits").toString() : QString();
  }
  QString margin() {
    auto* countdown = hand_->window()
                          .property("models")
                          .value<QObject*>()
                          ->property("countdown")
                          .value<QObject*>();
    return countdown ? countdown->property("marginWords").toString() : QString();
  }
  void keep_picture(const char* name) {
    const QString folder = QStringLiteral(JAMBLINE_SCREENS_DIR);
    QDir().mkpath(folder);
    EXPECT_TRUE(hand_->window().grabWindow().save(
        folder + QStringLiteral("/safety-%1.png").arg(QLatin1String(name))));
  }
  void spray_and_gun_down() {
    tap("carMain");
    answer_all_but({});
    tap("gunMain");
    tap("gunDown");
    ASSERT_EQ(booth(shop_.booth).word, BoothWordNow::Counting);
  }

  QTemporaryDir folder_;
  FakeClock clock_;
  std::unique_ptr<app::Program> program_;
  std::unique_ptr<ScreenHand> hand_;
  SprayShop shop_;
  JobId job_;
  int taps_ = 0;
};

TEST_F(WholeSpray, AGoodDayIsSixTapsAndNothingIsFilledInBeforeThem) {
  tap("carMain");
  tap("gunBooth");
  tap("row0");
  ASSERT_EQ(text_of("gunBooth"), "Booth 1");
  keep_picture("before-the-gun");
  taps_ = 0;
  answer_all_but({});
  EXPECT_EQ(booth(shop_.booth).word, BoothWordNow::Idle) << "answering starts nothing";
  keep_picture("before-the-gun-answered");
  tap("gunMain");
  std::printf("figure taps_before_the_gun %d taps\n", taps_);
  EXPECT_LE(taps_, 6);
  EXPECT_EQ(booth(shop_.booth).word, BoothWordNow::Spraying);
  ASSERT_EQ(car().air.sprays.size(), 1U);
  for (const auto& check : car().air.sprays.back().checks)
    EXPECT_EQ(check.answer, job::CutAnswer::Yes);
  keep_picture("spraying");
  tap("gunDown");
  EXPECT_EQ(booth(shop_.booth).word, BoothWordNow::Counting);
  EXPECT_NEAR(booth(shop_.booth).left_s, smoke_test_min * 60, 2);
  keep_picture("clearing");
}

TEST_F(WholeSpray, AStopBlocksWithNoWayRound) {
  tap("carMain");
  tap("gunBooth");
  tap("row0");
  answer_all_but(GunItem::ExhaustFreshAir);
  // Not answered: the main act only asks for it.
  tap("gunMain");
  ASSERT_NE(here("gunAnswer1"), nullptr);
  EXPECT_EQ(hand_->find_named("gunAnswer2"), nullptr) << "a stop has no reasons";
  EXPECT_EQ(hand_->find_named("gunNote"), nullptr);
  tap("gunAnswer1");
  EXPECT_EQ(text_of("gunMain"), "Do not spray");
  ASSERT_NE(here("gunStop"), nullptr);
  keep_picture("do-not-spray");
  for (int i = 0; i < 3; ++i) tap("gunMain");
  hold("gunMain");
  EXPECT_EQ(booth(shop_.booth).word, BoothWordNow::Idle);
  EXPECT_TRUE(car().air.sprays.empty());
  // A tap on the report does nothing; a hold says afterwards that it was sprayed: no spray starts,
  // and the booth has to clear, which does not count without fresh air.
  tap("gunReport");
  EXPECT_TRUE(car().air.without.empty());
  hold("gunReport");
  ASSERT_EQ(car().air.without.size(), 1U);
  EXPECT_EQ(car().air.without.back().items, std::vector{GunItem::ExhaustFreshAir});
  EXPECT_TRUE(car().air.sprays.empty());
  EXPECT_EQ(booth(shop_.booth).word, BoothWordNow::NotCounting);
}

TEST_F(WholeSpray, WhoIsUnderDoNotSprayIsStoppedWhateverIsAnswered) {
  act(engine(), acts::SayDoNotSpray{shop_.ivo}, shop_.ivo);
  tap("carMain");
  tap("gunBooth");
  tap("row0");
  EXPECT_EQ(text_of("gunMain"), "Do not spray");
  tap("gunMain");
  hold("gunMain");
  EXPECT_TRUE(car().air.sprays.empty());
  EXPECT_EQ(booth(shop_.booth).word, BoothWordNow::Idle);
  keep_picture("do-not-spray-person");
}

TEST_F(WholeSpray, AMustBlocksAndItsOverrideIsRecordedByName) {
  tap("carMain");
  tap("gunBooth");
  tap("row0");
  answer_all_but(GunItem::GlovesSuitEyes);
  EXPECT_EQ(text_of("gunMain"), "Spray clock waits for 1 must");
  tap("gunMain");
  EXPECT_TRUE(car().air.sprays.empty());
  ASSERT_NE(here("gunNote"), nullptr);
  keep_picture("override");
  tap("gunAnswer1");  // the first reason
  EXPECT_EQ(text_of("gunMain"), "Start spray clock");
  keep_picture("override-said");
  tap("gunMain");
  ASSERT_EQ(car().air.sprays.size(), 1U);
  int passed = 0;
  for (const auto& check : car().air.sprays.back().checks)
    if (check.reason) {
      ++passed;
      EXPECT_EQ(check.item, GunItem::GlovesSuitEyes);
      EXPECT_EQ(check.reason, job::GunReason::NoneAtHand);
    }
  EXPECT_EQ(passed, 1);
  EXPECT_EQ(car().air.sprays.back().by, shop_.ivo);
  tap("gunDown");
  ASSERT_TRUE(hand_->go("Floor", "Sprayed"));
  ASSERT_NE(here("spray0"), nullptr);
  keep_picture("sprayed");
}

TEST_F(WholeSpray, AMixItsCoatsAndTheAirAreLoggedByHandAndItsPotLifeIsSeenToEnd) {
  job::Product clear;
  clear.product_name = "clear A";
  clear.kind = job::ProductKind::Clear;
  clear.activated = true;
  clear.humidity_max_percent = 70;
  clear.steps = {{trade::CureMilestone::PotLife, {{20, 60}, {30, 40}}}};
  act(engine(), acts::SetProduct{{}, clear}, shop_.mara);
  ASSERT_TRUE(hand_->go("Floor", "Sprayed"));
  taps_ = 0;
  tap("sprayedMain");
  tap("mixKeep");
  EXPECT_EQ(taps_, 2) << "the only product is chosen";
  ASSERT_EQ(car().air.mixes.size(), 1U);
  tap("sprayedMain");
  tap("coatsPanel0");
  tap_scrolled("coatsKeep");
  ASSERT_EQ(car().air.mixes.front().coats.size(), 1U);
  tap("sprayedAir");
  keep_picture("air-keys");
  for (const char digit : std::string("726985")) tap(QStringLiteral("key_") + QLatin1Char(digit));
  EXPECT_TRUE(text_of_name("climateAnswer").startsWith("Wait")) << "85 % is over the sheet's 70";
  keep_picture("air-wait");
  tap_scrolled("climateMain");
  ASSERT_EQ(car().air.climates.size(), 1U);
  EXPECT_NEAR(car().air.climates.front().air_c, 22.2, 0.05);
  EXPECT_EQ(car().air.climates.front().humidity_percent, 85);
  clock_.advance_ms(30 * 60'000);
  tick();
  EXPECT_EQ(margin(), "");
  clock_.advance_ms(25 * 60'000);
  tick();
  EXPECT_TRUE(margin().startsWith("clear A: pot life")) << margin().toStdString();
  keep_picture("pot-life");
}

TEST_F(WholeSpray, TheClearanceGoesOnOverRestartSuspendAndAChangedClock) {
  act(engine(), acts::SayBooth{job_, shop_.booth}, shop_.ivo);
  take_car(job_);
  spray_and_gun_down();
  EXPECT_EQ(digits(), "5:00");
  clock_.advance_ms(60'000);
  tick();
  EXPECT_EQ(digits(), "4:00");
  clock_.moment.wall_ms += 2 * 3'600'000;  // set two hours forward
  tick();
  EXPECT_EQ(digits(), "4:00");
  clock_.moment.wall_ms -= 4 * 3'600'000;  // and two back
  tick();
  EXPECT_EQ(digits(), "4:00");
  clock_.moment.wall_ms += 2 * 3'600'000;
  clock_.advance_ms(90'000);  // in suspend: no tick comes, the time since boot goes on
  tick();
  EXPECT_EQ(digits(), "2:30");

  stop_program();
  clock_.moment.boot = BootId{{2}};
  clock_.moment.since_boot_ms = 40'000;
  clock_.moment.wall_ms += 30'000;
  start_program();
  take_car(job_);
  EXPECT_EQ(booth(shop_.booth).word, BoothWordNow::Counting);
  EXPECT_NEAR(booth(shop_.booth).left_s, 120, 1);
  tick();
  EXPECT_NE(margin(), "");
  stop_program();
  clock_.moment.boot = BootId{{3}};  // its clock woke up in the past
  clock_.moment.since_boot_ms = 20'000;
  clock_.moment.wall_ms -= 24 * 3'600'000LL;
  start_program();
  EXPECT_EQ(booth(shop_.booth).word, BoothWordNow::Counting);
  EXPECT_NEAR(booth(shop_.booth).left_s, smoke_test_min * 60, 1) << "in doubt, the whole time";
}

TEST_F(WholeSpray, EveryChangeOfTheExhaustStartsTheWholeTimeAgain) {
  act(engine(), acts::SayBooth{job_, shop_.booth}, shop_.ivo);
  take_car(job_);
  spray_and_gun_down();
  for (const char* act_name : {"fanStopped", "switchedToBake", "doorOpened"}) {
    clock_.advance_ms(200'000);
    tick();
    tap(QString::fromLatin1(act_name));
    EXPECT_EQ(booth(shop_.booth).word, BoothWordNow::NotCounting) << act_name;
    clock_.advance_ms(3'600'000);
    tick();
    EXPECT_EQ(booth(shop_.booth).word, BoothWordNow::NotCounting) << act_name;
    tap("freshAir");
    EXPECT_EQ(booth(shop_.booth).word, BoothWordNow::Counting) << act_name;
    EXPECT_NEAR(booth(shop_.booth).left_s, smoke_test_min * 60, 2) << act_name;
  }
  tap("logClearance");
  EXPECT_EQ(booth(shop_.booth).word, BoothWordNow::Counting) << "not before the time is over";
  clock_.advance_ms(301'000);
  tick();
  EXPECT_EQ(booth(shop_.booth).word, BoothWordNow::TimeOver);
  tap("logClearance");
  EXPECT_EQ(booth(shop_.booth).word, BoothWordNow::Idle);
}

TEST_F(WholeSpray, TwoBoothsCountByThemselves) {
  act(engine(), acts::SayBooth{job_, shop_.booth}, shop_.ivo);
  take_car(job_);
  spray_and_gun_down();
  const JobId second = open_car(engine(), shop_, "K 41-208");
  clock_.advance_ms(60'000);
  take_car(second, false);
  tap("carMain");
  tap("gunBooth");
  tap("row1");
  ASSERT_EQ(text_of("gunBooth"), "Booth 2");
  keep_picture("second-booth");
  answer_all_but({});
  tap("gunMain");
  EXPECT_EQ(booth(shop_.other_booth).word, BoothWordNow::Spraying);
  EXPECT_EQ(booth(shop_.booth).word, BoothWordNow::Counting);
  EXPECT_TRUE(margin().contains("Booth 1")) << margin().toStdString();
  clock_.advance_ms(60'000);
  tick();
  tap("gunDown");
  EXPECT_NEAR(booth(shop_.booth).left_s, 180, 2);
  EXPECT_NEAR(booth(shop_.other_booth).left_s, 300, 2);
  clock_.advance_ms(190'000);
  tick();
  EXPECT_EQ(booth(shop_.booth).word, BoothWordNow::TimeOver);
  EXPECT_EQ(booth(shop_.other_booth).word, BoothWordNow::Counting);
  EXPECT_TRUE(margin().contains("Booth 2")) << margin().toStdString();
}

}  // namespace
}  // namespace jambline::safety
