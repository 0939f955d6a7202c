// A car whose hood and front bumper cover were sprayed with a clear of our own invention, and the
// screens of its cure.
#pragma once

#include "screens/bond_view_model.h"
#include "screens/cure_view_model.h"
#include "screens/product_view_model.h"
#include "tests/screens/correct_desk.h"

namespace jambline::screens {

class CureDesk : public CorrectDesk {
 protected:
  void SetUp() override {
    CorrectDesk::SetUp();
    session_->set_units(Units::Metric);
    rosa_ = add("Rosa", job::Role::Manager);
    be(rosa_);
    act(acts::NameShop{"shop", "UTC"});
    open_car();
    work_ = std::make_unique<CureWork>(*session_);
    cure_ = std::make_unique<CureViewModel>(*session_, *work_);
  }
  void TearDown() override {
    cure_.reset();
    work_.reset();
    ShopDesk::TearDown();
  }
  ProductId product(job::Product said) {
    act(acts::SetProduct{{}, std::move(said)});
    EXPECT_FALSE(failed_);
    return session_->shop().air.products.back().product;
  }
  static job::Product clear() {
    job::Product out;
    out.product_name = "clear A";
    out.kind = job::ProductKind::Clear;
    out.activated = true;
    out.minimum_c = 10;
    out.steps = {{trade::CureMilestone::PullTape, {{20, 60}, {60, 15}}},
                 {trade::CureMilestone::SandFrom, {{20, 960}, {60, 45}}},
                 {trade::CureMilestone::PolishUntil, {{20, 14400}, {60, 960}}},
                 {trade::CureMilestone::PotLife, {{20, 120}}}};
    return out;
  }
  static job::Product urethane() {
    job::Product out;
    out.product_name = "urethane A";
    out.kind = job::ProductKind::GlassUrethane;
    out.cure = trade::CureKind::MoistureCure;
    out.drive_away = {{"two bags", {{5, 30, 480}, {20, 50, 60}}}, {"no bag", {{5, 30, 240}}}};
    return out;
  }
  void spray(const ProductId& with) {
    act(acts::MixProduct{car().job, with, "77", true, {}, {}});
    act(acts::SayCoats{car().job,
                       car().air.mixes.back().mix,
                       {job::Panel::Hood, job::Panel::FrontBumper},
                       2,
                       {8},
                       "1.3 mm",
                       false});
    worked_out();
  }
  void read(job::PanelGroup group, double surface_c) {
    act(acts::ReadPanelTemperature{car().job, group, surface_c});
    worked_out();
  }
  void wait_min(int minutes) {
    clock_.advance_ms(minutes * 60'000LL);
    for (int i = 0; i < 30; ++i) emit session_->secondPassed();
    worked_out();
  }
  void worked_out() {
    settle();
    settle();
  }
  // What the clock of a row says of a milestone.
  QString says(int row, const char* milestone, const char* role = "words") {
    auto* steps = at(cure_->clocks(), row, "steps").value<QAbstractItemModel*>();
    for (int i = 0; steps && i < steps->rowCount(); ++i)
      if (at(steps, i, "key").toString() == QLatin1String(milestone))
        return at(steps, i, role).toString();
    return {};
  }

  PersonId rosa_;
  std::unique_ptr<CureWork> work_;
  std::unique_ptr<CureViewModel> cure_;
};

}  // namespace jambline::screens
