// job/retention.h: for how long a shop keeps its records: the usual times, and until which day.
//
// Shape:   a usual time is whole years from the last day that a record is about; that of a fit test
//          is the next fit test, and the car's own records have none (common practice, no source).
// Rule:    a usual time is a floor of a federal rule in the United States. A local rule, a contract
//          or a lawsuit that asks for longer wins, so a shop sets years of its own; fewer years are
//          taken as they are said, and `shorter_than_usual` says that a rule may ask for longer.
// Years:   of the calendar: the same date in a later year; of February 29 where that year has none,
//          March 1. On that day the time is over; it is kept through the day before.
// Source:  each row's own; `text_year` is the year in which its text was last changed.
// Threads: pure.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "base/describe.h"

namespace jambline::job {

enum class RecordClass : std::uint8_t { Payroll, TimeCards, Spraying, FitTests, Exposure, CarJobs };

constexpr int most_kept_years = 100;

struct UsualRetention {
  RecordClass record{};
  std::optional<int> years = {};
  std::optional<int> on_site_years = {};  // the most recent ones
  bool until_next = false;                // until the next one of its kind is made
  std::string_view authority;             // empty: common practice, no source
  std::string_view source;
  int text_year = 0;  // 0: no source
};

const std::vector<UsualRetention>& usual_retentions();  // in the order of RecordClass
const UsualRetention& usual_retention(RecordClass record);

// What holds in a shop that said `own`, or nothing; none: no time in years.
std::optional<int> kept_years(RecordClass record, std::optional<int> own);
bool shorter_than_usual(RecordClass record, std::optional<int> own);

// Days since 1970. The first day on which the time is over.
int day_years_later(int day, int years);

}  // namespace jambline::job

// Stand in entries for ever; new ones are added at the end only.
template <>
inline constexpr auto jambline::enum_words<jambline::job::RecordClass> =
    std::to_array<std::string_view>({"payroll", "time cards", "spraying", "fit tests",
                                     "exposure and medical", "cars"});
