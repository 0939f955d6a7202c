#include "screens/dirt_numbers.h"

#include <algorithm>
#include <map>

namespace jambline::screens {

namespace {
constexpr double ms_per_day = 86'400'000;
constexpr double confidence = 0.95;

bool fits(const DirtQuestion& question, const folds::Lesson& lesson) {
  if (question.booth && lesson.booth != question.booth) return false;
  if (question.since_ms && lesson.sprayed_ms < *question.since_ms) return false;
  return !question.painter || std::find(lesson.painters.begin(), lesson.painters.end(),
                                        *question.painter) != lesson.painters.end();
}

void count_causes(const std::vector<const folds::Lesson*>& cars, DirtNumbers& out) {
  std::map<std::optional<job::DirtCause>, int> counts;
  for (const auto* car : cars) {
    if (car->cause_said)
      ++counts[car->cause];
    else if (car->nibs > 0)
      ++out.cause_not_said;
  }
  for (const auto& [cause, count] : counts) out.causes.push_back({cause, count});
  std::stable_sort(out.causes.begin(), out.causes.end(),
                   [](const auto& a, const auto& b) { return a.cars > b.cars; });
}

void sum_painters(const std::vector<const folds::Lesson*>& cars, DirtNumbers& out) {
  std::map<PersonId, DirtPainter> sums;
  for (const auto* car : cars)
    for (const PersonId& person : car->painters) {
      DirtPainter& sum = sums[person];
      sum.person = person;
      ++sum.cars;
      sum.nibs += car->nibs;
      sum.sprayed_m2 += car->sprayed_m2;
    }
  for (auto& [person, sum] : sums) {
    const auto mean = trade::poisson_interval(sum.nibs, confidence);
    sum.rate_m2 = {mean.low / sum.sprayed_m2, mean.high / sum.sprayed_m2};
    sum.ranked = sum.cars >= cars_to_rank;
    out.painters.push_back(sum);
  }
  std::stable_sort(out.painters.begin(), out.painters.end(), [](const auto& a, const auto& b) {
    if (a.ranked != b.ranked) return a.ranked;
    return a.ranked ? a.per_m2() < b.per_m2() : a.cars > b.cars;
  });
}

// Effects are given for events with cars before and after, in the order of the events.
void take_effects(const trade::DirtChartResult& result, DirtNumbers& out) {
  std::vector<int> cars(out.events.size() + 1, 0);
  for (const auto& point : result.points) ++cars[static_cast<std::size_t>(point.segment)];
  auto effect = result.effects.begin();
  for (std::size_t i = 0; i < out.events.size(); ++i) {
    DirtEvent& event = out.events[i];
    event.cars_before = cars[i];
    event.cars_after = cars[i + 1];
    if (event.cars_before > 0 && event.cars_after > 0 && effect != result.effects.end())
      event.effect = *effect++;
  }
}
}  // namespace

Result<DirtNumbers> dirt_numbers(const DirtQuestion& question,
                                 const std::vector<folds::Lesson>& lessons,
                                 const folds::ShopView& shop) {
  DirtNumbers out;
  std::vector<const folds::Lesson*> cars;
  for (const auto& lesson : lessons) {
    if (!fits(question, lesson)) continue;
    if (lesson.counted && lesson.sprayed_ms > 0)
      cars.push_back(&lesson);
    else if (lesson.sprayed_m2 > 0)
      ++out.left_out;
  }
  if (cars.empty()) return out;
  std::stable_sort(cars.begin(), cars.end(),
                   [](const auto* a, const auto* b) { return a->sprayed_ms < b->sprayed_ms; });
  trade::DirtChart chart;
  for (const auto* car : cars) {
    chart.jobs.push_back(
        {static_cast<double>(car->sprayed_ms) / ms_per_day, car->nibs, car->sprayed_m2});
    out.cars.push_back({car->job, car->sprayed_ms, car->nibs, car->all_over, car->sprayed_m2, {}});
    out.nibs += car->nibs;
    out.sprayed_m2 += car->sprayed_m2;
  }
  for (const auto& event : shop.booth_events) {
    if (question.booth && event.booth != *question.booth) continue;
    if (question.since_ms && event.happened_ms < *question.since_ms) continue;
    chart.events.push_back(
        {static_cast<double>(event.happened_ms) / ms_per_day, std::string(word_of(event.what))});
    out.events.push_back({event, 0, 0, {}});
  }
  chart.confidence = confidence;
  JAMBLINE_ASSIGN(const auto result, trade::dirt_chart(chart));
  for (std::size_t i = 0; i < out.cars.size(); ++i) out.cars[i].point = result.points[i];
  take_effects(result, out);
  out.basis = result.basis;
  count_causes(cars, out);
  if (question.by_painter) sum_painters(cars, out);
  return out;
}

}  // namespace jambline::screens
