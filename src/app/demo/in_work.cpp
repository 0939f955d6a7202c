#include "app/demo/in_work.h"

#include <algorithm>

#include "acts/work_template.h"
#include "app/demo/fit.h"
#include "app/demo/invented.h"
#include "base/spans.h"
#include "job/calendar.h"

namespace jambline::demo {

namespace {

using job::BodyShape;
using job::Panel;
using job::Stage;

constexpr int days_to_look = 30;

struct Spec {
  BodyShape body;
  Stage until;
  int days_ago;      // working days
  int minute;        // of that day
  int promised_min;  // from now: minutes in which the shop is open; what is past by the wall
  std::vector<Panel> panels;
};

// Number by number; what happened last to some of them stands in last_acts().
const std::vector<Spec>& specs() {
  static const std::vector<Spec> all{
      {BodyShape::FourDoorSedan,
       Stage::CheckIn,
       0,
       470,
       900,
       {Panel::FrontBumper, Panel::LeftFender}},
      {BodyShape::SuvWagon,
       Stage::Teardown,
       0,
       380,
       1000,
       {Panel::RearBumper, Panel::Liftgate, Panel::LeftQuarter}},
      {BodyShape::CrewCabPickup,
       Stage::BodyAndTrialFit,
       1,
       200,
       560,
       {Panel::LeftBedSide, Panel::Tailgate}},
      {BodyShape::TwoDoorHatchback,
       Stage::Corrosion,
       3,
       60,
       620,
       {Panel::LeftQuarter, Panel::LeftRocker}},
      {BodyShape::FourDoorSedan,
       Stage::Prep,
       3,
       20,
       555,
       {Panel::RightFrontDoor, Panel::RightRearDoor, Panel::RightQuarter}},
      {BodyShape::SuvWagon,
       Stage::Color,
       4,
       90,
       330,
       {Panel::Hood, Panel::LeftFender, Panel::FrontBumper}},
      {BodyShape::CargoVan, Stage::Mask, 5, 10, 270, {Panel::SlidingDoor, Panel::RightSide}},
      {BodyShape::FourDoorSedan, Stage::Spray, 5, 70, 345, {Panel::Decklid, Panel::RearBumper}},
      {BodyShape::SuvWagon, Stage::Unmask, 6, 30, 225, {Panel::Hood, Panel::Roof}},
      {BodyShape::FourDoorSedan,
       Stage::Inspect,
       6,
       90,
       130,
       {Panel::Hood, Panel::LeftFender, Panel::LeftFrontDoor, Panel::FrontBumper,
        Panel::LeftMirror}},
      {BodyShape::TwoDoorHatchback,
       Stage::Inspect,
       7,
       40,
       270,
       {Panel::Hood, Panel::RightFender, Panel::FrontBumper}},
      {BodyShape::CrewCabPickup,
       Stage::Correct,
       7,
       100,
       30,
       {Panel::Hood, Panel::LeftFender, Panel::LeftFrontDoor, Panel::RightFender}},
      {BodyShape::SuvWagon,
       Stage::Correct,
       8,
       60,
       -180,
       {Panel::FrontBumper, Panel::Hood, Panel::LeftFender, Panel::LeftMirror}},
      {BodyShape::FourDoorSedan,
       Stage::WalkAround,
       9,
       30,
       -1560,
       {Panel::RearBumper, Panel::RightQuarter}},
      {BodyShape::FourDoorSedan,
       Stage::Correct,
       7,
       160,
       210,
       {Panel::Hood, Panel::LeftFrontDoor, Panel::LeftRearDoor}},
  };
  return all;
}

// When the shop has been open for so long, on a quarter of an hour; what is past goes by the wall.
std::int64_t after_open(std::int64_t now_ms, int minutes) {
  std::int64_t left_ms = minutes * minute_ms;
  std::int64_t at_ms = now_ms + left_ms;
  if (left_ms > 0)
    if (const auto spans = job::open_spans(job::usual_calendar(), shop_zone, now_ms, days_to_look))
      for (const auto& span : *spans) {
        const std::int64_t from_ms = std::max(span.from_ms, now_ms);
        if (span.to_ms <= from_ms || left_ms <= 0) continue;
        at_ms = from_ms + std::min(left_ms, span.to_ms - from_ms);
        left_ms -= span.to_ms - from_ms;
      }
  return (at_ms + quarter_ms / 2) / quarter_ms * quarter_ms;
}

class Evening {
 public:
  Evening(Visit& visit, std::int64_t now_ms, const Crew& crew)
      : visit_(visit), now_ms_(now_ms), crew_(crew) {}
  Step& add(int minutes_ago, Who who, CarAct act) {
    visit_.steps.push_back({now_ms_ - minutes_ago * minute_ms, crew_.at(who), std::move(act)});
    return visit_.steps.back();
  }
  void note(int minutes_ago, Who who, std::string text) {
    add(minutes_ago, who, [text](const folds::CarView& car) {
      return Commands{acts::WriteNote{car.job, text}};
    });
  }
  void start(int minutes_ago, Who who, Stage stage) {
    add(minutes_ago, who, [person = crew_.at(who), stage](const folds::CarView& car) {
      return Commands{acts::StartClock{person, car.job, operation_of(car, stage)}};
    });
  }
  void pause(int minutes_ago, Who who) {
    add(minutes_ago, who, [person = crew_.at(who)](const folds::CarView&) {
      return Commands{acts::PauseClock{person}};
    });
  }
  void stop(int minutes_ago, Who who) {
    add(minutes_ago, who, [person = crew_.at(who)](const folds::CarView&) {
      return Commands{acts::StopClock{person}};
    });
  }
  // The last tap of the person's clock was so many minutes earlier than it says.
  void amend(int minutes_ago, Who by, Who who, int earlier_min, std::string reason) {
    add(minutes_ago, by, [person = crew_.at(who), earlier_min, reason](const folds::CarView& car) {
      Commands out;
      for (const auto& act : car.visit.clock_acts)
        if (act.worker == person)
          out = {acts::AmendClock{car.job, act.entry, act.at_ms - earlier_min * minute_ms, reason}};
      return out;
    });
  }
  void wait(int minutes_ago, Who who, job::WaitReason reason, bool waits) {
    add(minutes_ago, who, [=](const folds::CarView& car) {
      return Commands{acts::SayWait{car.job, reason, waits, {}}};
    });
  }
  void on_order(int minutes_ago, std::string part, std::optional<std::int64_t> expected_ms) {
    add(minutes_ago, Who::Rosa, [part, expected_ms](const folds::CarView& car) {
      return Commands{acts::SayPart{car.job, {}, {part, job::PartState::Ordered, expected_ms}}};
    });
  }
  std::int64_t open_for(int minutes) const { return after_open(now_ms_, minutes); }
  void cause(int minutes_ago, std::optional<job::DirtCause> cause) {
    add(minutes_ago, Who::Ivo, [cause](const folds::CarView& car) {
      return Commands{acts::SetCause{car.job, cause}};
    });
  }
  void mark(int minutes_ago, Panel panel, trade::Point_mm place, job::DefectKind kind, int size) {
    add(minutes_ago, Who::Ivo, [=](const folds::CarView& car) {
      return Commands{
          acts::PlaceMark{car.job, panel, place.x_mm, place.y_mm, kind, size, job::Layer::NotSaid}};
    });
  }
  void verdict(int minutes_ago, Panel panel, job::Verdict verdict) {
    add(minutes_ago, Who::Ivo, [=](const folds::CarView& car) {
      return Commands{acts::GiveVerdict{car.job, panel, verdict, false, {}}};
    });
  }

