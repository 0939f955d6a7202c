#include "app/demo/pictures.h"

#include <algorithm>
#include <cstdio>
#include <ctime>
#include <limits>

#include "app/demo/invented.h"
#include "base/spans.h"
#include "folds/shots_of_car.h"

namespace jambline::demo {

namespace {

using job::Stage;

constexpr std::int64_t second_ms = 1000;
constexpr int came_days_ago = 28;
constexpr std::int64_t picture_before_work_ms = 15 * minute_ms;
constexpr std::int64_t first_before_ms = 28 * second_ms;  // before the stage is finished
constexpr std::int64_t apart_ms = 4 * second_ms;
constexpr std::size_t most_of_a_stage = 6;
constexpr double part_left_out = 0.07;
constexpr double part_poor = 0.14;
constexpr double part_offered = 0.05;
constexpr double part_says_place = 0.15;

// What the shop wants of the usual lists, besides what is only offered.
bool is_wanted(Stage stage, const job::Shot& shot) {
  if (shot.wanted == job::ShotWanted::AsFound) return true;
  switch (stage) {
    case Stage::CheckIn:
      return shot.shot_name == "front left corner" || shot.shot_name == "VIN";
    case Stage::Inspect:
    case Stage::Correct:
      return shot.shot_name != "before";
    case Stage::EdgesAndJambs:
      return shot.shot_name == "jamb";
    case Stage::WalkAround:
      return shot.shot_name == "front left corner";
    default:
      return false;
  }
}

Surface surface_at(Stage stage) {
  if (stage < Stage::Prep) return Surface::Damaged;
  if (stage < Stage::Spray) return Surface::Primed;
  return stage < Stage::Correct ? Surface::Fresh : Surface::Finished;
}

std::string local_time(std::int64_t at_ms, int offset_min) {
  const std::time_t seconds =
      static_cast<std::time_t>(at_ms / second_ms + std::int64_t{offset_min} * 60);
  std::tm parts{};
  gmtime_r(&seconds, &parts);
  char out[24];
  std::strftime(out, sizeof out, "%Y-%m-%dT%H:%M:%S", &parts);
  return out;
}

std::vector<job::DefectKind> seen_of(const folds::CarView& car, const folds::WantedShot& wanted,
                                     std::optional<job::Panel> panel) {
  if (wanted.mark) return {*wanted.mark};
  std::vector<job::DefectKind> out;
  const bool close = wanted.shot.view == job::ShotView::PanelClose;
  for (const auto& one : car.panels)
    if (close && panel == one.plan.panel)
      for (const auto& mark : one.marks) out.push_back(mark.defect);
  return out;
}

class Photographer {
 public:
  Photographer(const DemoOptions& options, const Calendar& calendar)
      : camera_(options.camera), calendar_(&calendar) {}

  // Number `which` of the stage's shots, when it is not there yet and somebody takes it.
  PictureAct take(Stage stage, std::size_t which, std::int64_t at_ms) const {
    return
        [self = *this, stage, which, at_ms](const folds::CarView& car, const folds::ShopView& shop,
                                            SeededRandom& random) -> Result<Commands> {
          const auto all = folds::shots_of_car(car, shop, stage);
          const double part = random.unit();
          const std::uint64_t seed = random.engine()();
          if (which >= all.size() || !all[which].pictures.empty()) return Commands{};
          const auto& wanted = all[which];
          const bool offered = wanted.state == folds::ShotState::Offered;
          if (offered ? part > part_offered : part < part_left_out) return Commands{};
          const bool poor = !offered && part < part_left_out + part_poor;
          return self.shoot(car, wanted, stage, at_ms, poor, seed);
        };
  }

  // The shot of that name, on that panel, always taken.
  PictureAct take(Stage stage, const char* name, std::optional<job::Panel> panel,
                  std::int64_t at_ms) const {
    return [self = *this, stage, name, panel, at_ms](const folds::CarView& car,
                                                     const folds::ShopView& shop,
                                                     SeededRandom& random) -> Result<Commands> {
      for (auto& wanted : folds::shots_of_car(car, shop, stage)) {
        if (wanted.shot.shot_name != name) continue;
        if (!wanted.mark) wanted.panel = panel;
        return self.shoot(car, wanted, stage, at_ms, false, random.engine()());
      }
      return Commands{};
    };
  }

