#include "folds/worked.h"

#include <algorithm>

namespace jambline::folds {

namespace {
SpanEnd end_of(const CarView& car, const Hash& act) {
  SpanEnd out{act};
  const auto& acts = car.visit.clock_acts;
  const auto found = std::find_if(acts.begin(), acts.end(),
                                  [&](const ClockActView& one) { return one.entry == act; });
  if (found == acts.end() || found->at_ms == found->clock_ms) return out;
  out.clock_ms = found->clock_ms;
  out.reason = found->reason;
  out.by = found->amended_by;
  return out;
}
}  // namespace

Worked worked_of(const CarView& car) {
  Worked out;
  out.spans.reserve(car.worked.size());
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
    row.from = end_of(car, span.from);
    row.to = end_of(car, span.to);
    out.spans.push_back(std::move(row));
  }
  for (const auto& wait : car.visit.waits) {
    WaitedRow row{car.job, car.plate, wait.reason, wait.start_ms, wait.end_ms, wait.expected_ms};
    if (!row.end_ms && car.delivered_ms) row.end_ms = std::max(row.start_ms, *car.delivered_ms);
    out.waits.push_back(std::move(row));
  }
  return out;
}

}  // namespace jambline::folds