 private:
  Visit& visit_;
  std::int64_t now_ms_;
  const Crew& crew_;
};

void nibs(Evening& evening, int first_minutes_ago, int count, BodyShape body, Panel panel,
          SeededRandom& random) {
  const auto& shape = job::pattern(body).find(panel)->shape;
  for (int i = 0; i < count; ++i)
    evening.mark(first_minutes_ago, panel, place_on(shape, random), job::DefectKind::Nib,
                 1 + between(random, 0, 2));
}

// Dirt where the painter leans over.
void nibs_in_strip(Evening& evening, int minutes_ago, int count, BodyShape body, Panel panel,
                   SeededRandom& random) {
  const auto& strips = job::pattern(body).find(panel)->shape.reach_over;
  for (int i = 0; i < count; ++i) {
    trade::PanelShape strip;
    strip.outline = strips[random.below(strips.size())];
    evening.mark(minutes_ago, panel, place_on(strip, random), job::DefectKind::Nib, 1);
  }
}

// Number 12 is in the middle of its rounds: compounded on the hood and not yet elsewhere.
void begin_rounds(const Spec& spec, Evening& evening) {
  Correction correction;
  correction.slower = 1.2;
  evening.start(64, Who::Ana, Stage::Correct);
  evening.add(62, Who::Ana, answer_before_cut(correction));
  int minutes_ago = 60;
  for (const auto round : {job::Round::Level, job::Round::Refine})
    for (const Panel panel : spec.panels)
      evening.add(minutes_ago -= 2, Who::Ana, finish_round(correction, panel, round));
  evening.add(42, Who::Ana, finish_round(correction, Panel::Hood, job::Round::Compound));
  evening.stop(41, Who::Ana);
}

// The hood of number 10: Ivo calls it clean here, Ana marks it to correct on the other tablet.
void disagree(Evening& evening, const Crew& crew) {
  Step& step = evening.add(30, Who::Ivo, [](const folds::CarView& car) {
    return Commands{acts::GiveVerdict{car.job, Panel::Hood, job::Verdict::Clean, false, {}}};
  });
  step.other_person = crew.at(Who::Ana);
  step.other = [](const folds::CarView& car) {
    return Commands{acts::GiveVerdict{car.job, Panel::Hood, job::Verdict::ToCorrect, false, {}}};
  };
}

void last_acts(int number, const Spec& spec, Evening& evening, const Crew& crew,
               SeededRandom& random) {
  switch (number) {
    case 0:
      evening.on_order(12, "front bumper cover", evening.open_for(780));
      evening.note(11, Who::Rosa, "The bumper cover comes with the parts van.");
      break;
    case 3:
      evening.on_order(95, "left rocker molding", {});
      break;
    case 1:
      evening.start(47, Who::Jo, Stage::Teardown);
      break;
    case 2:
      evening.start(70, Who::Jo, Stage::BodyAndTrialFit);
      evening.add(34, Who::Jo, trial_fit(false));
      break;
    case 4:
      evening.start(88, Who::Ben, Stage::Prep);
      evening.pause(21, Who::Ben);
      break;
    case 6:
      evening.note(90, Who::Ivo, "Slider track masked twice, old tape let go in the heat.");
      evening.start(26, Who::Ivo, Stage::Mask);
      break;
    case 9:
      nibs(evening, 64, 3, spec.body, Panel::Hood, random);
      nibs(evening, 58, 1, spec.body, Panel::LeftFender, random);
      evening.verdict(55, Panel::LeftFrontDoor, job::Verdict::Clean);
      evening.mark(52, Panel::FrontBumper,
                   place_on(job::pattern(spec.body).find(Panel::FrontBumper)->shape, random),
                   job::DefectKind::RunOrSag, 2);
      break;
    case 10:
      disagree(evening, crew);
      nibs(evening, 28, 2, spec.body, Panel::RightFender, random);
      break;
    case 11:
      nibs_in_strip(evening, 78, 7, spec.body, Panel::Hood, random);
      nibs(evening, 70, 2, spec.body, Panel::LeftFender, random);
      evening.add(61, Who::Ivo, [](const folds::CarView& car) {
        return Commands{
            acts::GiveVerdict{car.job, Panel::RightFender, job::Verdict::Redo, false, {}}};
      });
      break;
    case 12:
      nibs(evening, 75, 3, spec.body, Panel::Hood, random);
      nibs(evening, 72, 2, spec.body, Panel::LeftFender, random);
      evening.wait(70, Who::Ana, job::WaitReason::Cure, true);
      evening.cause(68, std::nullopt);
      evening.wait(65, Who::Ana, job::WaitReason::Cure, false);
      begin_rounds(spec, evening);
      evening.note(40, Who::Ana, "Left mirror cap hangs on the bumper rail.");
      evening.amend(36, Who::Rosa, Who::Ana, 1, "forgot to stop");
      evening.add(35, Who::Jo, [](const folds::CarView& car) {
        for (const auto& panel : car.panels)
          if (panel.release.state == folds::ReleaseState::Offered)
            return Commands{
                acts::ReturnRelease{car.job, panel.release.release, "Edge not covered."}};
        return Commands{};
      });
      break;
    case 13:
      evening.add(9, Who::Ana, [](const folds::CarView& car) {
        return Commands{acts::OfferRelease{car.job, {}, job::Role::Manager, {}}};
      });
      break;
    case 14:
      nibs(evening, 82, 2, spec.body, Panel::Hood, random);
      nibs(evening, 80, 3, spec.body, Panel::LeftFrontDoor, random);
      evening.cause(77, job::DirtCause::Chance);
      break;
    default:
      break;
  }
}

// Whether somebody said in the course of the visit what threw it; to some it is said last.
bool says_cause(int number) {
  return number != 11 && number != 12 && number != 14;
}

}  // namespace

Visit car_in_work(int number, std::int64_t now_ms, Diary& diary, const Crew& crew,
                  const House& house, SeededRandom& random, SeededRandom story,
                  std::int64_t camera_from_ms) {
  const Spec& spec = specs()[static_cast<std::size_t>(number)];
  acts::OpenCar open = invented_car(random);
  open.body = spec.body;
  open.panels.clear();
  for (const Panel panel : spec.panels) open.panels.push_back(acts::usual_plan(panel, spec.body));
  if (number == 3) open.panels.back().finish = job::Finish::Textured;
  if (number == 8) open.panels.front().finish = job::Finish::Matte;
  if (number == 5) {
    open.vin[8] = open.vin[8] == '4' ? '5' : '4';  // a wrong check sign that the person kept
    open.vin_as_typed = true;
  }
  open.promised_ms = after_open(now_ms, spec.promised_min);
  DiaryTimes times(diary, static_cast<std::size_t>(spec.days_ago), spec.minute);
  VisitPlan plan{open, spec.until, {0, number % lanes}, std::move(story)};
  plan.says_cause = says_cause(number);
  plan.camera_from_ms = camera_from_ms;
  Visit visit = visit_of(std::move(plan), crew, house, times, random);
  Evening evening(visit, now_ms, crew);
  if (!visit.out_of_time) last_acts(number, spec, evening, crew, random);
  return visit;
}

}  // namespace jambline::demo
