// job/body_shape_draw.h: a pen for panel outlines and a table to lay panels out on.
//
// Outline draws counter-clockwise (y up) from a first corner; every stroke ends in a corner that
// may be rounded. Curves become strokes of at most 40 mm. Inner to body_shape*.cpp.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "job/body_shape.h"

namespace jambline::job::draw {

class Outline {
 public:
  Outline(double x_mm, double y_mm, double round_mm = 0);

  Outline& line(double x_mm, double y_mm, double round_mm = 0);
  // A flat arc; positive bulges outward (to the right of the way).
  Outline& bow(double x_mm, double y_mm, double bulge_mm, double round_mm = 0);
  Outline& curve(trade::Point_mm leave, trade::Point_mm arrive, trade::Point_mm end,
                 double round_mm = 0);
  // Along an ellipse from its angle to another, degrees counter-clockwise from the right; a
  // straight stroke leads to its first point.
  Outline& arch(trade::Point_mm center, double rx_mm, double ry_mm, double from_deg, double to_deg,
                double round_mm = 0);

  // Say what the stroke just drawn is.
  Outline& masked(std::string name);
  Outline& seam();
  // Draws the rest as the mirror image of all strokes so far, across x = axis or y = axis.
  Outline& mirror_x(double axis_mm);
  Outline& mirror_y(double axis_mm);

  Outline& body_line(trade::Polyline line);
  Outline& glass(trade::Polygon polygon);

  // Closes, rounds, and moves everything so that the outline's box begins at (0, 0).
  trade::PanelShape shape(trade::Attitude attitude,
                          trade::Substrate substrate = trade::Substrate::Steel) const;
  // What shape() subtracts from the drawn coordinates.
  trade::Point_mm corner() const;

 private:
  struct Stroke {
    trade::Polyline points;  // from the corner before to its end
    double round_mm = 0;     // of its end corner
    std::string masked = {};
    bool seam = false;
  };
  Outline& add(trade::Polyline points, double round_mm);
  void mirror(bool across_x, double axis_mm);
  std::vector<Stroke> rounded() const;

  trade::Point_mm start_;
  double start_round_mm_;
  std::vector<Stroke> strokes_;
  std::vector<trade::Polyline> body_lines_;
  std::vector<trade::Polygon> glass_;
};

// A cubic curve as points, both ends included.
trade::Polyline curve_points(trade::Point_mm from, trade::Point_mm leave, trade::Point_mm arrive,
                             trade::Point_mm end);
// A polygon with every corner rounded.
trade::Polygon rounded(const trade::Polygon& polygon, double round_mm);

// The table: middle line at x = 0, `along_mm` counts from the front backwards.
class Layout {
 public:
  // A left panel and its mirror image; `bottom_mm` is the distance of the panel's y = 0 from the
  // middle line.
  void pair(Panel left, Panel right, const trade::PanelShape& shape, double along_mm,
            double bottom_mm, bool often_off = false);
  void left(Panel panel, trade::PanelShape shape, double along_mm, double bottom_mm,
            bool often_off = false);
  // `shape` is drawn as a left panel; it is mirrored here.
  void right(Panel panel, const trade::PanelShape& shape, double along_mm, double bottom_mm,
             bool often_off = false);
  // Hood and roof: x along the car.
  void lengthwise(Panel panel, trade::PanelShape shape, double along_mm, bool often_off = false);
  // Seen from behind (decklid, hatch, rear bumper cover); `along_mm` is where its upper edge lies.
  void rearward(Panel panel, trade::PanelShape shape, double along_mm, bool often_off = false,
                double middle_mm = 0);
  // Seen from the front, upper edge towards the hood; `along_mm` is where that upper edge lies.
  void frontward(Panel panel, trade::PanelShape shape, double along_mm, bool often_off = false);
  // Symmetric glass or opening from half its corners (x_mm = half width, y_mm = along).
  void glass(const std::vector<trade::Point_mm>& half, double round_mm);

  // Sorted into the walk, shifted so that the box begins at (0, 0).
  CarPattern done(const std::vector<Panel>& walk) const;

 private:
  CarPattern pattern_;
};

}  // namespace jambline::job::draw
