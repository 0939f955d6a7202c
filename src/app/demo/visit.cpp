#include "app/demo/visit.h"

#include <algorithm>
#include <iterator>

#include "acts/work_template.h"
#include "app/demo/booths.h"
#include "app/demo/customers.h"
#include "app/demo/fit.h"
#include "app/demo/invented.h"

namespace jambline::demo {

namespace {

using job::Panel;
using job::Stage;

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

// What a person says threw it: right now and then, and often nothing.
std::optional<job::DirtCause> cause_said(const Booth& booth, double which) {
  using Cause = job::DirtCause;
  if (booth.hose_is_bad()) {
    if (which < 0.6) return Cause::Hose;
    return std::nullopt;
  }
  if (booth.filters_are_old() && which < 0.3) return Cause::FellFromAbove;
  if (which < 0.55) return std::nullopt;
  if (which < 0.68) return Cause::Chance;
  if (which < 0.78) return Cause::PrepDust;
  if (which < 0.86) return Cause::Suit;
  if (which < 0.92) return Cause::Masking;
  return which < 0.96 ? Cause::TackOrWipe : Cause::Insect;
}

class Writer {
 public:
  Writer(VisitPlan plan, const Crew& crew, const House& house, Times& times, SeededRandom& random)
      : plan_(std::move(plan)), crew_(crew), house_(house), times_(times), random_(random) {
    correction_ = invented_correction(plan_.story);
    correction_.burns_through = plan_.burns_through;
  }

  Visit write();

 private:
  bool going(Stage stage) const { return !out_.out_of_time && stage < plan_.until; }
  void add(std::int64_t at_ms, Who who, CarAct act) {
    if (!out_.out_of_time) out_.steps.push_back({at_ms, crew_.at(who), std::move(act)});
  }
  job::WithoutShots without_shots(std::int64_t at_ms) const {
    return at_ms < plan_.camera_from_ms ? job::WithoutShots::NoCamera
                                        : job::WithoutShots::NotReachable;
  }
  void note(double part);
  void work(Who who, Stage stage, int minutes, bool finish, const std::vector<CarAct>& on_it = {});
  void prepare();
  void spray();
  void finish(Who who, Stage stage);
  void check_in();
  void fit();
  void look_over();
  void place(const acts::PlaceMark& mark);
  void say_cause();
  void correct();
  void look_again();
  void call_clean(Panel panel);
  void paint_again();
  void polish_once_more();
  void take_parts();
  void hand_over();

  const acts::OpenCar& car() const { return plan_.open; }
  const job::PanelPlan* planned(Panel panel) const {
    const auto found = std::find_if(car().panels.begin(), car().panels.end(),
                                    [&](const auto& one) { return one.panel == panel; });
    return found == car().panels.end() ? nullptr : &*found;
  }

