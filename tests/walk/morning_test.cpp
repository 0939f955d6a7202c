// A painter's morning on the running program, with a finger and nothing else: look over, what threw
// it, film, before you cut, the rounds, gone, last polish. Taps are counted as they are made.
#include <QDir>
#include <QTemporaryDir>
#include <cstdio>
#include <gtest/gtest.h>

#include "screens/floor_forecasts.h"
#include "screens/inspect_view_model.h"
#include "tests/threads/screen_hand.h"

namespace jambline::walk {
namespace {

constexpr int double_touch_ms = 420;  // two touches of one place within it count as one

class Morning : public testing::Test {
 protected:
  void SetUp() override {
    clock_.moment = {1'790'000'000'000, 1000, BootId{{1}}, -240};
    app::Options options;
    options.size = QSize(412, 892);
    auto opened = app::Program::open(folder_.path().toStdString(), clock_, options);
    ASSERT_TRUE(opened);
    program_ = std::move(*opened);
    ASSERT_TRUE(program_->show());
    hand_ = std::make_unique<ScreenHand>(*program_);
    ivo_ = act(acts::AddPerson{"Ivo", job::Role::Painter}).entries.empty()
               ? PersonId{}
               : program_->engine().snapshot()->shop->people.front().person;
    act(acts::AddRack{"rack 2"});
    act(acts::AddBooth{"Booth 1", job::BoothKind::Downdraft});
    acts::OpenCar car;
    car.plate = "K 41-207";
    car.color = {"G7", "deep green", "#1F4D3A"};
    car.body = job::BodyShape::TwoDoorHatchback;
    car.panels = {{.panel = job::Panel::Hood},
                  {.panel = job::Panel::Roof},
                  {.panel = job::Panel::FrontBumper, .on_car = false},
                  {.panel = job::Panel::RearBumper, .on_car = false},
                  {.panel = job::Panel::LeftMirror, .on_car = false}};
    car.operations = {{job::Stage::Inspect, "", 60},
                      {job::Stage::Correct, "", 90},
                      {job::Stage::Assemble, "", 60},
                      {job::Stage::LastPolish, "", 30}};
    job_ = act(car).job;
    session().choosePerson(QString::fromStdString(ivo_.hex()));
    session().openCar(QString::fromStdString(job_.hex()));
    ASSERT_TRUE(hand_->wait_for([&] { return session().hasCar(); }));
    ASSERT_TRUE(hand_->go("Floor", "Car"));
  }
  void TearDown() override {
    hand_.reset();
    program_.reset();
  }

  screens::Session& session() { return program_->session(); }
  const folds::CarView& car() { return *session().car(); }
  const folds::PanelView& panel(job::Panel panel) { return *car().find(panel); }

  engine::Wrote act(acts::Command command) {
    engine::Wrote out;
    program_->engine().post(std::move(command), ivo_, [&](Result<engine::Wrote> wrote) {
      if (wrote) out = *wrote;
      EXPECT_TRUE(wrote) << wrote.error().operation << ", " << wrote.error().subject;
    });
    program_->engine().drain();
    QCoreApplication::processEvents();
    return out;
  }
  // Until what was posted is on disk and shown.
  void settle() {
    for (int i = 0; i < 2; ++i) {
      program_->engine().drain();
      hand_->wait_for_quiet(30, 400);
    }
  }
  QQuickItem* here(const char* name) {
    QQuickItem* item = nullptr;
    hand_->wait_for([&] { return (item = hand_->find_named(name)) != nullptr; });
    return item;
  }
  // One tap on what has that name.
  void tap(const char* name) {
    QQuickItem* item = here(name);
    ASSERT_NE(item, nullptr) << name;
    const QRectF seen(QPointF(0, 0), QSizeF(hand_->window().size()));
    const auto middle_of = [&] {
      return item->mapToScene(QPointF(item->width() / 2, item->height() / 2));
    };
    QPointF middle = middle_of();
    // What still slides in is not where a finger sees it.
    ASSERT_TRUE(hand_->wait_for([&] {
      const QPointF before = middle;
      hand_->wait_for_quiet(40, 300);
      middle = middle_of();
      return middle == before;
    }));
    ASSERT_TRUE(seen.contains(middle)) << name << " lies out of sight";
    tap(middle);
  }
  void tap(QPointF scene) {
    hand_->touch(scene);
    ++taps_;
    settle();
    // A second touch within 250 ms of a button that changes its meaning is not taken.
    hand_->wait_for([] { return false; }, 260);
  }
  // A nib at a place of the shown panel, as parts of what is drawn.
  void tap_nib(double x, double y) {
    auto* map = hand_->pattern_of_panel();
    ASSERT_NE(map, nullptr);
    const QRectF drawn = map->contentPx();
    const auto before = marks();
    tap(map->mapToScene(drawn.topLeft() + QPointF(drawn.width() * x, drawn.height() * y)));
    hand_->wait_for([] { return false; }, double_touch_ms);
    ASSERT_EQ(marks(), before + 1) << "the tap was no mark";
  }
  std::size_t marks() {
    std::size_t all = 0;
    for (const auto& one : car().panels) all += one.marks.size();
    return all;
  }
  int open_marks() {
    int all = 0;
    for (const auto& one : car().panels) all += one.open_marks();
    return all;
  }
  void keep_picture(const char* name) {
    const QString folder = QStringLiteral(JAMBLINE_SCREENS_DIR);
    QDir().mkpath(folder);
    EXPECT_TRUE(hand_->window().grabWindow().save(
        folder + QStringLiteral("/morning-%1.png").arg(QLatin1String(name))));
  }

