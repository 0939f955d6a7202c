#include "app/demo/visit.h"

#include <algorithm>
#include <iterator>

#include "acts/work_template.h"
#include "app/demo/invented.h"

namespace jambline::demo {

namespace {

using job::Panel;
using job::Stage;

constexpr std::int64_t day_ms = 86'400'000;

const std::vector<std::vector<Panel>>& damages() {
  static const std::vector<std::vector<Panel>> all{
      {Panel::FrontBumper, Panel::Hood, Panel::LeftFender},
      {Panel::FrontBumper, Panel::RightFender},
      {Panel::LeftFender, Panel::LeftFrontDoor, Panel::LeftMirror},
      {Panel::RightFrontDoor, Panel::RightRearDoor, Panel::RightQuarter, Panel::RightSide},
      {Panel::RearBumper, Panel::Decklid, Panel::Liftgate, Panel::Hatch, Panel::Tailgate},
      {Panel::RearBumper, Panel::LeftQuarter, Panel::LeftBedSide, Panel::FuelDoor},
      {Panel::Hood, Panel::Roof},
      {Panel::LeftRearDoor, Panel::LeftQuarter, Panel::LeftSide, Panel::LeftRocker},
      {Panel::Hood, Panel::LeftFender, Panel::RightFender, Panel::FrontBumper},
  };
  return all;
}

constexpr std::string_view notes[] = {
    "Customer will bring the second key.",
    "Old chip at the fuel door was there before.",
    "Clips for the lower trim come with the next delivery.",
    "Spray-out approved in daylight.",
    "Call before the wash, child seat is inside.",
    "Lamp bracket was bent, straightened.",
};

class Writer {
 public:
  Writer(const VisitPlan& plan, const Crew& crew, const std::vector<RackId>& racks, Times& times,
         SeededRandom& random)
      : plan_(plan), crew_(crew), racks_(racks), times_(times), random_(random) {}

  Visit write();

 private:
  bool going(Stage stage) const { return !out_.out_of_time && stage < plan_.until; }
  void add(std::int64_t at_ms, Who who, std::function<Commands(const folds::CarView&)> act) {
    if (!out_.out_of_time) out_.steps.push_back({at_ms, crew_.at(who), std::move(act)});
  }
  void note(double part);
  void work(Who who, Stage stage, int minutes, bool finish);
  void finish(Who who, Stage stage);
  void look_over();
  void correct();
  void look_again();
  void take_parts();
  void hand_over();

