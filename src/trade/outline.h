// trade/outline.h: refuses places, lines and outlines that no panel has.
//
// Asks:    places within 10 m, at most 500 corners a line or outline; an outline is simple, has
//          three corners or more and an area of a square millimetre or more.
// Errors:  OutOfRange, Malformed, TooLarge; the field is named down to the coordinate. Pure.
#pragma once

#include <string>
#include <vector>

#include "base/error.h"
#include "trade/geometry.h"

namespace jambline::trade {

inline constexpr double most_place_mm = 1e4;
inline constexpr std::size_t most_corners = 500;

Status need_place(const std::string& field, Point_mm place);
Status need_line(const std::string& field, const std::vector<Point_mm>& points);
Status need_outline(const std::string& field, const std::vector<Point_mm>& corners);

}  // namespace jambline::trade
