#include "folds/floor_view.h"

namespace jambline::folds {

FloorRow floor_row(const CarView& car) {
  FloorRow row;
  row.job = car.job;
  row.plate = car.plate;
  row.vin = car.vin;
  row.color = car.color;
  row.body = car.body;
  row.promised_ms = car.promised_ms;
  row.delivered_ms = car.delivered_ms;
  row.opened_ms = car.opened_ms;
  row.stages = static_cast<int>(car.stages.size());
  for (const auto& stage : car.stages) {
    if (stage.done)
      ++row.stages_done;
    else if (!row.next_stage)
      row.next_stage = stage.stage;
  }
  row.panels = static_cast<int>(car.panels.size());
  for (const auto& panel : car.panels) {
    if (panel.verdict != job::Verdict::NotLookedAt) ++row.panels_looked_at;
    row.marks_open += panel.open_marks();
    row.disputed = row.disputed || panel.disputed || panel.release.disputed;
    if (panel.release.state == ReleaseState::Offered && panel.release.to)
      row.offered_to.push_back(*panel.release.to);
  }
  if (car.car_release.state == ReleaseState::Offered && car.car_release.to)
    row.offered_to.push_back(*car.car_release.to);
  row.disputed = row.disputed || car.car_release.disputed;
  row.read_only = car.unknown_entries > 0;
  row.running = car.running;
  row.operations = car.operations;
  if (car.delivered_ms) return row;
  row.seen = car.seen;
  row.glass = glass_of(car.air);
  return row;
}

}  // namespace jambline::folds
