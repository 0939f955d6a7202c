#include "app/demo/booths.h"

#include <algorithm>
#include <optional>

#include "base/spans.h"

namespace jambline::demo {

namespace {

using job::BoothEvent;

constexpr std::int64_t before_work_ms = 25 * minute_ms;  // before seven: no car is sprayed yet

struct Logged {
  int days_ago;
  std::size_t booth;
  BoothEvent what;
  Who who;
  std::optional<bool> old_filters_out = {};
  std::int64_t said_later_ms = 0;
};

constexpr Logged events[] = {
    {640, 0, BoothEvent::NewSuits, Who::Ivo},
    {600, 1, BoothEvent::NewSuits, Who::Ivo},
    {540, 0, BoothEvent::Cleaned, Who::Ben},
    {hose_bad_from_days_ago, 1, BoothEvent::NewHose, Who::Ivo},
    {430, 0, BoothEvent::AirlineFilterChanged, Who::Ivo, {}, 540 * minute_ms},
    {hose_bad_until_days_ago, 1, BoothEvent::NewHose, Who::Ivo},
    {330, 0, BoothEvent::NewSuits, Who::Ivo},
    {316, 1, BoothEvent::AirlineFilterChanged, Who::Ivo},
    {filter_changed_days_ago, 0, BoothEvent::FiltersChanged, Who::Ben, true},
    {150, 0, BoothEvent::Cleaned, Who::Ben},
    {110, 1, BoothEvent::Cleaned, Who::Ben},
    {60, 0, BoothEvent::NewSuits, Who::Ivo},
};

// Before work of the first working day whose cars are painted less than so many days before now.
std::int64_t morning_after(const Calendar& calendar, std::int64_t now_ms, int days_ago) {
  const std::int64_t from_ms = now_ms - days_ago * day_ms;
  int workday = 0;
  while (calendar.morning_ms(workday) < from_ms) ++workday;
  return calendar.morning_ms(workday) - before_work_ms;
}
}  // namespace

std::vector<acts::AddBooth> invented_booths() {
  return {{"booth 1", job::BoothKind::Downdraft}, {"booth 2", job::BoothKind::CrossDraft}};
}

Visit booth_events(const Calendar& calendar, std::int64_t now_ms, const Crew& crew,
                   const std::vector<BoothId>& booths) {
  Visit out;
  for (const Logged& one : events) {
    const std::int64_t happened_ms = morning_after(calendar, now_ms, one.days_ago) +
                                     static_cast<std::int64_t>(one.booth) * 4 * minute_ms;
    acts::LogBoothEvent log{booths[one.booth], one.what, {}, one.old_filters_out};
    if (one.said_later_ms > 0) log.happened_ms = happened_ms;
    out.steps.push_back({happened_ms + one.said_later_ms, crew.at(one.who),
                         [log](const folds::CarView&) { return Commands{log}; }});
  }
  std::sort(out.steps.begin(), out.steps.end(),
            [](const Step& a, const Step& b) { return a.at_ms < b.at_ms; });
  return out;
}

}  // namespace jambline::demo
