// screens/panel_films.h: what the film of each panel of a car says. A panel that is as it was is
// not worked out again.
//
// Shape:   follow() with every new car; of() for its panels, which live as long as the car does.
// Source:  folds/film_of_panel.h and trade/film.h, with one whole sequence still to be done.
// Threads: GUI thread.
#pragma once

#include <map>
#include <memory>
#include <vector>

#include "folds/car_view.h"
#include "folds/film_of_panel.h"
#include "trade/film.h"

namespace jambline::screens {

struct JudgedFilm {
  folds::FilmOfPanel film;
  Result<trade::FilmBudgetResult> budget;
};

class PanelFilms {
 public:
  // Forgets the panels that are not as they were; null: all. Gives those that are.
  std::vector<job::Panel> follow(std::shared_ptr<const folds::CarView> car);
  void learn(std::vector<folds::LearnedSequence> learned);  // forgets all when it is another
  const JudgedFilm& of(const folds::PanelView& panel);

 private:
  std::shared_ptr<const folds::CarView> car_;
  std::vector<folds::LearnedSequence> learned_;
  std::map<job::Panel, JudgedFilm> kept_;
};

}  // namespace jambline::screens
