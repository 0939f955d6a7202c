#include "job/calendar.h"

#include <algorithm>

#include "base/zones.h"

namespace jambline::job {

namespace {
constexpr int most_days = 400;

// Days since 1970 of a date of the Gregorian calendar (H. Hinnant, chrono-compatible low-level date
// algorithms).
int day_number(const LocalDate& date) {
  const int year = date.month <= 2 ? date.year - 1 : date.year;
  const int era = (year >= 0 ? year : year - 399) / 400;
  const int year_of_era = year - era * 400;
  const int day_of_year = (153 * (date.month + (date.month > 2 ? -3 : 9)) + 2) / 5 + date.day - 1;
  return era * 146097 + year_of_era * 365 + year_of_era / 4 - year_of_era / 100 + day_of_year -
         719468;
}
}  // namespace

Calendar usual_calendar() {
  constexpr OpenDay work{8 * 60, 17 * 60};
  return {{work, work, work, work, work, {}, {}}, {}};
}

Result<std::vector<OpenSpan>> open_spans(const Calendar& calendar, std::string_view zone,
                                         std::int64_t from_ms, int days) {
  if (days < 0 || days > most_days) return fail(Code::OutOfRange, "read the calendar", "days");
  if (calendar.week.size() != 7) return fail(Code::Malformed, "read the calendar", "week");
  std::vector<OpenSpan> out;
  std::int64_t at_ms = from_ms;
  for (int i = 0; i < days; ++i) {
    JAMBLINE_ASSIGN(const LocalDate date, local_date_at(zone, at_ms));
    JAMBLINE_ASSIGN(const LocalDay whole, local_day(zone, date));
    at_ms = whole.end_ms;
    const int number = day_number(date);
    if (std::find(calendar.holidays.begin(), calendar.holidays.end(), number) !=
        calendar.holidays.end())
      continue;
    // 1970-01-01 was a Thursday.
    const auto& day = calendar.week[static_cast<std::size_t>(((number + 3) % 7 + 7) % 7)];
    if (day.to_min <= day.from_min) continue;
    JAMBLINE_ASSIGN(const std::int64_t open_ms, utc_of(zone, date, day.from_min));
    JAMBLINE_ASSIGN(const std::int64_t close_ms, day.to_min == 1440
                                                     ? Result<std::int64_t>(whole.end_ms)
                                                     : utc_of(zone, date, day.to_min));
    if (open_ms < close_ms) out.push_back({open_ms, close_ms});
  }
  return out;
}

}  // namespace jambline::job