  VisitPlan plan_;
  const Crew& crew_;
  const House& house_;
  Times& times_;
  SeededRandom& random_;
  Visit out_;
  Correction correction_;
  int marks_ = 0;
  int looks_ = 0;
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

// The clock runs from start to stop, with what is done meanwhile; the stop says the stage is done,
// when it is.
void Writer::work(Who who, Stage stage, int minutes, bool done, const std::vector<CarAct>& on_it) {
  const auto start = times_.session(who, minutes);
  if (!start) {
    out_.out_of_time = true;
    return;
  }
  const PersonId person = crew_.at(who);
  add(*start, who, [person, stage](const folds::CarView& car) {
    return Commands{acts::StartClock{person, car.job, operation_of(car, stage)}};
  });
  const auto acts = static_cast<std::int64_t>(on_it.size());
  for (std::int64_t i = 0; i < acts; ++i)
    add(*start + minutes * 60'000LL * (i + 1) / (acts + 2), who,
        on_it[static_cast<std::size_t>(i)]);
  const std::int64_t end_ms = *start + minutes * 60'000LL;
  add(end_ms, who, [person, stage, done, why = without_shots(end_ms)](const folds::CarView& car) {
    Commands out{acts::StopClock{person}};
    if (done) out.push_back(acts::FinishStage{car.job, stage, true, why});
    return out;
  });
  if (done && !out_.out_of_time) out_.steps.back().finishes = stage;
}

void Writer::finish(Who who, Stage stage) {
  const std::int64_t at_ms = times_.tap(between(random_, 30, 90));
  add(at_ms, who, [stage, why = without_shots(at_ms)](const folds::CarView& car) {
    return Commands{acts::FinishStage{car.job, stage, true, why}};
  });
  if (!out_.out_of_time) out_.steps.back().finishes = stage;
}

// Who prepares a metal panel may read what is on it before base.
void Writer::prepare() {
  std::vector<CarAct> on_it;
  const int um = between(plan_.story, 58, 96);
  if (chance(plan_.story, 0.35))
    for (const auto& one : car().panels)
      if (one.substrate != trade::Substrate::Plastic && one.on_car && on_it.empty())
        on_it.push_back([um, panel = one.panel](const folds::CarView& car) {
          acts::ReadFilm read{.job = car.job, .panel = panel};
          read.typed = {um - 1.0, um + 2.0, um + 0.0};
          return Commands{read};
        });
  work(Who::Ben, Stage::Prep, between(random_, 35, 55), true, on_it);
}

void Writer::spray() {
  const BoothId booth = house_.booths[booth_of_lane(plan_.booth.lane)];
  work(Who::Ivo, Stage::Spray, between(random_, 35, 60), true, {[booth](const folds::CarView& car) {
         return Commands{acts::SayBooth{car.job, booth}};
       }});
}

// What the particle looks like is asked on three marks of a car.
void Writer::place(const acts::PlaceMark& mark) {
  auto said = mark;
  const double part = plan_.story.unit();
  if (mark.defect == job::DefectKind::Nib && looks_ < 3 && chance(plan_.story, 0.6)) {
    ++looks_;
    using Look = job::ParticleLook;
    if (plan_.booth.hose_is_bad() && part < 0.7)
      said.look = Look::GelOrSeed;
    else
      said.look = part < 0.4   ? Look::WhiteFiber
                  : part < 0.6 ? Look::HardGrain
                  : part < 0.8 ? Look::ColoredFiber
                               : Look::DryOverspray;
  }
  add(times_.tap(between(random_, 6, 25)), Who::Ivo, [said](const folds::CarView& car) {
    auto here = said;
    here.job = car.job;
    return Commands{here};
  });
  ++marks_;
}

void Writer::check_in() {
  const std::int64_t at_ms = times_.tap(between(random_, 30, 90));
  add(at_ms, Who::Rosa, [why = without_shots(at_ms)](const folds::CarView& car) {
    return Commands{acts::SayCheckIn{car.job, invented_check_in(car)},
                    acts::FinishStage{car.job, Stage::CheckIn, true, why}};
  });
  if (!out_.out_of_time) out_.steps.back().finishes = Stage::CheckIn;
}

// What opens and was off is checked before anybody drives it.
void Writer::fit() {
  const std::int64_t at_ms = times_.tap(between(random_, 30, 90));
  add(at_ms, Who::Jo, [why = without_shots(at_ms)](const folds::CarView& car) {
    Commands out;
    if (std::any_of(car.panels.begin(), car.panels.end(),
                    [](const auto& one) { return !one.plan.on_car && job::opens(one.plan.panel); }))
      out.push_back(acts::SayStep{car.job, job::Step::LatchAndCatchChecked});
    out.push_back(acts::FinishStage{car.job, Stage::Fit, true, why});
    return out;
  });
  if (!out_.out_of_time) out_.steps.back().finishes = Stage::Fit;
}

// Panel by panel in walking order: marks where they are, a verdict where there are none.
void Writer::look_over() {
  for (const auto& placed : job::pattern(car().body).panels) {
    const auto* plan = planned(placed.panel);
    if (!plan) continue;
    const Panel panel = placed.panel;
    Dirt dirt = dirt_on(placed, plan_.booth, random_);
    for (const auto& mark : dirt.marks) place(mark);
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
    call_clean(panel);
  }
}

// Half the time nobody says what threw it.
void Writer::say_cause() {
  const double part = plan_.story.unit();
  const acts::SetCause said{{}, cause_said(plan_.booth, plan_.story.unit())};
  if (!plan_.says_cause || to_correct_.empty() || part < 0.45) return;
  add(times_.tap(25), Who::Ivo, [said](const folds::CarView& car) {
    return Commands{acts::SetCause{car.job, said.cause}};
  });
}

void Writer::correct() {
  if (to_correct_.empty()) {
    finish(Who::Ana, Stage::Correct);
    return;
  }
  work(correction_.by, Stage::Correct, std::min(75, 10 + 6 * marks_ + between(random_, 0, 8)), true,
       correction_acts(correction_, to_correct_));
}

void Writer::call_clean(Panel panel) {
  const bool loose = !planned(panel)->on_car;
  const RackId rack = house_.racks[random_.below(house_.racks.size())];
  add(times_.tap(between(random_, 8, 30)), Who::Ivo,
      [panel, loose, rack](const folds::CarView& car) {
        const auto* one = car.find(panel);
        if (!one || one->verdict == job::Verdict::Redo) return Commands{};
        Commands out = end_open_marks(car, panel);
        acts::GiveVerdict verdict{car.job, panel, job::Verdict::Clean, loose, {}};
        if (loose) verdict.rack = rack;
        out.push_back(verdict);
        return out;
      });
}

void Writer::look_again() {
  for (const Panel panel : to_correct_) {
    if (chance(plan_.story, 0.07)) {
      add(times_.tap(20), Who::Ivo, comes_back(panel));
      add(times_.tap(150), correction_.by, polish_again(correction_, panel));
    }
    call_clean(panel);
  }
}

// What was burnt through is painted once more, on the day after.
void Writer::paint_again() {
  if (!plan_.burns_through || to_correct_.empty()) return;
  const Panel panel = to_correct_.front();
  work(Who::Ivo, Stage::Spray, 25, false);
  const bool loose = !planned(panel)->on_car;
  const RackId rack = house_.racks.front();
  add(times_.tap(40), Who::Ivo, [panel, loose, rack](const folds::CarView& car) {
    const auto* one = car.find(panel);
    if (!one || one->verdict != job::Verdict::Redo) return Commands{};
    Commands out = end_open_marks(car, panel);
    acts::GiveVerdict verdict{car.job, panel, job::Verdict::Clean, loose, {}};
    if (loose) verdict.rack = rack;
    out.push_back(verdict);
    return out;
  });
}

// A scratch of handling, found when the car is put together.
void Writer::polish_once_more() {
  const bool found = chance(plan_.story, 0.06);
  const auto& one = car().panels[plan_.story.below(car().panels.size())];
  const auto* placed = job::pattern(car().body).find(one.panel);
  const auto at = place_on(placed->shape, plan_.story);
  if (!found || !one.on_car || !job::may_be_cut(one.finish)) return;
  const Panel panel = one.panel;
  add(times_.tap(40), Who::Ana, [panel, at](const folds::CarView& car) {
    return Commands{acts::PlaceMark{car.job, panel, at.x_mm, at.y_mm,
                                    job::DefectKind::HandlingScratch, 1, job::Layer::OnTop}};
  });
  const PersonId ana = crew_.at(Who::Ana);
  add(times_.tap(20), Who::Ana, [ana, by = correction_](const folds::CarView& car) {
    return car.before_cut_of(ana) ? Commands{} : answer_before_cut(by)(car);
  });
  add(times_.tap(180), Who::Ana, finish_round(correction_, panel, job::Round::Polish));
  add(times_.tap(120), Who::Ana, finish_round(correction_, panel, job::Round::Finish));
  add(times_.tap(20), Who::Ana, [panel](const folds::CarView& car) {
    return Commands{acts::GiveVerdict{car.job, panel, job::Verdict::Clean, false, {}}};
  });
}

void Writer::take_parts() {
  const bool any = std::any_of(car().panels.begin(), car().panels.end(),
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
  const std::int64_t gone_ms = times_.tap(150);
  add(gone_ms - 40'000, Who::Rosa, [](const folds::CarView& car) {
    return Commands{signed_by_customer(car, job::SignedFor::Delivery)};
  });
  add(gone_ms, Who::Rosa,
      [](const folds::CarView& car) { return Commands{acts::Deliver{car.job}}; });
}

Visit Writer::write() {
  add(times_.tap(120), Who::Rosa,
      [open = plan_.open](const folds::CarView&) { return Commands{open}; });
  if (going(Stage::CheckIn)) check_in();
  note(0.3);
  if (going(Stage::Teardown)) work(Who::Jo, Stage::Teardown, between(random_, 15, 28), true);
  if (going(Stage::BodyAndTrialFit)) {
    work(Who::Jo, Stage::BodyAndTrialFit, between(random_, 40, 65), false);
    times_.next_day();
    // Of what was delivered long ago the gaps are not kept.
    std::vector<CarAct> set;
    if (plan_.until < Stage::Comeback) set.push_back(trial_fit(true));
    work(Who::Jo, Stage::BodyAndTrialFit, between(random_, 20, 50), true, set);
  }
  if (going(Stage::Corrosion)) finish(Who::Jo, Stage::Corrosion);
  if (going(Stage::Prep)) prepare();
  times_.next_day();
  if (going(Stage::Color)) finish(Who::Ivo, Stage::Color);
  if (going(Stage::Mask)) work(Who::Ivo, Stage::Mask, between(random_, 20, 40), true);
  if (going(Stage::BeforeTheGun)) finish(Who::Ivo, Stage::BeforeTheGun);
  if (going(Stage::Spray)) spray();
  if (going(Stage::Cure)) finish(Who::Ivo, Stage::Cure);
  times_.next_day();
  if (going(Stage::Unmask)) finish(Who::Ben, Stage::Unmask);
  if (going(Stage::Inspect)) {
    look_over();
    say_cause();
    finish(Who::Ivo, Stage::Inspect);
  }
  if (going(Stage::Correct)) {
    correct();
    look_again();
  }
  times_.next_day();
  if (going(Stage::EdgesAndJambs)) paint_again();
  if (going(Stage::EdgesAndJambs)) finish(Who::Ana, Stage::EdgesAndJambs);
  if (going(Stage::CavityWax)) finish(Who::Jo, Stage::CavityWax);
  if (going(Stage::Assemble)) {
    take_parts();
    work(Who::Jo, Stage::Assemble, between(random_, 25, 45), true);
  }
  if (going(Stage::Glass)) polish_once_more();
  const bool glass = std::any_of(plan_.open.operations.begin(), plan_.open.operations.end(),
                                 [](const auto& one) { return one.stage == Stage::Glass; });
  if (glass && going(Stage::Glass)) work(Who::Mara, Stage::Glass, between(random_, 12, 25), true);
  if (going(Stage::Fit)) fit();
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

Visit visit_of(VisitPlan plan, const Crew& crew, const House& house, Times& times,
               SeededRandom& random) {
  return Writer(std::move(plan), crew, house, times, random).write();
}

}  // namespace jambline::demo
