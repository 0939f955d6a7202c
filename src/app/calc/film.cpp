#include "trade/film.h"

#include "app/calc/calculation.h"

namespace jambline::app {

namespace {
trade::FilmBudget budget_example() {
  trade::FilmBudget out;
  out.total_after_um = {131.2, 128.9, 130.4};
  out.total_before_base_um = {61.7, 60.8, 62.1};
  out.steps = {{"level", {2.5, 1}},
               {"refine", {1.5, 0.6}},
               {"compound", {1.5, 0.6}},
               {"polish", {0.7, 0.3}},
               {"finish", {0.3, 0.12}}};
  return out;
}

trade::RemovalLearning learning_example() {
  return {{6.5, 2}, {7.1, 8.4, 6.2, 9.0, 7.7, 6.9, 8.1, 7.4, 5.8, 8.8, 7.2}, 1.5, 3};
}

trade::FilmAcceptance acceptance_example() {
  return {{46.5, 52.1, 49.8, 58.3, 44.0}, 45, 60};
}
}  // namespace

std::vector<Calculation> film_calculations() {
  return {
      calculation<&trade::film_budget, &budget_example>(
          "film-budget", "clear that is there, what a sequence takes, and the chance of a limit"),
      calculation<&trade::learn_removal, &learning_example>(
          "film-learning", "what this shop's whole sequences take, from readings before and after"),
      calculation<&trade::accept_film, &acceptance_example>("film-acceptance",
                                                            "spots and area against a wanted film"),
  };
}

}  // namespace jambline::app
