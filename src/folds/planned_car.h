// folds/planned_car.h: the whole plan of a car's correction with the film word of each panel: what
// a screen shows.
//
// Film:    asked for the rounds that are still to be done. A panel whose word is "do not cut" is
//          left out (NotPlanned::FilmSaysNo); one on which nothing is left to do is not asked.
// Learned: own minutes and whole sequences of the shop, each shown from ten on.
// Errors:  those of plan_of_car.h. Threads: pure; some milliseconds for hundreds of marks.
#pragma once

#include "folds/film_of_panel.h"
#include "folds/lesson.h"
#include "folds/plan_of_car.h"

namespace jambline::folds {

struct ShopLessons {
  std::vector<LearnedTime> times;
  std::vector<LearnedSequence> sequences;
  std::vector<LearnedReturns> returns;
  friend bool operator==(const ShopLessons&, const ShopLessons&) = default;
};
ShopLessons shop_lessons(const std::vector<Lesson>& lessons);

struct PanelFilm {
  FilmOfPanel of;
  Result<trade::FilmBudgetResult> result;  // readings that do not fit together are said, not used
  bool says(trade::FilmWord word) const { return result && result->word == word; }
};

struct PlannedCar {
  PlanOfCar of;
  trade::CorrectionPlanResult result;
  Walk walk;
  std::map<job::Panel, PanelFilm> film;
  Walk usual;  // the same work by the usual table; the shop's own minutes stand beside it
};

Result<PlannedCar> planned_car(const CarView& car, const ShopLessons& lessons, PlanChoice choice);

}  // namespace jambline::folds
