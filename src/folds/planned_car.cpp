#include "folds/planned_car.h"

#include <algorithm>

namespace jambline::folds {

namespace {
// Rounds that are still to be done, a panel; panels on which all is done are not among them.
std::map<job::Panel, std::vector<job::Round>> rounds_left(const Walk& walk) {
  std::map<job::Panel, std::vector<job::Round>> out;
  for (const auto& step : walk.steps)
    for (const auto& station : step.stations)
      if (!station.done) out[station.panel].push_back(step.round);
  return out;
}

Status work_out_all(const CarView& car, const ShopLessons& lessons, const PlanChoice& choice,
                    PlannedCar& out) {
  JAMBLINE_ASSIGN(out.of, plan_of_car(car, lessons.times, choice));
  JAMBLINE_ASSIGN(out.result, work_out(out.of));
  out.walk = walk_of(car, out.of, out.result);
  return {};
}
}  // namespace

ShopLessons shop_lessons(const std::vector<Lesson>& lessons) {
  Learned learned;
  for (const Lesson& lesson : lessons) learned.add(lesson);
  return {learned.times(), learned.sequences(), learned.returns()};
}

Result<PlannedCar> planned_car(const CarView& car, const ShopLessons& lessons, PlanChoice choice) {
  PlannedCar out;
  JAMBLINE_TRY(work_out_all(car, lessons, choice, out));
  bool refused = false;
  for (const auto& [panel, rounds] : rounds_left(out.walk)) {
    const PanelView* view = car.find(panel);
    if (!view) continue;
    FilmOfPanel of = film_of_panel(*view, {rounds}, lessons.sequences);
    auto result = trade::film_budget(of.budget);
    if (result) choice.film[panel] = result->word;
    refused = refused || (result && result->word == trade::FilmWord::DoNotCut);
    out.film.emplace(panel, PanelFilm{std::move(of), std::move(result)});
  }
  if (refused) JAMBLINE_TRY(work_out_all(car, lessons, choice, out));
  PlanOfCar by_table = out.of;
  for (auto& rule : by_table.plan.rounds) {
    rule.own_min_per_area.reset();
    rule.own_areas = 0;
  }
  JAMBLINE_ASSIGN(const auto usual, work_out(by_table));
  out.usual = walk_of(car, by_table, usual);
  return out;
}

}  // namespace jambline::folds
