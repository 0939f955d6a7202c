// Spans of time that more than one screen keeps to.
#pragma once

#include "base/spans.h"

namespace jambline::screens {

inline constexpr int noon_min = 12 * 60;                          // of the day
inline constexpr int work_out_every_s = 30;                       // what depends on the time
inline constexpr std::int64_t mix_is_of_today_ms = 12 * hour_ms;  // not older than this

}  // namespace jambline::screens
