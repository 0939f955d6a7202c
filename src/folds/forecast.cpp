#include "folds/forecast.h"

#include <algorithm>
#include <map>

#include "base/spans.h"
#include "job/calendar.h"

namespace jambline::folds {

namespace {

double minutes(std::int64_t ms) {
  return static_cast<double>(ms) / ms_per_min;
}
std::int64_t from_minutes(double value_min) {
  return static_cast<std::int64_t>(value_min * ms_per_min);
}

std::string hold_name(std::size_t i) {
  return "hold " + std::to_string(i);
}

// Glass goes on beside assembling.
bool beside(job::Stage stage) {
  return stage == job::Stage::Glass;
}

// A date that has passed says no more than none.
bool open_ended(const HoldView& hold, std::int64_t now_ms) {
  return !hold.until_ms || *hold.until_ms <= now_ms;
}

const HoldView* without_end(const FloorRow& car, std::int64_t now_ms) {
  for (const auto& hold : car.holds)
    if (open_ended(hold, now_ms)) return &hold;
  return nullptr;
}

bool may_begin(const FloorRow& car, const OperationView& operation, std::int64_t now_ms) {
  return std::none_of(car.holds.begin(), car.holds.end(), [&](const HoldView& hold) {
    return open_ended(hold, now_ms) && hold.from_stage <= operation.stage;
  });
}

class Work {
 public:
  Work(const FloorRow& car, const LearnedDurations& learned, std::int64_t now_ms)
      : car_(car), learned_(learned), now_ms_(now_ms) {}

  std::vector<trade::WorkItem> items() {
    std::map<job::Stage, std::vector<const OperationView*>> by_stage;
    for (const auto& operation : car_.operations)
      if (!operation.done && operation.approval != job::Approval::Refused)
        by_stage[operation.stage].push_back(&operation);
    add_holds();
    std::vector<std::string> before;           // everything of the last stage in the row
    std::vector<std::string> before_assembly;  // and of the one before assembling
    std::vector<std::string> side;             // what goes on beside it
    for (const auto& [stage, operations] : by_stage) {
      if (stage <= job::Stage::Assemble) before_assembly = before;
      std::vector<std::string> after = beside(stage) ? before_assembly : before;
      if (!beside(stage)) after.insert(after.end(), side.begin(), side.end());
      for (std::size_t i = 0; i < car_.holds.size(); ++i)
        if (!open_ended(car_.holds[i], now_ms_) && car_.holds[i].from_stage <= stage)
          after.push_back(hold_name(i));
      std::vector<std::string> these;
      for (const auto* operation : operations) {
        these.push_back(operation->operation.hex());
        out_.push_back(item(*operation, after));
      }
      if (beside(stage)) {
        side = these;
      } else {
        if (stage < job::Stage::Assemble) before_assembly = these;
        if (stage > job::Stage::Glass) side.clear();
        before = these;
      }
    }
    return std::move(out_);
  }

 private:
  void add_holds() {
    for (std::size_t i = 0; i < car_.holds.size(); ++i) {
      if (open_ended(car_.holds[i], now_ms_)) continue;
      const double left_min = minutes(*car_.holds[i].until_ms - now_ms_);
      out_.push_back({hold_name(i), left_min, left_min, left_min, true, {}});
    }
  }

  trade::WorkItem item(const OperationView& operation, std::vector<std::string> after) const {
    const double estimate_min =
        operation.estimate_min > 0 ? operation.estimate_min : unestimated_min;
    const Spread spread = operation.work == job::WorkKind::FirstTime
                              ? learned_.spread_of(operation.stage)
                              : usual_spread;
    const double clocked_min = minutes(operation.clocked_ms);
    const auto left = [&](double ratio) {
      return std::max(0.0, ratio * estimate_min - clocked_min);
    };
    return {operation.operation.hex(),
            left(spread.least),
            left(spread.likely),
            std::max(clocked_min > 0 ? overrun_min : 0, left(spread.most)),
            false,
            std::move(after)};
  }

