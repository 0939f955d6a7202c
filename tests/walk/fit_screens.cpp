#include "fit_screens.h"

#include <cmath>

#include "job/fit_edges.h"
#include "rules.h"
#include "screens/fit_view_model.h"
#include "screens/panel_rows.h"

namespace jambline::walk {

namespace {
// Of every edge the usual points, as a panel that hangs too far forward and too low.
acts::MeasureFit gaps_of(const folds::CarView& car, job::Panel panel) {
  acts::MeasureFit said{car.job, panel, job::FitRound::TrialFit, {}};
  for (const auto& edge : job::fit_edges(car.body, panel))
    for (const auto& place : edge.usual) {
      const double angle = place.direction_deg * 3.14159265 / 180;
      const double gap_mm = 4 + 1.3 * std::cos(angle) + 0.8 * std::sin(angle);
      said.points.push_back({place.at.x_mm, place.at.y_mm, place.direction_deg,
                             std::round(gap_mm * 10) / 10, 4, std::round(6 * std::cos(angle)) / 10,
                             0});
    }
  return said;
}

// The list, or the first panel of it with its answer; a car may have none that hangs.
bool fit(Shop& shop, bool of_panel) {
  auto& screen = shop.program().fit();
  auto& session = shop.program().session();
  screen.openPanel({});
  if (!place(shop, "Floor", "Fit") || !session.car()) return false;
  if (!of_panel || screen.panelCount() == 0) return true;
  const QString key =
      screen.panels()
          ->data(screen.panels()->index(0, 0), screen.panels()->roleNames().key("key"))
          .toString();
  const auto panel = screens::panel_of_word(key);
  if (!panel) return false;
  if (!folds::last_fit(*session.car(), *panel)) session.post(gaps_of(*session.car(), *panel));
  settle_until(shop, [&] { return folds::last_fit(*session.car(), *panel); });
  screen.openPanel(key);
  settle(shop.window());
  return screen.panel() == key;
}

bool typed(Shop& shop) {
  if (!fit(shop, true)) return false;
  auto& screen = shop.program().fit();
  if (screen.panel().isEmpty()) return true;
  if (!press(shop, "fitAgain") && !press(shop, "fitMain")) return false;
  while (screen.typedCount() > 0) {
    for (int spot = 0; spot < screen.spots()->rowCount(); ++spot) {
      screen.chooseSpot(spot);
      screen.leaveOut();
    }
  }
  screen.chooseSpot(0);
  for (const int tenths : {31, 124}) screen.type(tenths);
  screen.pressUnit();
  screen.type(999);
  settle(shop.window());
  return screen.typedCount() > 0;
}
}  // namespace

std::vector<Screen> fit_screens() {
  return {
      {"fit", true, [](Shop& shop) { return fit(shop, false); }},
      {"fit-panel", true, [](Shop& shop) { return fit(shop, true); }},
      {"fit-typed", true, typed},
      {"fit-moves", true,
       [](Shop& shop) {
         if (!fit(shop, true)) return false;
         return shop.program().fit().panel().isEmpty() || press(shop, "fitMoved");
       }},
  };
}

}  // namespace jambline::walk