 private:
  Result<Commands> shoot(const folds::CarView& car, const folds::WantedShot& wanted, Stage stage,
                         std::int64_t at_ms, bool poor, std::uint64_t seed) const {
    SeededRandom random(seed);
    entries::PicturePlace place{stage, wanted.shot.shot, wanted.panel, {}};
    if (wanted.mark)
      for (const auto& panel : car.panels)
        for (const auto& mark : panel.marks)
          if (!place.mark && mark.defect == *wanted.mark) {
            place.mark = mark.mark;
            place.panel = panel.plan.panel;
          }
    if (!place.panel && wanted.shot.view == job::ShotView::PanelClose && !car.panels.empty())
      place.panel = car.panels.front().plan.panel;
    PictureWish wish{.view = wanted.shot.view,
                     .panel = place.panel,
                     .body = car.body,
                     .color = car.color,
                     .vin = car.vin,
                     .surface = surface_at(stage),
                     .seen = {},
                     .word = trade::PhotoWord::Good,
                     .camera_time = {},
                     .offset_min = calendar_->offset_min(at_ms),
                     .says_place = chance(random, part_says_place),
                     .seed = seed};
    if (wish.surface != Surface::Finished) wish.seen = seen_of(car, wanted, place.panel);
    if (poor)
      wish.word = chance(random, 0.6) ? trade::PhotoWord::Blurred : trade::PhotoWord::TooDark;
    wish.camera_time = local_time(at_ms - 2 * second_ms, wish.offset_min);
    JAMBLINE_ASSIGN(auto facts, camera_(wish));
    const bool kept_though_poor = facts.word != trade::PhotoWord::Good;
    return Commands{acts::TakePicture{car.job, std::move(facts), job::PictureFrom::Camera, place,
                                      kept_though_poor}};
  }

  Camera camera_;
  const Calendar* calendar_;
};

// Every jamb that was photographed is looked at and called clean.
Result<Commands> jambs_are_clean(const folds::CarView& car, const folds::ShopView&, SeededRandom&) {
  Commands out;
  for (const auto& picture : car.pictures)
    if (picture.place.stage == Stage::EdgesAndJambs && picture.place.panel && !picture.edges)
      out.push_back(acts::CheckEdges{.job = car.job, .picture = picture.picture, .finds = {}});
  return out;
}

PictureAct find_on_last(job::DefectKind find) {
  return
      [find](const folds::CarView& car, const folds::ShopView&, SeededRandom&) -> Result<Commands> {
        if (car.pictures.empty() || !car.pictures.back().place.panel) return Commands{};
        return Commands{acts::CheckEdges{
            .job = car.job, .picture = car.pictures.back().picture, .finds = {find}}};
      };
}

PictureAct draw_on(Stage stage, const job::PictureNote& drawn) {
  return [stage, drawn](const folds::CarView& car, const folds::ShopView&,
                        SeededRandom&) -> Result<Commands> {
    for (const auto& picture : car.pictures)
      if (picture.place.stage == stage)
        return Commands{acts::NotePicture{car.job, picture.picture, drawn}};
    return Commands{};
  };
}

class PictureEvening {
 public:
  PictureEvening(Visit& visit, const DemoOptions& options, const Crew& crew)
      : visit_(visit), now_ms_(options.now.wall_ms), crew_(crew) {}
  std::int64_t at(int minutes_ago) const { return now_ms_ - minutes_ago * minute_ms; }
  void add(int minutes_ago, Who who, PictureAct act) {
    Step step{at(minutes_ago), crew_.at(who), {}};
    step.picture = std::move(act);
    const auto after = std::find_if(visit_.steps.begin(), visit_.steps.end(),
                                    [&](const Step& one) { return one.at_ms > step.at_ms; });
    visit_.steps.insert(after, std::move(step));
  }

