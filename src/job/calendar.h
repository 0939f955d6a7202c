// job/calendar.h: when the shop is open.
//
// Shape:  per weekday (Monday first) the minutes of the day between which work is done; equal from
//         and to: closed. Holidays are closed days, as days since 1970. Days are those of the
//         shop's zone.
// Usual:  Monday to Friday 8 to 17, common practice, no source; shop-editable.
// Errors: of spans: those of base/zones.h; OutOfRange for more than 400 days. Pure.
#pragma once

#include <cstdint>
#include <string_view>
#include <vector>

#include "base/describe.h"
#include "base/error.h"

namespace jambline::job {

struct OpenDay {
  int from_min{};
  int to_min{};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "from_min", .unit = "min", .doc = "of the day", .min = 0, .max = 1440},
          self.from_min);
    visit(Field{.name = "to_min", .unit = "min", .min = 0, .max = 1440}, self.to_min);
  }
  friend bool operator==(const OpenDay&, const OpenDay&) = default;
};

struct Calendar {
  std::vector<OpenDay> week;  // seven, Monday first
  std::vector<int> holidays;  // days since 1970, rising
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "week", .doc = "seven days, Monday first"}, self.week);
    visit(Field{.name = "holidays", .unit = "d", .doc = "since 1970", .min = 0, .max = 100000},
          self.holidays);
  }
  friend bool operator==(const Calendar&, const Calendar&) = default;
};

Calendar usual_calendar();

struct OpenSpan {
  std::int64_t from_ms{};
  std::int64_t to_ms{};
  friend bool operator==(const OpenSpan&, const OpenSpan&) = default;
};
// The open times of so many days, from the day of `from_ms` on; rising, none of length 0.
Result<std::vector<OpenSpan>> open_spans(const Calendar& calendar, std::string_view zone,
                                         std::int64_t from_ms, int days);

}  // namespace jambline::job
