#include "screens/panel_films.h"

#include <algorithm>

#include "screens/panel_rows.h"

namespace jambline::screens {

std::vector<job::Panel> PanelFilms::follow(std::shared_ptr<const folds::CarView> car) {
  auto same = as_they_were(car_.get(), car.get());
  std::erase_if(kept_, [&](const auto& one) {
    return std::find(same.begin(), same.end(), one.first) == same.end();
  });
  car_ = std::move(car);
  return same;
}

void PanelFilms::learn(std::vector<folds::LearnedSequence> learned) {
  if (learned == learned_) return;
  learned_ = std::move(learned);
  kept_.clear();
}

const JudgedFilm& PanelFilms::of(const folds::PanelView& panel) {
  const auto found = kept_.find(panel.plan.panel);
  if (found != kept_.end()) return found->second;
  auto film = folds::film_of_panel(panel, {folds::whole_sequence()}, learned_);
  auto budget = trade::film_budget(film.budget);
  return kept_.emplace(panel.plan.panel, JudgedFilm{std::move(film), std::move(budget)})
      .first->second;
}

}  // namespace jambline::screens
