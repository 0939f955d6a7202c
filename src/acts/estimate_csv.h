// acts/estimate_csv.h: operations with estimate hours out of a CSV text.
//
// Shape:   the first record is the head and names `stage`, `title` and `hours` in any order and
//          case; other columns are passed over. A stage is a word of job/stage.h. Hours are at
//          least 0 and at most 1000, "1.5" or "1,5"; kept as whole minutes, half up.
// Rows:    a row that does not fit is given back with its line and why; the others stand. A quote
//          that never closes ends the reading with the row it began in.
// Errors:  Missing (a column; an empty text), TooLarge (over 1 MiB or 2000 rows), Malformed (not
// UTF-8). Source:  RFC 4180 for quoting and line ends; a lone LF ends a line too, a BOM is passed
// over. Threads: pure.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "acts/commands.h"
#include "base/error.h"

namespace jambline::acts {

enum class EstimateFault : std::uint8_t {
  FieldCount,
  UnknownStage,
  HoursNotANumber,
  HoursOutOfRange,
  TitleTooLong,
  TextAfterQuote,
  QuoteInside,
  QuoteNeverCloses,
};

struct RejectedRow {
  int line = 0;      // where the row begins, 1-based
  std::string text;  // as it stood, at most 120 bytes
  EstimateFault why{};
  friend bool operator==(const RejectedRow&, const RejectedRow&) = default;
};

struct EstimateRows {
  std::vector<PlannedOperation> operations;
  std::vector<RejectedRow> rejected;
};

inline constexpr std::size_t most_estimate_bytes = 1 << 20;
inline constexpr std::size_t most_estimate_rows = 2000;

Result<EstimateRows> read_estimate_csv(std::string_view text);

}  // namespace jambline::acts
