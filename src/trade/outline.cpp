#include "trade/outline.h"

#include <algorithm>
#include <limits>

#include "trade/refusal.h"

namespace jambline::trade {

double distance_to_lines_mm(Point_mm at, const std::vector<PanelLine>& lines) {
  double least = std::numeric_limits<double>::infinity();
  for (const PanelLine& line : lines) least = std::min(least, distance_to_line_mm(at, line.points));
  return least;
}

Status need_place(const std::string& field, Point_mm place) {
  JAMBLINE_TRY(need(field + ".x_mm", place.x_mm, -most_place_mm, most_place_mm, "within 10 m"));
  return need(field + ".y_mm", place.y_mm, -most_place_mm, most_place_mm, "within 10 m");
}

Status need_line(const std::string& field, const std::vector<Point_mm>& points) {
  if (points.size() > most_corners)
    return fail(refusal(Code::TooLarge, field, "500 points at most"));
  for (std::size_t i = 0; i < points.size(); ++i)
    JAMBLINE_TRY(need_place(field + '[' + std::to_string(i) + ']', points[i]));
  return {};
}

Status need_lines(const std::string& field, const std::vector<PanelLine>& lines) {
  if (lines.size() > most_lines) return fail(refusal(Code::TooLarge, field, "100 lines at most"));
  for (std::size_t i = 0; i < lines.size(); ++i)
    JAMBLINE_TRY(need_line(field + '[' + std::to_string(i) + "].points", lines[i].points));
  return {};
}

Status need_outline(const std::string& field, const std::vector<Point_mm>& corners) {
  JAMBLINE_TRY(need_line(field, corners));
  if (corners.size() < 3)
    return fail(refusal(Code::Missing, field, "an outline has three corners or more"));
  const Polygon outline{corners};
  if (crosses_itself(outline))
    return fail(refusal(Code::Malformed, field, "the outline crosses or touches itself"));
  if (area_mm2(outline) < 1) return fail(refusal(Code::Malformed, field, "it has no area"));
  return {};
}

}  // namespace jambline::trade
