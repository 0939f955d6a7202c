// screens/sign_drawing.h: where on the map a sign of dirt lies: the circle of a cluster, the band
// along edges or gaps, the strips to lean over, the panels of a side, and all marks.
//
// Shape:   millimetres of the map: of one panel drawn upright, or of the whole pattern.
// Threads: pure; no Qt.
#pragma once

#include <optional>
#include <vector>

#include "job/body_shape.h"
#include "trade/dirt_pattern.h"

namespace jambline::screens {

struct SignDrawing {
  struct Band {
    trade::Polyline line;
    trade::Polygon within;  // the panel: the band ends at its edge
  };
  struct Circle {
    trade::Point_mm center;
    double radius_mm{};
    trade::Polygon within;
  };
  struct Mark {
    trade::Point_mm at;
    bool speaks = false;  // for the sign
  };
  std::vector<Band> bands;
  double band_mm = 0;  // to each side
  std::vector<trade::Polygon> areas;
  std::optional<Circle> circle;
  std::vector<Mark> marks;
};

// alone: one panel; none: the whole car. sign: null shows the marks alone.
SignDrawing sign_drawing(const trade::DirtPattern& asked, const job::CarPattern& body,
                         std::optional<job::Panel> alone, const trade::DirtEvidence* sign);

}  // namespace jambline::screens
