// trade/panel_shape.h: one outer panel laid flat, with what the work on it has to know.
//
// Shape:   millimetres on the developed skin, origin at the lower left of the outline's own box, y
//          up, seen from outside. Upright side panels: x along the car, y up. Hood and roof: x
//          along the car from front to rear, y across from the left edge to the right one. Bumper
//          covers, decklid, hatch, liftgate, tailgate and cargo doors: x across, y up. Wheel
//          openings are part of the outline. Glass lies outside it and bears no paint.
// Source:  rough real sizes (10 to 15 %), common practice, no source. Never for cutting or fitting.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "trade/geometry.h"

namespace jambline::trade {

// Level is 0 degrees: flat under 30, sloped 30 to 60, upright over 60.
enum class Attitude : std::uint8_t { Flat, Sloped, Upright };

enum class Substrate : std::uint8_t { Steel, Aluminum, Plastic, Carbon };

// A gauge that reads all down to the metal reads nothing on the others.
constexpr bool is_metal(Substrate substrate) {
  return substrate == Substrate::Steel || substrate == Substrate::Aluminum;
}

struct MaskedEdge {
  std::string name;  // what was masked there: "windshield", "lamp", "wheel opening"
  Polyline line;     // on the outline
};

struct PanelShape {
  Polygon outline;  // simple, counter-clockwise
  Attitude attitude = Attitude::Upright;
  Substrate substrate = Substrate::Steel;  // what it usually is; the car at hand decides
  bool radar_zone = false;  // a radar may sit behind it: the carmaker's film limit wins
  std::vector<MaskedEdge> masked_edges;
  std::vector<Polyline> seams;       // open gaps to a neighbour: gun air blows out of them
  std::vector<Polyline> body_lines;  // creases: less film on the edge, nothing is cut across them
  std::vector<Polygon> reach_over;   // strips the painter leans over; inside the outline
  std::vector<Polygon> glass;        // to be drawn dashed; outside the outline, may leave its box

  double width_mm() const { return bounds(outline.corners).width_mm(); }
  double height_mm() const { return bounds(outline.corners).height_mm(); }
};

// A place inside the outline beside its longest open gap, or its longest masked edge: where a find
// of an edge or a jamb is put until somebody moves it.
Point_mm beside_edge(const PanelShape& shape);

// The same panel of the other side of the car: x -> width - x, outline still counter-clockwise.
PanelShape mirrored(const PanelShape& shape);

// The strip `depth_mm` deep under the upper (or over the lower) edge of an outline, from x
// `from_mm` to `to_mm`; in pieces where the edge jumps from one part of the panel to another. Where
// the panel is shallower, the strip ends at the panel's edge. Empty where the outline does not
// reach. Counter- clockwise.
enum class Side : std::uint8_t { Lower, Upper };
std::vector<Polygon> edge_strip(const Polygon& outline, Side side, double depth_mm, double from_mm,
                                double to_mm);

}  // namespace jambline::trade

template <>
inline constexpr auto jambline::enum_words<jambline::trade::Attitude> =
    std::to_array<std::string_view>({"flat", "sloped", "upright"});

template <>
inline constexpr auto jambline::enum_words<jambline::trade::Substrate> =
    std::to_array<std::string_view>({"steel", "aluminum", "plastic", "carbon"});
