#include "screens/round_areas.h"

#include <algorithm>

namespace jambline::screens {

RoundArea round_area(const folds::CarView& car, const folds::PlanOfCar& of,
                     const folds::WalkStation& station, job::Round round,
                     const job::PatternPanel& drawn, const trade::Placement& place) {
  RoundArea out;
  out.outline = place.apply(drawn.shape.outline.corners);
  for (const auto& line : drawn.shape.body_lines) out.body_lines.push_back(place.apply(line));
  out.keep_off_mm = of.plan.keep_off_mm;
  out.whole = station.whole;
  const folds::PanelView* panel = car.find(station.panel);
  if (!panel || station.whole) return out;
  double radius_mm = 0;
  for (const auto& rule : of.plan.rounds)
    if (rule.round == round) radius_mm = rule.radius_mm;
  const double hand_mm = of.plan.rounds.empty() ? 0 : of.plan.rounds.front().radius_mm;
  for (const auto& area : station.areas)
    for (const auto& mark : panel->marks)
      if (std::find(area.marks.begin(), area.marks.end(), mark.mark.hex()) != area.marks.end())
        out.spots.push_back({place.apply(trade::Point_mm{mark.x_mm, mark.y_mm}),
                             area.by_hand ? hand_mm : radius_mm, area.by_hand});
  return out;
}

void RoundAreas::set(std::vector<RoundArea> now, std::vector<RoundArea> next) {
  if (now == now_ && next == next_) return;
  now_ = std::move(now);
  next_ = std::move(next);
  emit changed();
}

}  // namespace jambline::screens
