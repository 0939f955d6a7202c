// job/fit_edges.h: the edges of a panel that have a gap, where it is usually measured, and which
// way of the car the panel's own x, y and lift are.
//
// Shape:   an edge is the part of the outline that looks to one neighbour, in mm on the panel laid
//          flat, from its upper or left end on, as the panel is drawn upright (a hood: front up);
//          lamps and wheel openings are not of it. A
//          place has the direction out of the panel, counter-clockwise from x.
// Source:  which panels meet: common practice of the trade, no source. Outlines as in
//          body_shape.h: they place a point on a panel, they do not measure a car.
// Threads: built once, read from any. Pure.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

#include "job/body_shape.h"

namespace jambline::job {

enum class CarWay : std::uint8_t { Front, Rear, Left, Right, Up, Down, Out, In };
CarWay opposite(CarWay way);

// Where a move by plus x, y and lift goes.
struct PanelWays {
  CarWay x{};
  CarWay y{};
  CarWay lift{};
};
PanelWays ways_of(BodyShape body, Panel panel);

struct FitPlace {
  trade::Point_mm at;
  double direction_deg{};
};

struct FitEdge {
  std::optional<Panel> neighbor;  // none: the cowl, which is no panel of the pattern
  CarWay from{};                  // the end at which the line begins
  trade::Polyline line;
  std::vector<FitPlace> usual;  // five on a long edge, two on the shortest
};

// Empty: the panel has no gap that is set at slots.
const std::vector<FitEdge>& fit_edges(BodyShape body, Panel panel);

struct NearEdge {
  std::size_t edge{};
  FitPlace place;  // on that edge
  double along_mm{};
  double away_mm{};
};
std::optional<NearEdge> nearest_edge(const std::vector<FitEdge>& edges, trade::Point_mm point);

}  // namespace jambline::job
