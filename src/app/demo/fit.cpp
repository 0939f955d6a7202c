#include "app/demo/fit.h"

#include <cmath>
#include <numbers>

#include "folds/fit_of_panel.h"
#include "job/fit_edges.h"

namespace jambline::demo {

namespace {
acts::MeasureFit measured(const folds::CarView& car, job::Panel panel, bool is_set) {
  constexpr double forward_mm = 1.3;
  constexpr double low_mm = 0.9;
  constexpr double scatter_mm[] = {0.1, -0.1, 0.2, 0, -0.2};
  acts::MeasureFit out{car.job, panel, job::FitRound::TrialFit, {}};
  for (const auto& edge : job::fit_edges(car.body, panel))
    for (const auto& place : edge.usual) {
      const double angle = place.direction_deg * std::numbers::pi / 180;
      const double off_mm = is_set ? 0 : forward_mm * std::cos(angle) + low_mm * std::sin(angle);
      const double gap_mm =
          folds::usual_gap_mm + off_mm + scatter_mm[out.points.size() % std::size(scatter_mm)];
      out.points.push_back({place.at.x_mm,
                            place.at.y_mm,
                            place.direction_deg,
                            std::round(gap_mm * 10) / 10,
                            folds::usual_gap_mm,
                            {},
                            0});
    }
  return out;
}
}  // namespace

CarAct trial_fit(bool is_set) {
  return [is_set](const folds::CarView& car) {
    Commands out;
    for (const auto& panel : car.panels)
      if (!job::fit_edges(car.body, panel.plan.panel).empty())
        out.push_back(measured(car, panel.plan.panel, is_set));
    return out;
  };
}

}  // namespace jambline::demo
