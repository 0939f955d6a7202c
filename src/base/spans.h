// Spans of time: whole ones in ms, and what a number of ms is divided by.
#pragma once

#include <cstdint>

namespace jambline {

inline constexpr std::int64_t minute_ms = 60'000;
inline constexpr std::int64_t quarter_ms = 15 * minute_ms;  // of an hour
inline constexpr std::int64_t hour_ms = 60 * minute_ms;
inline constexpr std::int64_t day_ms = 24 * hour_ms;

inline constexpr double ms_per_min = 60'000;
inline constexpr double ms_per_h = 3'600'000;
inline constexpr double ms_per_day = 86'400'000;

}  // namespace jambline
