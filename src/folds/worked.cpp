#include "folds/worked.h"

#include <algorithm>

namespace jambline::folds {

std::vector<WorkedRow> worked_of(const CarView& car) {
  std::vector<WorkedRow> out;
  out.reserve(car.worked.size());
  for (const auto& span : car.worked) {
    WorkedRow row{car.job, car.plate, span.person, span.operation};
    if (const auto* operation = car.find(span.operation)) {
      row.stage = operation->stage;
      row.title = operation->title;
      row.work = operation->work;
    }
    row.start_ms = span.start_ms;
    row.end_ms = span.end_ms;
    row.clock_doubt = span.clock_doubt;
    row.amended = std::any_of(car.visit.amended.begin(), car.visit.amended.end(),
                              [&](const ClockActView& act) {
                                return act.worker == span.person &&
                                       (act.at_ms == span.start_ms || act.at_ms == span.end_ms);
                              });
    out.push_back(std::move(row));
  }
  return out;
}

}  // namespace jambline::folds
