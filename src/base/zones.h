// base/zones.h: local days of a time zone, as UTC.
//
// Zones:   names of the IANA database ("America/New_York"); its data comes with the system (tzdata)
//          and is read at first use. Links ("US/Eastern") are followed. Unknown name: Unknown.
//          No database on the machine: NoSuchFile.
// Days:    [start, end) in UTC milliseconds; 23, 24 or 25 hours, and other lengths where a zone
//          moved its clocks otherwise. Where midnight does not exist, the day begins with the first
//          moment that does; where it comes twice, with the first. Consecutive days join without a
//          gap.
// Threads: any.
// Source:  Howard Hinnant's date library.
#pragma once

#include <cstdint>
#include <string_view>

#include "base/error.h"

namespace jambline {

struct LocalDate {
  int year{};
  int month{};  // 1..12
  int day{};    // 1..31
  friend auto operator<=>(const LocalDate&, const LocalDate&) = default;
};

struct LocalDay {
  std::int64_t start_ms{};
  std::int64_t end_ms{};
  std::int64_t length_ms() const { return end_ms - start_ms; }
  friend bool operator==(const LocalDay&, const LocalDay&) = default;
};

Status zone_known(std::string_view zone);
// Local time minus UTC at that instant.
Result<int> offset_s_at(std::string_view zone, std::int64_t utc_ms);
Result<LocalDate> local_date_at(std::string_view zone, std::int64_t utc_ms);
// OutOfRange for a date that no calendar has. A day that the zone skipped whole (Samoa, 2011-12-30)
// is empty: start == end.
Result<LocalDay> local_day(std::string_view zone, LocalDate date);
// A wall clock reading as UTC. In the hour that comes twice, the first; in the hour that is left
// out, the moment at which the clocks were moved.
Result<std::int64_t> utc_of(std::string_view zone, LocalDate date, int minute_of_day);

}  // namespace jambline
