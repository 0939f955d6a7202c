#include "screens/session.h"

#include "folds/film_of_panel.h"
#include "screens/inspect_view_model.h"
#include "screens/panel_films.h"
#include "screens/panel_rows.h"
#include "tests/screens/shop_desk.h"

namespace jambline::screens {
namespace {

class WhatASnapshotBrings : public ShopDesk {
 protected:
  void SetUp() override {
    ShopDesk::SetUp();
    be(add("Ivo", job::Role::Painter));
    open_car();
    settle();
    const auto count = [this](auto signal, int& into) {
      QObject::connect(session_.get(), signal, session_.get(), [&into] { ++into; });
    };
    count(&Session::shopChanged, shop_);
    count(&Session::carOrShopChanged, car_or_shop_);
    count(&Session::snapshotChanged, any_);
  }
  acts::OpenCar other_car() {
    acts::OpenCar open;
    open.plate = "K 41-207";
    open.color = {"G7", "deep green", "#1F4D3A"};
    open.body = job::BodyShape::FourDoorSedan;
    open.panels = {{job::Panel::Hood, true}};
    return open;
  }
  acts::PlaceMark nib(job::Panel panel, double x_mm) {
    acts::PlaceMark mark;
    mark.job = car().job;
    mark.panel = panel;
    mark.defect = job::DefectKind::Nib;
    mark.x_mm = x_mm;
    mark.y_mm = 300;
    mark.size = 1;
    return mark;
  }

  int shop_ = 0;
  int car_or_shop_ = 0;
  int any_ = 0;
};

TEST_F(WhatASnapshotBrings, IsToldToWhoShowsThatAndToNobodyElse) {
  act(other_car());
  EXPECT_EQ(shop_, 0);
  EXPECT_EQ(car_or_shop_, 0);
  EXPECT_GT(any_, 0);

  any_ = 0;
  act(nib(job::Panel::Hood, 300));
  EXPECT_EQ(shop_, 0);
  EXPECT_GT(car_or_shop_, 0);
  EXPECT_GT(any_, 0);

  car_or_shop_ = 0;
  act(acts::AddRack{"rack 2"});
  EXPECT_GT(shop_, 0);
  EXPECT_GT(car_or_shop_, 0);
}

TEST_F(WhatASnapshotBrings, IsAllToldAnewForAnotherPersonAnotherCarAndOtherUnits) {
  const auto told_all = [this] {
    const bool all = shop_ > 0 && car_or_shop_ > 0 && any_ > 0;
    shop_ = car_or_shop_ = any_ = 0;
    return all;
  };
  session_->choosePerson({});
  EXPECT_TRUE(told_all());
  session_->set_units(session_->units() == Units::Us ? Units::Metric : Units::Us);
  EXPECT_TRUE(told_all());
  session_->leaveCar();
  EXPECT_TRUE(told_all());
}

TEST_F(WhatASnapshotBrings, PanelsThatAreAsTheyWereAreKnown) {
  const auto before = session_->snapshot().car;
  act(nib(job::Panel::Hood, 300));
  const auto now = session_->snapshot().car;
  EXPECT_EQ(as_they_were(before.get(), now.get()), std::vector{job::Panel::FrontBumper});
  EXPECT_EQ(as_they_were(now.get(), now.get()).size(), now->panels.size());
  EXPECT_TRUE(as_they_were(nullptr, now.get()).empty());
  EXPECT_TRUE(as_they_were(now.get(), nullptr).empty());
}

// What is kept says the same as what is worked out anew.
TEST_F(WhatASnapshotBrings, AFilmThatWasKeptIsTheFilmOfItsPanel) {
  PanelFilms kept;
  kept.follow(session_->snapshot().car);
  for (const auto& panel : car().panels) kept.of(panel);
  act(acts::ReadFilm{.job = car().job,
                     .panel = job::Panel::Hood,
                     .when = job::FilmWhen::BeforeCutting,
                     .gauge = job::FilmGauge::Clear,
                     .unit = job::FilmUnit::Micron,
                     .typed = {48, 49, 50}});
  ASSERT_EQ(car().find(job::Panel::Hood)->film.size(), 1U);
  kept.follow(session_->snapshot().car);
  for (const auto& panel : car().panels) {
    const auto anew = folds::film_of_panel(panel, {folds::whole_sequence()});
    EXPECT_EQ(kept.of(panel).film.budget.clear_um, anew.budget.clear_um);
    EXPECT_EQ(kept.of(panel).film.source, anew.source);
  }
}

TEST_F(WhatASnapshotBrings, TheListOfAllMarksFollowsEveryPanel) {
  InspectViewModel screen(*session_);
  const auto marks = [&] { return screen.carMarks()->rowCount(); };
  EXPECT_EQ(marks(), 0);
  act(nib(job::Panel::Hood, 300));
  EXPECT_EQ(marks(), 1);
  act(nib(job::Panel::FrontBumper, 300));
  EXPECT_EQ(marks(), 2);
  act(acts::WithdrawMark{car().job, car().find(job::Panel::Hood)->marks.front().mark});
  EXPECT_EQ(marks(), 1);
  session_->leaveCar();
  EXPECT_EQ(marks(), 0);
}

}  // namespace
}  // namespace jambline::screens