  const VisitPlan& plan_;
  const Crew& crew_;
  const std::vector<RackId>& racks_;
  Times& times_;
  SeededRandom& random_;
  Visit out_;
  int marks_ = 0;
  std::vector<Panel> to_correct_;
};

void Writer::note(double part) {
  const bool written = chance(random_, part);
  const auto& text = notes[random_.below(std::size(notes))];
  if (!written) return;
  add(times_.tap(40), Who::Rosa, [text](const folds::CarView& car) {
    return Commands{acts::WriteNote{car.job, std::string(text)}};
  });
}

// The clock runs from start to stop; the stop says the stage is done, when it is.
void Writer::work(Who who, Stage stage, int minutes, bool done) {
  const auto start = times_.session(who, minutes);
  if (!start) {
    out_.out_of_time = true;
    return;
  }
  const PersonId person = crew_.at(who);
  add(*start, who, [person, stage](const folds::CarView& car) {
    return Commands{acts::StartClock{person, car.job, operation_of(car, stage)}};
  });
  add(*start + minutes * 60'000LL, who, [person, stage, done](const folds::CarView& car) {
    Commands out{acts::StopClock{person}};
    if (done) out.push_back(acts::FinishStage{car.job, stage});
    return out;
  });
}

void Writer::finish(Who who, Stage stage) {
  add(times_.tap(between(random_, 30, 90)), who, [stage](const folds::CarView& car) {
    return Commands{acts::FinishStage{car.job, stage}};
  });
}

// Panel by panel in walking order: marks where they are, a verdict where there are none.
void Writer::look_over() {
  const auto& pattern = job::pattern(plan_.open.body);
  for (const auto& placed : pattern.panels) {
    const auto plan = std::find_if(plan_.open.panels.begin(), plan_.open.panels.end(),
                                   [&](const auto& one) { return one.panel == placed.panel; });
    if (plan == plan_.open.panels.end()) continue;
    const Panel panel = placed.panel;
    Dirt dirt = dirt_on(placed, plan_.booth, random_);
    for (auto& mark : dirt.marks) {
      add(times_.tap(between(random_, 6, 25)), Who::Ivo, [mark](const folds::CarView& car) {
        auto here = mark;
        here.job = car.job;
        return Commands{here};
      });
      ++marks_;
    }
    if (dirt.all_over != job::DirtClass::None) {
      add(times_.tap(20), Who::Ivo, [panel, all = dirt.all_over](const folds::CarView& car) {
        return Commands{acts::SayDirtAllOver{car.job, panel, all}};
      });
      marks_ += 12;
    }
    if (!dirt.marks.empty() || dirt.all_over != job::DirtClass::None) {
      to_correct_.push_back(panel);
      continue;
    }
    const bool loose = !plan->on_car;
    const RackId rack = racks_[random_.below(racks_.size())];
    add(times_.tap(between(random_, 8, 30)), Who::Ivo,
        [panel, loose, rack](const folds::CarView& car) {
          acts::GiveVerdict verdict{car.job, panel, job::Verdict::Clean, loose, {}};
          if (loose) verdict.rack = rack;
          return Commands{verdict};
        });
  }
}

void Writer::correct() {
  if (to_correct_.empty()) {
    finish(Who::Ana, Stage::Correct);
    return;
  }
  work(Who::Ana, Stage::Correct, std::min(75, 10 + 6 * marks_ + between(random_, 0, 8)), true);
}

void Writer::look_again() {
  for (const Panel panel : to_correct_) {
    const auto plan = std::find_if(plan_.open.panels.begin(), plan_.open.panels.end(),
                                   [&](const auto& one) { return one.panel == panel; });
    const bool loose = !plan->on_car;
    const RackId rack = racks_[random_.below(racks_.size())];
    add(times_.tap(between(random_, 10, 30)), Who::Ivo,
        [panel, loose, rack](const folds::CarView& car) {
          acts::GiveVerdict verdict{car.job, panel, job::Verdict::Clean, loose, {}};
          if (loose) verdict.rack = rack;
          return Commands{verdict};
        });
  }
}

void Writer::take_parts() {
  const bool any = std::any_of(plan_.open.panels.begin(), plan_.open.panels.end(),
                               [](const auto& one) { return !one.on_car; });
  if (!any) return;
  add(times_.tap(60), Who::Jo, [](const folds::CarView& car) {
    Commands out;
    for (const auto& panel : car.panels)
      if (panel.release.state == folds::ReleaseState::Offered)
        out.push_back(acts::TakeRelease{car.job, panel.release.release});
    return out;
  });
}

void Writer::hand_over() {
  add(times_.tap(60), Who::Ana, [](const folds::CarView& car) {
    return Commands{acts::OfferRelease{car.job, {}, job::Role::Manager, {}}};
  });
  add(times_.tap(120), Who::Rosa, [](const folds::CarView& car) {
    return Commands{acts::TakeRelease{car.job, car.car_release.release}};
  });
  finish(Who::Rosa, Stage::WalkAround);
  add(times_.tap(150), Who::Rosa,
      [](const folds::CarView& car) { return Commands{acts::Deliver{car.job}}; });
}

Visit Writer::write() {
  add(times_.tap(120), Who::Rosa,
      [open = plan_.open](const folds::CarView&) { return Commands{open}; });
  if (going(Stage::CheckIn)) finish(Who::Rosa, Stage::CheckIn);
  note(0.3);
  if (going(Stage::Teardown)) work(Who::Jo, Stage::Teardown, between(random_, 15, 28), true);
  if (going(Stage::BodyAndTrialFit)) {
    work(Who::Jo, Stage::BodyAndTrialFit, between(random_, 40, 65), false);
    times_.next_day();
    work(Who::Jo, Stage::BodyAndTrialFit, between(random_, 20, 50), true);
  }
  if (going(Stage::Corrosion)) finish(Who::Jo, Stage::Corrosion);
  if (going(Stage::Prep)) work(Who::Ben, Stage::Prep, between(random_, 35, 55), true);
  times_.next_day();
  if (going(Stage::Color)) finish(Who::Ivo, Stage::Color);
  if (going(Stage::Mask)) work(Who::Ivo, Stage::Mask, between(random_, 20, 40), true);
  if (going(Stage::BeforeTheGun)) finish(Who::Ivo, Stage::BeforeTheGun);
  if (going(Stage::Spray)) work(Who::Ivo, Stage::Spray, between(random_, 35, 60), true);
  if (going(Stage::Cure)) finish(Who::Ivo, Stage::Cure);
  times_.next_day();
  if (going(Stage::Unmask)) finish(Who::Ben, Stage::Unmask);
  if (going(Stage::Inspect)) {
    look_over();
    finish(Who::Ivo, Stage::Inspect);
  }
  if (going(Stage::Correct)) {
    correct();
    look_again();
  }
  times_.next_day();
  if (going(Stage::EdgesAndJambs)) finish(Who::Ana, Stage::EdgesAndJambs);
  if (going(Stage::CavityWax)) finish(Who::Jo, Stage::CavityWax);
  if (going(Stage::Assemble)) {
    take_parts();
    work(Who::Jo, Stage::Assemble, between(random_, 25, 45), true);
  }
  const bool glass = std::any_of(plan_.open.operations.begin(), plan_.open.operations.end(),
                                 [](const auto& one) { return one.stage == Stage::Glass; });
  if (glass && going(Stage::Glass)) work(Who::Mara, Stage::Glass, between(random_, 12, 25), true);
  if (going(Stage::Fit)) finish(Who::Jo, Stage::Fit);
  if (going(Stage::Wash)) work(Who::Ana, Stage::Wash, between(random_, 10, 18), true);
  if (going(Stage::WalkAround)) hand_over();
  return std::move(out_);
}

}  // namespace

