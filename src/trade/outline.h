// trade/outline.h: lines on a panel, and a refusal of places, lines and outlines that no panel has.
//
// Asks:    places within 10 m, at most 500 corners a line or outline, 100 lines; an outline is
// simple, has
//          three corners or more and an area of a square millimetre or more.
// Errors:  OutOfRange, Malformed, TooLarge; the field is named down to the coordinate. Pure.
#pragma once

#include <string>
#include <vector>

#include "base/describe.h"
#include "base/error.h"
#include "trade/geometry.h"

namespace jambline::trade {

inline constexpr double most_place_mm = 1e4;
inline constexpr std::size_t most_corners = 500;
inline constexpr std::size_t most_lines = 100;

struct PanelLine {  // a masked edge, a seam, a body line, a fade
  std::vector<Point_mm> points;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "points"}, self.points);
  }
};

// To the nearest of them; infinite when there is none.
double distance_to_lines_mm(Point_mm at, const std::vector<PanelLine>& lines);

Status need_place(const std::string& field, Point_mm place);
Status need_line(const std::string& field, const std::vector<Point_mm>& points);
Status need_lines(const std::string& field, const std::vector<PanelLine>& lines);
Status need_outline(const std::string& field, const std::vector<Point_mm>& corners);

}  // namespace jambline::trade
