// app/record/entry_lines.h: an entry in one plain line, for the command line.
//
// Shape:   plain US English, never more than one line; the same information as screens/entry_words.
//          A kind without words does not compile.
// Times:   in the shop's zone ("2026-11-24 16:30"), in UTC with a Z while there is none.
// Threads: any.
#pragma once

#include <string>

#include "entries/entry.h"
#include "folds/history.h"
#include "folds/shop_view.h"

namespace jambline::app {

struct Shop {
  const folds::ShopView& view;
  const folds::History& history;  // of the car, or of the shop's own stream
};

std::string line_of(const entries::Entry& entry, const Shop& shop);
std::string name_of(const PersonId& person, const folds::ShopView& shop);
std::string time_of(std::int64_t wall_ms, const std::string& zone);
// Control signs and line ends as blanks: what comes from an entry cannot move the cursor.
std::string one_line(std::string_view text);

}  // namespace jambline::app