OperationId operation_of(const folds::CarView& car, Stage stage) {
  for (const auto& operation : car.operations)
    if (operation.stage == stage) return operation.operation;
  return {};
}

acts::OpenCar invented_car(SeededRandom& random) {
  acts::OpenCar out;
  out.plate = plate(random);
  out.vin = vin(random);
  out.color = color(random);
  out.body = body(random);
  out.drive = drive(random);
  const auto& damage = damages()[random.below(damages().size())];
  const auto& pattern = job::pattern(out.body);
  const auto finish =
      out.color.code == "TY 611" ? job::Finish::TriCoat : job::Finish::GlossBaseClear;
  for (const Panel panel : damage) {
    if (!pattern.find(panel)) continue;
    job::PanelPlan plan = acts::usual_plan(panel, out.body);
    plan.finish = finish;
    out.panels.push_back(plan);
  }
  if (out.panels.empty()) {
    out.panels.push_back(acts::usual_plan(Panel::Hood, out.body));
    out.panels.back().finish = finish;
  }
  if (out.panels.size() > 2 && out.panels.back().on_car)
    out.panels.back().treatment = job::Treatment::ColorBlendFullClear;
  const int panels = static_cast<int>(out.panels.size());
  const auto plan = [&](Stage stage, int minutes, std::string title = {}) {
    out.operations.push_back({stage, std::move(title), minutes});
  };
  plan(Stage::CheckIn, 10);
  plan(Stage::Teardown, 25);
  plan(Stage::BodyAndTrialFit, 55 + 15 * panels);
  plan(Stage::Prep, 30 + 8 * panels);
  plan(Stage::Mask, 25 + 3 * panels);
  plan(Stage::Spray, 35 + 6 * panels);
  plan(Stage::Unmask, 10);
  plan(Stage::Inspect, 6 + 3 * panels);
  plan(Stage::Correct, 20 + 5 * panels);
  plan(Stage::EdgesAndJambs, 10);
  plan(Stage::Assemble, 25 + 6 * panels);
  if (chance(random, 0.15)) plan(Stage::Glass, 20, "Door glass run");
  plan(Stage::Fit, 12);
  plan(Stage::Wash, 15);
  plan(Stage::WalkAround, 10);
  return out;
}

Visit visit_of(const VisitPlan& plan, const Crew& crew, const std::vector<RackId>& racks,
               Times& times, SeededRandom& random) {
  return Writer(plan, crew, racks, times, random).write();
}

}  // namespace jambline::demo
