// folds/hours_sheet.h: one person's hours over some days: every span, what it was on, and the sums.
//
// Days:   of the shop's zone, 23 and 25 hours long ones too. A week begins on Monday (ISO 8601).
// Spans:  as folds/worked.h has them, cut at midnight; what runs ends at the moment it was asked.
// Sums:   exact milliseconds, nothing is rounded. Where a person's clock ran on two cars at once
//         (two devices that had not met, an amendment), the day counts the time once, each
//         operation its own, and `twice_ms` says by how much the two differ.
// Left:   `between_ms` is what lies between the first and the last span of a day and is not
// clocked. Errors: of sheet_days those of base/zones.h; OutOfRange unless 1 to 400 days. Pure.
#pragma once

#include <array>
#include <string_view>

#include "base/zones.h"
#include "folds/worked.h"

namespace jambline::folds {

struct SheetDay {
  LocalDate date;
  LocalDay span;
};

// So many days from that date on.
Result<std::vector<SheetDay>> sheet_days(std::string_view zone, LocalDate from, int days);
// The Monday of that date's week.
LocalDate monday_of(LocalDate date);
LocalDate days_later(LocalDate date, int days);
int days_between(LocalDate from, LocalDate to);

struct SheetSpan {
  WorkedRow row;  // whole
  int day = 0;    // index into the days
  std::int64_t start_ms{};
  std::int64_t end_ms{};  // what of it lies in that day
  bool runs = false;
  bool twice = false;  // on something else too at the same time
};

// One operation of one car in one day.
struct SheetLine {
  int day = 0;
  JobId job;
  std::string plate;
  OperationId operation;
  job::Stage stage{};
  std::string title;
  job::WorkKind work{};
  std::int64_t ms{};
  bool clock_doubt = false;
  bool amended = false;
  bool runs = false;
};

struct SheetSum {
  std::int64_t worked_ms{};
  std::int64_t twice_ms{};
  std::array<std::int64_t, enum_words<job::WorkKind>.size()> by_work{};  // each operation its own
  std::int64_t between_ms{};
  bool clock_doubt = false;
  bool runs = false;
};

struct HoursSheet {
  PersonId person;
  std::vector<SheetDay> days;
  std::vector<SheetSpan> spans;  // by day, then start
  std::vector<SheetLine> lines;  // by day, then car and operation as they were first worked on
  std::vector<SheetSum> sums;    // by day
  SheetSum all;
};

// `running`: what runs, with its end at the moment that is asked about.
HoursSheet hours_sheet(const PersonId& person, const std::vector<WorkedRow>& spans,
                       const std::vector<WorkedRow>& running, std::vector<SheetDay> days);

}  // namespace jambline::folds
