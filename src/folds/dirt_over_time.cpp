#include "folds/dirt_over_time.h"

#include <algorithm>
#include <map>

namespace jambline::folds {

namespace {
constexpr double day_ms = 86'400'000;
constexpr double least_m2 = 0.01;  // that the chart takes
constexpr int cars_to_say = 10;

double day_of(std::int64_t ms) {
  return static_cast<double>(ms) / day_ms;
}

bool fits(const DirtAsked& asked, const Lesson& lesson) {
  if (asked.booth && lesson.booth != asked.booth) return false;
  if (asked.since_ms && lesson.sprayed_ms < *asked.since_ms) return false;
  return !asked.painter || std::find(lesson.painters.begin(), lesson.painters.end(),
                                     *asked.painter) != lesson.painters.end();
}

void take_cars(const std::vector<Lesson>& lessons, const DirtAsked& asked, DirtOverTime& out) {
  for (const auto& lesson : lessons) {
    if (lesson.sprayed_m2 < least_m2 || !fits(asked, lesson)) continue;
    if (lesson.counted)
      out.cars.push_back(lesson);
    else
      ++out.left_out;
  }
  std::stable_sort(out.cars.begin(), out.cars.end(),
                   [](const auto& a, const auto& b) { return a.sprayed_ms < b.sprayed_ms; });
  for (const auto& car : out.cars)
    out.chart.jobs.push_back({day_of(car.sprayed_ms), car.nibs, car.sprayed_m2});
}

void take_changes(const std::vector<BoothEventView>& events, const DirtAsked& asked,
                  DirtOverTime& out) {
  std::vector<const BoothEventView*> in_time;
  for (const auto& event : events)
    if ((!asked.booth || event.booth == *asked.booth) &&
        (!asked.since_ms || event.happened_ms >= *asked.since_ms))
      in_time.push_back(&event);
  std::stable_sort(in_time.begin(), in_time.end(),
                   [](const auto* a, const auto* b) { return a->happened_ms < b->happened_ms; });
  const auto cars_before = [&](std::int64_t ms) {
    return static_cast<int>(
        std::lower_bound(out.cars.begin(), out.cars.end(), ms,
                         [](const Lesson& car, std::int64_t at) { return car.sprayed_ms < at; }) -
        out.cars.begin());
  };
  int seen = 0;
  for (const auto* event : in_time) {
    const int before = cars_before(event->happened_ms);
    if (out.changes.empty() || before > seen) {
      if (!out.changes.empty()) out.changes.back().cars_after = before - seen;
      out.changes.push_back({{}, before - seen, 0});
      out.chart.events.push_back({day_of(event->happened_ms), std::string(word_of(event->what))});
      seen = before;
    }
    out.changes.back().done.push_back(*event);
  }
  if (!out.changes.empty())
    out.changes.back().cars_after = static_cast<int>(out.cars.size()) - seen;
}

void count_causes(DirtOverTime& out) {
  std::map<std::optional<job::DirtCause>, int> counts;
  for (const auto& car : out.cars) {
    if (car.cause_said)
      ++counts[car.cause];
    else if (car.nibs > 0)
      ++out.cause_not_said;
  }
  for (const auto& [cause, cars] : counts) out.causes.push_back({cause, cars});
  std::stable_sort(out.causes.begin(), out.causes.end(),
                   [](const auto& a, const auto& b) { return a.cars > b.cars; });
}
}  // namespace

bool BoothChange::enough() const {
  return std::min(cars_before, cars_after) >= cars_to_say;
}

DirtOverTime dirt_over_time(const std::vector<Lesson>& lessons,
                            const std::vector<BoothEventView>& events, const DirtAsked& asked) {
  DirtOverTime out;
  take_cars(lessons, asked, out);
  take_changes(events, asked, out);
  count_causes(out);
  return out;
}

const trade::EventEffect* effect_of(const DirtOverTime& dirt, std::size_t change,
                                    const trade::DirtChartResult& result) {
  const BoothChange& asked = dirt.changes[change];
  if (asked.cars_before == 0 || asked.cars_after == 0) return nullptr;
  // Only the first change can be without a car before it.
  const std::size_t at = dirt.changes.front().cars_before == 0 ? change - 1 : change;
  return at < result.effects.size() ? &result.effects[at] : nullptr;
}

bool flagged(const trade::EventEffect& effect) {
  return effect.enough_jobs && effect.holm_chance < flagged_below;
}

}  // namespace jambline::folds