 private:
  Visit& visit_;
  std::int64_t now_ms_;
  const Crew& crew_;
};

void last_pictures(int number, PictureEvening evening, const Photographer& who) {
  switch (number) {
    case 9:  // the nib has its picture, the run not yet
      evening.add(51, Who::Ivo, who.take(Stage::Inspect, std::size_t{0}, evening.at(51)));
      break;
    case 11:
      evening.add(60, Who::Ivo,
                  who.take(Stage::Inspect, "worst mark", job::Panel::Hood, evening.at(60)));
      break;
    case 12:
      evening.add(
          39, Who::Ana,
          draw_on(Stage::Inspect, {job::PictureNoteShape::Circle, 0.5, 0.5, 0.62, 0.5, {}}));
      evening.add(38, Who::Ana,
                  draw_on(Stage::Inspect, {job::PictureNoteShape::Text, 0.56, 0.3, 0.56, 0.3,
                                           "fiber, under the clear"}));
      evening.add(
          20, Who::Ana,
          who.take(Stage::EdgesAndJambs, "lamp pocket", job::Panel::LeftFender, evening.at(20)));
      evening.add(19, Who::Ana, find_on_last(job::DefectKind::PrimerShowing));
      break;
    case 13:
      evening.add(12, Who::Ana,
                  who.take(Stage::WalkAround, "front left corner", {}, evening.at(12)));
      break;
    default:
      break;
  }
}

}  // namespace

std::int64_t camera_comes_ms(const DemoOptions& options, const Calendar& calendar) {
  if (!options.camera) return std::numeric_limits<std::int64_t>::max();
  int workday = 0;
  while (calendar.morning_ms(workday) < options.now.wall_ms - came_days_ago * day_ms) ++workday;
  return calendar.morning_ms(workday) - picture_before_work_ms;
}

Visit shot_lists(const DemoOptions& options, const Calendar& calendar, const Crew& crew) {
  Visit out;
  if (!options.camera) return out;
  std::int64_t at_ms = camera_comes_ms(options, calendar);
  for (int i = 0; i <= static_cast<int>(Stage::Comeback); ++i) {
    acts::SetShotList list{static_cast<Stage>(i), {}};
    const auto& usual = job::usual_shots(list.stage);
    std::copy_if(usual.begin(), usual.end(), std::back_inserter(list.shots),
                 [&](const job::Shot& shot) { return is_wanted(list.stage, shot); });
    if (list.shots == usual) continue;
    out.steps.push_back({at_ms += 20 * second_ms, crew.at(Who::Rosa),
                         [list](const folds::CarView&) { return Commands{list}; }});
  }
  return out;
}

void add_pictures(Visit& visit, const DemoOptions& options, const Calendar& calendar,
                  const Crew& crew, std::optional<int> in_work) {
  if (!options.camera) return;
  const Photographer photographer(options, calendar);
  const std::int64_t from_ms = camera_comes_ms(options, calendar);
  for (std::size_t i = visit.steps.size(); i-- > 0;) {
    const Step finish = visit.steps[i];
    if (!finish.finishes || finish.at_ms < from_ms) continue;
    std::vector<Step> before;
    for (std::size_t which = 0; which < most_of_a_stage; ++which) {
      const std::int64_t at_ms =
          finish.at_ms - first_before_ms + static_cast<std::int64_t>(which) * apart_ms;
      before.push_back({at_ms, finish.person, {}});
      before.back().picture = photographer.take(*finish.finishes, which, at_ms);
    }
    if (*finish.finishes == Stage::EdgesAndJambs) {
      before.push_back({finish.at_ms - second_ms, finish.person, {}});
      before.back().picture = jambs_are_clean;
    }
    visit.steps.insert(visit.steps.begin() + static_cast<std::ptrdiff_t>(i), before.begin(),
                       before.end());
  }
  if (in_work) last_pictures(*in_work, PictureEvening(visit, options, crew), photographer);
}

}  // namespace jambline::demo
