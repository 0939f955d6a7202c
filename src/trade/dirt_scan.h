// trade/dirt_scan.h: spacing and tightest cluster of the marks on one panel, against chance.
//
// Cost:    n^2 a pattern, radii together: 200 marks and 999 patterns in under a quarter of a
//          second. Threads: pure.
#pragma once

#include <vector>

#include "trade/draws.h"
#include "trade/geometry.h"
#include "trade/points.h"

namespace jambline::trade {

struct DirtScan {
  double mean_nearest_mm{};
  double expected_nearest_mm{};  // mean over the drawn patterns
  double spacing_chance{};       // of spacing as tight as this
  double cluster_chance{};
  int spacing_ties{};  // drawn patterns that came out the same; they count as no further off
  int cluster_ties{};
  Point_mm cluster_center;
  double cluster_radius_mm{};
  int cluster_marks{};
  double cluster_expected{};
};

// Two marks at least; their order does not matter. A chance is (1 + drawn patterns as far off or
// further) / (1 + patterns).
DirtScan scan_dirt(const Polygon& outline, const std::vector<Point_mm>& marks, int patterns,
                   Draws& draws);

}  // namespace jambline::trade