  // From the car: the hood with a cluster of nibs and one on the roof, loose parts to the rack.
  void look_over(int on_hood, int on_roof) {
    tap("carMain");
    tap("lookOverNext");
    while (program_->inspect().panel() != QString()) {
      if (program_->inspect().panel() == QStringLiteral("hood"))
        for (int i = 0; i < on_hood; ++i) tap_nib(0.2 + 0.2 * (i % 4), 0.3 + 0.35 * (i / 4));
      if (program_->inspect().panel() == QStringLiteral("roof"))
        for (int i = 0; i < on_roof; ++i) tap_nib(0.3, 0.3 + 0.2 * i);
      ASSERT_NO_FATAL_FAILURE(tap("panelMain"));
    }
  }
  void answer_before_cutting() {
    tap("cutRest");
    tap("cutKeep");
  }
  void start_walk() {
    tap("planMain");
    if (hand_->find_named("sheetAllows")) tap("sheetAllows");
    if (hand_->find_named("cutRest")) answer_before_cutting();
    if (!hand_->find_named("walkMain")) tap("planMain");
  }

  QTemporaryDir folder_;
  FakeClock clock_;
  std::unique_ptr<app::Program> program_;
  std::unique_ptr<ScreenHand> hand_;
  PersonId ivo_;
  JobId job_;
  int taps_ = 0;
};

TEST_F(Morning, FiveNibsOnTwoPanelsAndThreeLooseParts) {
  tap("carMain");
  taps_ = 0;  // counted from the map
  tap("lookOverNext");
  int nibs_of[] = {3, 2};
  int panel_with_nibs = 0;
  while (program_->inspect().panel() != QString()) {
    const int many = program_->inspect().loose() ? 0 : nibs_of[panel_with_nibs++];
    for (double i = 1; i <= many; ++i) tap_nib(i / (many + 1), i / (many + 1));
    ASSERT_NO_FATAL_FAILURE(tap("panelMain"));
  }
  std::printf("figure taps_five_nibs_three_parts %d taps\n", taps_);
  EXPECT_LE(taps_, 14);
  EXPECT_EQ(open_marks(), 5);
  for (const auto part :
       {job::Panel::FrontBumper, job::Panel::RearBumper, job::Panel::LeftMirror}) {
    EXPECT_EQ(panel(part).verdict, job::Verdict::Clean);
    EXPECT_TRUE(panel(part).edges_and_back);
    EXPECT_TRUE(panel(part).release.rack);
  }
}

TEST_F(Morning, FilmIsTypedOnTheBigKeys) {
  tap("carMain");
  tap("lookOverNext");
  const job::Panel film_panel = *program_->inspect().shown_panel();
  tap("panelFilm");
  keep_picture("film-empty");
  tap("filmMain");
  for (const char* reading : {"44", "45", "47"})  // tenths of a mil
    for (const char* digit = reading; *digit; ++digit)
      ASSERT_NO_FATAL_FAILURE(tap((std::string("key_") + *digit).c_str()));
  keep_picture("film");
  tap("filmMain");
  ASSERT_EQ(panel(film_panel).film.size(), 1U);
  EXPECT_EQ(panel(film_panel).film.front().typed, (std::vector<double>{4.4, 4.5, 4.7}));
}

TEST_F(Morning, FiveGapsAreTwelveTapsAndTheirMoveIsOne) {
  ASSERT_TRUE(hand_->go("Floor", "Fit"));
  settle();
  tap("fitPanel_hood");
  taps_ = 0;
  tap("fitMain");
  for (const char* gap : {"31", "34", "39", "46", "52"})  // tenths of a millimetre
    for (const char* digit = gap; *digit; ++digit)
      ASSERT_NO_FATAL_FAILURE(tap((std::string("key_") + *digit).c_str()));
  tap("fitMain");
  EXPECT_LE(taps_, 12);
  ASSERT_EQ(car().assembly.fits.size(), 1U);
  ASSERT_EQ(car().assembly.fits.front().points.size(), 5U);
  EXPECT_NEAR(car().assembly.fits.front().points.back().gap_mm, 5.2, 1e-9);
  keep_picture("fit-measured");
  taps_ = 0;
  tap("fitMain");
  EXPECT_EQ(taps_, 1);
  ASSERT_EQ(car().assembly.moves.size(), 1U);
  EXPECT_FALSE(car().assembly.moves.front().moves.empty());
  keep_picture("fit-moved");
}

TEST_F(Morning, APartIsHandedOnInTwoTapsOnEachSide) {
  act(acts::AddPerson{"Jo", job::Role::BodyTechnician});
  const PersonId jo = program_->engine().snapshot()->shop->people.back().person;
  act(acts::GiveVerdict{.job = job_,
                        .panel = job::Panel::FrontBumper,
                        .verdict = job::Verdict::Clean,
                        .edges_and_back = true});
  settle();
  taps_ = 0;
  tap("carParts");
  keep_picture("parts-giver");
  tap("partsMain");
  EXPECT_EQ(taps_, 2);
  const auto& release = panel(job::Panel::FrontBumper).release;
  ASSERT_EQ(release.state, folds::ReleaseState::Offered);
  EXPECT_EQ(release.to, job::Role::BodyTechnician);
  session().choosePerson(QString::fromStdString(jo.hex()));
  ASSERT_TRUE(hand_->go("Floor", "None"));
  settle();
  taps_ = 0;
  keep_picture("floor-taker");
  tap("offer0");
  tap("partsMain");
  EXPECT_EQ(taps_, 2);
  EXPECT_EQ(panel(job::Panel::FrontBumper).release.taker, jo);
  keep_picture("parts-taken");
}

TEST_F(Morning, AForgottenStartIsSaidFirstAndStandsInTheDaySheet) {
  const auto open_clock = [&] {
    QQuickItem* rule = here("clockRule");
    tap(rule->mapToScene(QPointF(60, rule->height() / 2)));
  };
  taps_ = 0;
  open_clock();
  tap("startedEarlier");
  tap("startedAgo20");
  keep_picture("clock-started-earlier");
  tap("clockWork0");
  EXPECT_EQ(taps_, 4);
  ASSERT_EQ(car().running.size(), 1U);
  EXPECT_EQ(car().running.front().start_ms, clock_.moment.wall_ms - 20 * 60'000);
  tap("stopClock");
  EXPECT_EQ(car().find(car().operations.front().operation)->clocked_ms, 20 * 60'000);
  tap("clockHours");
  QQuickItem* total = here("hoursTotal");
  ASSERT_NE(total, nullptr);
  EXPECT_TRUE(total->property("name").toString().contains("0:20:00"));
  keep_picture("hours-of-a-forgotten-start");
}

TEST_F(Morning, TheCarWaitsInTwoTapsFromTheClock) {
  QQuickItem* rule = here("clockRule");
  tap(rule->mapToScene(QPointF(60, rule->height() / 2)));
  taps_ = 0;
  tap("clockWait");
  tap("waitReason1");
  EXPECT_EQ(taps_, 2);
  ASSERT_EQ(car().visit.waits_for, (std::vector<job::WaitReason>{job::WaitReason::Cure}));
  tap("waitUsual1");
  EXPECT_EQ(car().visit.waits.front().expected_ms, clock_.moment.wall_ms + 2 * 3'600'000);
  keep_picture("wait-said");
  tap("waitReason1");
  EXPECT_EQ(car().visit.waits.size(), 1U) << "it waits already";
}

TEST_F(Morning, WhoHasAPartIsSettledByOneTap) {
  for (const char* name : {"Jo", "Ana"}) act(acts::AddPerson{name, job::Role::BodyTechnician});
  const auto people = program_->engine().snapshot()->shop->people;
  act(acts::GiveVerdict{.job = job_,
                        .panel = job::Panel::FrontBumper,
                        .verdict = job::Verdict::Clean,
                        .edges_and_back = true});
  act(acts::OfferRelease{job_, job::Panel::FrontBumper, job::Role::BodyTechnician, {}});
  ASSERT_TRUE(hand_->go("Floor", "Parts"));
  // What the first second asks for comes now, not over the answer below.
  program_->forecasts().look();
  ASSERT_TRUE(hand_->wait_for([&] { return program_->forecasts().ready(); }));
  settle();
  // As it is when another device's answer has come too.
  auto both = std::make_shared<engine::Snapshot>(session().snapshot());
  auto view = std::make_shared<folds::CarView>(*both->car);
  for (auto& one : view->panels)
    if (one.plan.panel == job::Panel::FrontBumper) {
      one.release.disputed = true;
      one.release.takers = {people[1].person, people[2].person};
    }
  both->car = view;
  session().publish(both);
  ASSERT_NE(here("hasIt1"), nullptr);
  keep_picture("parts-disputed");
  taps_ = 0;
  tap("hasIt1");
  EXPECT_EQ(taps_, 1);
  EXPECT_EQ(panel(job::Panel::FrontBumper).release.taker, people[2].person);
}

TEST_F(Morning, ABoothEventIsTwoTaps) {
  tap("boothTab");
  taps_ = 0;
  keep_picture("booth-empty");
  tap("boothEvent1");
  keep_picture("booth-event");
  tap("eventKeep");
  EXPECT_EQ(taps_, 2);
  const auto& events = session().shop().booth_events;
  ASSERT_EQ(events.size(), 1U);
  EXPECT_EQ(events.front().what, job::BoothEvent::NewHose);
  keep_picture("booth");
}

TEST_F(Morning, WhatIsNextStandsOnTheFirstCardAndIsBegunInOneTap) {
  ASSERT_TRUE(hand_->go("Floor", "None"));
  program_->forecasts().look();
  ASSERT_TRUE(hand_->wait_for([&] { return program_->forecasts().ready(); }));
  settle();
  keep_picture("next");
  taps_ = 0;
  tap("floorBegin");
  EXPECT_EQ(taps_, 1);
  ASSERT_EQ(car().running.size(), 1U);
  EXPECT_EQ(car().find(car().running.front().operation)->stage, job::Stage::Inspect);
  EXPECT_NE(here("carMain"), nullptr) << "the car is shown";
  tap("readyRow");
  ASSERT_NE(here("sumFigure"), nullptr);
  keep_picture("ready");
}

TEST_F(Morning, WhatThrewItIsShownAndTheCauseSet) {
  look_over(8, 1);
  tap("evidenceRow");
  ASSERT_NE(here("evidenceAnswer"), nullptr);
  keep_picture("evidence");
  tap("evidenceMain");
  ASSERT_TRUE(car().cause);
}

TEST_F(Morning, TheRoundsAreWalkedAMarkComesBackAndAllIsGone) {
  look_over(2, 1);
  tap("lookOverNext");  // all is looked at: on from here
  if (!hand_->find_named("planMain")) tap("carMain");
  keep_picture("plan");
  start_walk();
  ASSERT_NE(here("walkMain"), nullptr);
  EXPECT_TRUE(car().before_cut_of(ivo_));
  keep_picture("walk");
  const int rounds_from = taps_;
  for (int guard = 0;
       guard < 12 && program_->engine().snapshot()->car->find(job::Panel::Hood)->rounds.size() < 5;
       ++guard)
    ASSERT_NO_FATAL_FAILURE(tap("walkMain"));
  EXPECT_LE(taps_ - rounds_from, 5) << "one tap a round";
  keep_picture("walk-asked");
  tap("walkMain");
  EXPECT_EQ(open_marks(), 0);
}

// The car was assembled since: what is marked now is of handling, and has its own walk.
TEST_F(Morning, TheLastPolishIsTheSameWalkForMarksOfHandling) {
  for (const auto stage : {job::Stage::Inspect, job::Stage::Correct, job::Stage::Assemble})
    act(acts::FinishStage{job_, stage, true, job::WithoutShots::NoCamera});
  act(acts::PlaceMark{.job = job_,
                      .panel = job::Panel::Hood,
                      .x_mm = 500,
                      .y_mm = 600,
                      .defect = job::DefectKind::HandlingScratch});
  settle();
  ASSERT_EQ(panel(job::Panel::Hood).marks.front().stage, job::Stage::LastPolish);
  tap("carMain");
  if (!hand_->find_named("planMain")) tap("carMain");
  keep_picture("last-polish");
  start_walk();
  for (int guard = 0; guard < 8 && open_marks() > 0; ++guard)
    ASSERT_NO_FATAL_FAILURE(tap("walkMain"));
  EXPECT_EQ(open_marks(), 0);
  for (const auto& round : panel(job::Panel::Hood).rounds)
    EXPECT_EQ(round.stage, job::Stage::LastPolish);
  EXPECT_FALSE(panel(job::Panel::Hood).rounds.empty());
}

}  // namespace
}  // namespace jambline::walk
