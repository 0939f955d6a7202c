#include "base/zones.h"

#include <chrono>
#include <date/tz.h>
#include <stdexcept>
#include <string>

namespace jambline {

namespace {
using std::chrono::milliseconds;

Result<const date::time_zone*> find(std::string_view name) {
  try {
    date::get_tzdb();
  } catch (const std::exception& error) {
    return fail(
        Error{Code::NoSuchFile, "find time zone", std::string(name), {{"cause", error.what()}}});
  }
  if (!name.empty()) {
    try {
      return date::locate_zone(name);
    } catch (const std::exception&) {
      // The library reports an unknown name by throwing; said below as a value.
    }
  }
  return fail(Error{Code::Unknown, "find time zone", std::string(name), {{"field", "zone"}}});
}

date::sys_time<milliseconds> instant(std::int64_t utc_ms) {
  return date::sys_time<milliseconds>{milliseconds{utc_ms}};
}

// The library reckons in seconds as 32-bit years; four-digit years are all that a car needs.
constexpr std::int64_t least_ms = -62'135'596'800'000;  // 0001-01-01
constexpr std::int64_t most_ms = 253'402'300'799'999;   // 9999-12-31

Status in_range(std::int64_t utc_ms) {
  if (utc_ms >= least_ms && utc_ms <= most_ms) return {};
  return fail(Error{Code::OutOfRange,
                    "read time",
                    "",
                    {{"field", "utc_ms"},
                     {"value", std::to_string(utc_ms)},
                     {"min", std::to_string(least_ms)},
                     {"max", std::to_string(most_ms)}}});
}

Result<date::local_days> days_of(LocalDate day) {
  const date::year_month_day ymd{date::year{day.year},
                                 date::month{static_cast<unsigned>(day.month)},
                                 date::day{static_cast<unsigned>(day.day)}};
  if (day.month < 1 || day.month > 12 || day.day < 1 || day.day > 31 || !ymd.ok() || day.year < 1 ||
      day.year > 9998)
    return fail(Error{Code::OutOfRange,
                      "read date",
                      "",
                      {{"field", "date"},
                       {"value", std::to_string(day.year) + '-' + std::to_string(day.month) + '-' +
                                     std::to_string(day.day)}}});
  return date::local_days{ymd};
}

std::int64_t to_utc_ms(const date::time_zone& zone, date::local_seconds local) {
  return std::chrono::duration_cast<milliseconds>(
             zone.to_sys(local, date::choose::earliest).time_since_epoch())
      .count();
}
}  // namespace

Status zone_known(std::string_view zone) {
  JAMBLINE_TRY(find(zone));
  return {};
}

Result<int> offset_s_at(std::string_view zone, std::int64_t utc_ms) {
  JAMBLINE_TRY(in_range(utc_ms));
  JAMBLINE_ASSIGN(const date::time_zone* where, find(zone));
  return static_cast<int>(where->get_info(instant(utc_ms)).offset.count());
}

Result<LocalDate> local_date_at(std::string_view zone, std::int64_t utc_ms) {
  JAMBLINE_TRY(in_range(utc_ms));
  JAMBLINE_ASSIGN(const date::time_zone* where, find(zone));
  const date::year_month_day ymd{date::floor<date::days>(where->to_local(instant(utc_ms)))};
  return LocalDate{static_cast<int>(ymd.year()),
                   static_cast<int>(static_cast<unsigned>(ymd.month())),
                   static_cast<int>(static_cast<unsigned>(ymd.day()))};
}

Result<LocalDay> local_day(std::string_view zone, LocalDate day) {
  JAMBLINE_ASSIGN(const date::time_zone* where, find(zone));
  JAMBLINE_ASSIGN(const date::local_days first, days_of(day));
  return LocalDay{to_utc_ms(*where, first), to_utc_ms(*where, first + date::days{1})};
}

Result<std::int64_t> utc_of(std::string_view zone, LocalDate day, int minute_of_day) {
  JAMBLINE_ASSIGN(const date::time_zone* where, find(zone));
  JAMBLINE_ASSIGN(const date::local_days first, days_of(day));
  if (minute_of_day < 0 || minute_of_day >= 24 * 60)
    return fail(Error{Code::OutOfRange,
                      "read time",
                      "",
                      {{"field", "minute_of_day"},
                       {"value", std::to_string(minute_of_day)},
                       {"min", "0"},
                       {"max", "1439"}}});
  return to_utc_ms(*where, first + std::chrono::minutes{minute_of_day});
}

}  // namespace jambline
