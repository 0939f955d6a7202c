// screens/register_rows.h: what the shop keeps on a person's protection, row by row, and how each
// stands today.
//
// Rows:   the last fit test of each respirator, cartridges with the hours that the gun counted, and
//         the three due days; what is missing is a row too. A loose hood is not fit tested.
// State:  Must: overdue, under the pass mark, cartridge over its hours. Waits: due within 30 days.
//         A due day counts as a whole day. Never a word of what a person's health is.
// Threads: any.
#pragma once

#include <QString>
#include <vector>

#include "folds/air_view.h"
#include "screens/state_kind.h"

namespace jambline::screens {

struct RegisterRow {
  QString key;
  QString kind;   // "Fit test"
  QString title;  // with its respirator and size
  QString words;  // the value
  QString note;   // what it rests on
  StateKind state{};
  QString state_words;
  std::optional<trade::Basis> basis;  // of a number that opens
};

struct RegisterDay {
  std::int64_t now_ms{};
  QString zone;
};

struct DueWords {
  StateKind state{};
  QString words;
};
DueWords due_words(int due_day, int today);

std::vector<RegisterRow> register_rows(const folds::AirView& air, const PersonId& person,
                                       const RegisterDay& day);
// The one that presses most.
RegisterRow worst_of(const std::vector<RegisterRow>& rows);
// The shop's own: what feeds the airlines.
RegisterRow breathing_air_row(const folds::AirView& air, const RegisterDay& day);

}  // namespace jambline::screens
