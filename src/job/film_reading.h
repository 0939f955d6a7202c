// job/film_reading.h: gauge readings of a spot, as they were typed, and what a gauge can show.
//
// Limits: the ranges that trade/film.h takes, so that what is kept can be computed with. One mil is
//         25.4 um exactly. Three readings a spot as in SSPC-PA 2.
// Words:  stand in entries for ever; new ones are added at the end only.
#pragma once

#include <cstdint>

#include "base/describe.h"

namespace jambline::job {

enum class FilmWhen : std::uint8_t { BeforeBase, BeforeCutting, AfterSequence };
enum class FilmGauge : std::uint8_t { Total, Clear };  // all down to metal; the clear alone
enum class FilmUnit : std::uint8_t { Micron, Mil };

inline constexpr double um_per_mil = 25.4;
inline constexpr double least_reading_um = 1;
inline constexpr double most_total_um = 3000;
inline constexpr double most_clear_um = 500;
inline constexpr int least_readings = 3;
inline constexpr int most_readings = 20;
inline constexpr int most_spots = 99;
// Two readings of one spot with work between them: what may lie between them at all.
inline constexpr double most_grown_um = 20;
inline constexpr double most_taken_um = 200;

constexpr double in_um(double typed, FilmUnit unit) {
  return unit == FilmUnit::Mil ? typed * um_per_mil : typed;
}
constexpr double most_reading_um(FilmGauge gauge) {
  return gauge == FilmGauge::Clear ? most_clear_um : most_total_um;
}

}  // namespace jambline::job

template <>
inline constexpr auto jambline::enum_words<jambline::job::FilmWhen> =
    std::to_array<std::string_view>({"before base", "before cutting", "after a sequence"});
template <>
inline constexpr auto jambline::enum_words<jambline::job::FilmGauge> =
    std::to_array<std::string_view>({"total", "clear"});
template <>
inline constexpr auto jambline::enum_words<jambline::job::FilmUnit> =
    std::to_array<std::string_view>({"um", "mil"});
