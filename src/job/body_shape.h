// job/body_shape.h: the five cars as paper patterns.
//
// Shape:   a CarPattern is the car unfolded and drawn to scale, front at the top: hood, roof and
// what
//          closes the rear in the middle column, the sides folded out to the left and the right,
//          bumper covers at both ends, mirror caps and fuel door apart. Millimetres, x to the
//          right, y up (towards the car's front); the box of everything begins at (0, 0).
//          Nothing overlaps. Left and right panels are mirror images, but for the cargo van, whose
//          sliding door is on the right.
// Order:   the walk round the car: from the left front corner along the left side, across the rear,
//          up the right side, across the front (bumper cover, hood), the roof last.
// Source:  sizes from the trade's common practice, no source (10 to 15 %); outlines drawn for this
//          program. They place marks on a panel; they do not measure a car.
// Threads: built once, read from any.
#pragma once

#include <vector>

#include "job/panel.h"
#include "trade/panel_shape.h"

namespace jambline::job {

struct PatternPanel {
  Panel panel{};
  trade::PanelShape shape;
  trade::Placement place;  // panel mm -> pattern mm
  bool often_off = false;  // commonly painted off the car
};

struct CarPattern {
  std::vector<PatternPanel> panels;
  std::vector<trade::Polygon> glass;  // windshield, back glass, bed: drawn dashed, in pattern mm
  trade::Box_mm bounds;               // of panels and glass

  const PatternPanel* find(Panel panel) const;  // null when this shape has no such panel
};

const CarPattern& pattern(BodyShape shape);

}  // namespace jambline::job
