#include "job/retention.h"

#include <chrono>

namespace jambline::job {

const std::vector<UsualRetention>& usual_retentions() {
  static const std::vector<UsualRetention> all = {
      {.record = RecordClass::Payroll,
       .years = 3,
       .authority = "U.S. Department of Labor",
       .source = "29 CFR 516.5(a) (year from memory)",
       .text_year = 1987},
      {.record = RecordClass::TimeCards,
       .years = 2,
       .authority = "U.S. Department of Labor",
       .source = "29 CFR 516.6(a)(1)",
       .text_year = 1987},
      {.record = RecordClass::Spraying,
       .years = 5,
       .on_site_years = 2,
       .authority = "EPA",
       .source = "40 CFR 63.11177, 63.11178 (time and year from memory)",
       .text_year = 2008},
      {.record = RecordClass::FitTests,
       .until_next = true,
       .authority = "OSHA",
       .source = "29 CFR 1910.134(m)(2)(ii) (year from memory)",
       .text_year = 1998},
      {.record = RecordClass::Exposure,
       .years = 30,
       .authority = "OSHA",
       .source = "29 CFR 1910.1020(d)(1) (year from memory)",
       .text_year = 1996},
      {.record = RecordClass::CarJobs},
  };
  return all;
}

const UsualRetention& usual_retention(RecordClass record) {
  return usual_retentions()[static_cast<std::size_t>(record)];
}

std::optional<int> kept_years(RecordClass record, std::optional<int> own) {
  return own ? own : usual_retention(record).years;
}

bool shorter_than_usual(RecordClass record, std::optional<int> own) {
  const auto years = usual_retention(record).years;
  return own && years && *own < *years;
}

int day_years_later(int day, int years) {
  using namespace std::chrono;
  const year_month_day from{sys_days{days{day}}};
  const year_month_day later = from + std::chrono::years{years};
  // A February 29 that is none is counted on to March 1.
  const sys_days over = later.ok() ? sys_days{later} : sys_days{later.year() / March / 1};
  return static_cast<int>(over.time_since_epoch().count());
}

}  // namespace jambline::job
