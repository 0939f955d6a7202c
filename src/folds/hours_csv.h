// folds/hours_csv.h: the hours of people as a table for other programs (RFC 4180), one row a
// person, day, car and operation.
//
// Shape:  UTF-8, comma, lines end with CRLF, numbers with a point. worked_s is exact; the last
//         column is there only when rounding is asked for, to the nearest `round_min` minutes, the
//         same for everybody and both ways (trade/hours.h: round_neutral). Nothing else is rounded,
//         and nothing rounded is kept. `sheets` are made without what runs.
// Errors: OutOfRange for a step that is not 1 to 60. Pure.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "folds/hours_sheet.h"
#include "folds/shop_view.h"

namespace jambline::folds {

Result<std::string> hours_csv(const std::vector<HoursSheet>& sheets, const ShopView& shop,
                              std::optional<int> round_min);

}  // namespace jambline::folds
