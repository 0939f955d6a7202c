// job/round.h: a round of the correction on a panel, as it was done.
//
// Words: those of trade/correction_plan.h; they stand in entries for ever.
#pragma once

#include <cstdint>

#include "base/describe.h"
#include "trade/correction_plan.h"

namespace jambline::job {

using Round = trade::Round;

enum class RoundHow : std::uint8_t { AsPlanned, Added, Skipped };

}  // namespace jambline::job

template <>
inline constexpr auto jambline::enum_words<jambline::job::RoundHow> =
    std::to_array<std::string_view>({"as planned", "added", "skipped"});
