// folds/fit_of_panel.h: the gaps of one panel as they were measured last, and how it should be
// moved.
//
// Shape:   the question as trade/panel_fit.h takes it, built from the points of the last round and
//          the fasteners of that panel; flush only where at least two points have it. What is left
//          of a slot is its travel less what was moved since the trial fit, the same both ways:
//          the stricter reading, for nobody knows where in its slot a bolt was.
//          fit_as_measured() is the answer as it stood when that round was measured.
// Wanted:  for a round after hanging, the gap of the trial fit at the nearest point within
//          `same_point_mm`, where there was one; what was out even then is wanted as it was.
// Pure.
#pragma once

#include <optional>
#include <vector>

#include "folds/car_view.h"
#include "trade/panel_fit.h"

namespace jambline::folds {

inline constexpr double same_point_mm = 60;
inline constexpr double usual_gap_mm = 4;  // common practice, no source; the carmaker's wins

// The last measuring of that panel and round that stands; null: none. No round: of any.
const FitView* last_fit(const CarView& car, job::Panel panel,
                        std::optional<job::FitRound> round = std::nullopt);

// What a new point there should be: of the trial fit, else usual and flush.
struct WantedGap {
  double gap_mm = usual_gap_mm;
  double flush_mm = 0;
  bool from_trial_fit = false;
};
WantedGap wanted_at(const CarView& car, job::Panel panel, double x_mm, double y_mm);

struct FitOfPanel {
  trade::PanelFit gaps_asked;
  std::optional<trade::PanelFit> flush_asked;
  std::optional<Result<trade::PanelFitResult>> gaps;  // none: fewer than two points
  std::optional<Result<trade::PanelFitResult>> flush;
};
std::optional<FitOfPanel> fit_of_panel(const CarView& car, job::Panel panel);
FitOfPanel fit_as_measured(const CarView& car, const FitView& fit);

// Moved after it was measured last: the answer is not one for where the panel is now.
bool moved_since(const CarView& car, const FitView& fit);

// The panel's latch or a hinge was moved and nobody checked latch and secondary catch since.
bool latch_to_check(const CarView& car);

}  // namespace jambline::folds