  const FloorRow& car_;
  const LearnedDurations& learned_;
  std::int64_t now_ms_;
  std::vector<trade::WorkItem> out_;
};

// From the end back, each time to what was ready last: where that row begins. Times are those on
// the calendar, for a wait goes on at night and work does not.
std::string first_of_row(const trade::ReadyBy& asked, const trade::ReadyByResult& result) {
  std::map<std::string, std::size_t> place;
  for (std::size_t i = 0; i < asked.work.size(); ++i) place[asked.work[i].name] = i;
  const auto sooner = [&](std::size_t a, std::size_t b) {
    return result.work[a].finish_min < result.work[b].finish_min;
  };
  std::size_t at = 0;
  for (std::size_t i = 1; i < asked.work.size(); ++i)
    if (sooner(at, i)) at = i;
  while (!asked.work[at].after.empty()) {
    std::size_t last = place.at(asked.work[at].after.front());
    for (const auto& name : asked.work[at].after)
      if (const std::size_t i = place.at(name); sooner(last, i)) last = i;
    at = last;
  }
  return asked.work[at].name;
}

// The hold or the operation behind a name of the network.
void name_holder(const FloorRow& car, const std::string& name, Forecast& out) {
  for (std::size_t i = 0; i < car.holds.size(); ++i)
    if (name == hold_name(i)) out.held_by = car.holds[i];
  for (const auto& operation : car.operations)
    if (operation.operation.hex() == name) out.held_by_stage = operation.stage;
}
}  // namespace

Result<trade::ReadyBy> forecast_asked(const FloorRow& car, const ShopView& shop,
                                      const LearnedDurations& learned, std::int64_t now_ms,
                                      int trials) {
  trade::ReadyBy in;
  in.work = Work(car, learned, now_ms).items();
  if (in.work.empty()) return fail(Code::AlreadyDone, "forecast", car.plate);
  const std::string zone = shop.zone.empty() ? "UTC" : shop.zone;
  JAMBLINE_ASSIGN(const auto spans, job::open_spans(shop.calendar, zone, now_ms, days_ahead));
  for (const auto& span : spans)
    if (span.to_ms > now_ms)
      in.hours.push_back(
          {minutes(std::max(span.from_ms, now_ms) - now_ms), minutes(span.to_ms - now_ms)});
  in.now_min = 0;
  if (car.promised_ms) in.promised_min = minutes(*car.promised_ms - now_ms);
  in.trials = trials;
  return in;
}

Result<Forecast> forecast_of(const FloorRow& car, const ShopView& shop,
                             const LearnedDurations& learned, std::int64_t now_ms, int trials) {
  JAMBLINE_ASSIGN(trade::ReadyBy asked, forecast_asked(car, shop, learned, now_ms, trials));
  JAMBLINE_ASSIGN(trade::ReadyByResult result, trade::ready_by(asked));
  Forecast out;
  out.job = car.job;
  const auto at = [&](double value_min) { return now_ms + from_minutes(value_min); };
  out.earliest_ms = at(result.earliest_min);
  out.likely_ms = at(result.likely_min);
  if (result.p90_min) out.late_ms = at(*result.p90_min);
  name_holder(car, first_of_row(asked, result), out);
  if (const auto* hold = without_end(car, now_ms)) {
    out.held_by = *hold;
    out.earliest_ms.reset();
    out.likely_ms.reset();
    out.late_ms.reset();
  } else {
    out.promise_percent = result.promise_percent;
    if (car.promised_ms) out.slack_ms = *car.promised_ms - *out.likely_ms;
  }
  std::optional<int> fewest;
  for (const auto& operation : car.operations) {
    if (operation.done) continue;
    ++out.operations;
    const int cars = learned.cars_of(operation.stage);
    fewest = std::min(fewest.value_or(cars), cars);
    if (std::find(result.next.begin(), result.next.end(), operation.operation.hex()) !=
            result.next.end() &&
        may_begin(car, operation, now_ms) &&
        std::find(out.next.begin(), out.next.end(), operation.stage) == out.next.end())
      out.next.push_back(operation.stage);
  }
  out.learned_from = fewest.value_or(0);
  out.asked = std::move(asked);
  out.result = std::move(result);
  return out;
}

}  // namespace jambline::folds
