// screens/hours_table.h: hours written to a file for other programs (folds/hours_csv.h).
//
// File:    "hours 2026-09-21 to 2026-09-27 Ivo.csv" in the given folder, which is made; a file of
//          that name is never written over, the next one gets a number.
// Says:    what was written, or why not, in words. Blocks: for the calculation lane.
#pragma once

#include <QString>
#include <QStringList>
#include <optional>
#include <vector>

#include "folds/hours_csv.h"

namespace jambline::screens {

struct HoursTable {
  QString place;
  QString from;  // "2026-09-21"
  QString to;
  QString who;  // "" everybody
  std::optional<int> round_min;
};

QStringList rounding_words();  // the first is exact
std::optional<int> rounding_of(int step);
QString write_table(const HoursTable& table, const std::vector<folds::HoursSheet>& sheets,
                    const folds::ShopView& shop);

}  // namespace jambline::screens
