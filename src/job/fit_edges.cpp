#include "job/fit_edges.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <numbers>

#include "job/fit.h"

namespace jambline::job {

namespace {
using trade::Point_mm;
using trade::Polyline;

constexpr double one_degree = std::numbers::pi / 180;

// Of the flat panel; a right side and the front bumper cover are seen the other way round.
enum class Side { LowX, HighX, LowY, HighY };

struct Meets {
  Side side;
  std::vector<Panel> neighbors;  // the first that this body has; none at all: the cowl
};

bool is_right(Panel panel) {
  switch (panel) {
    case Panel::RightFender:
    case Panel::RightFrontDoor:
    case Panel::RightRearDoor:
    case Panel::SlidingDoor:
      return true;
    default:
      return false;
  }
}

std::vector<Meets> rear_lid(const std::vector<Panel>& left, const std::vector<Panel>& right) {
  return {{Side::LowX, left}, {Side::HighX, right}, {Side::LowY, {Panel::RearBumper}}};
}

// Sides of a left panel from front to rear.
std::vector<Meets> meets(Panel panel) {
  switch (panel) {
    case Panel::Hood:
      return {{Side::LowY, {Panel::LeftFender}},
              {Side::HighY, {Panel::RightFender}},
              {Side::LowX, {Panel::FrontBumper}},
              {Side::HighX, {}}};
    case Panel::LeftFender:
      return {{Side::HighX, {Panel::LeftFrontDoor}},
              {Side::HighY, {Panel::Hood}},
              {Side::LowX, {Panel::FrontBumper}}};
    case Panel::RightFender:
      return {{Side::HighX, {Panel::RightFrontDoor}},
              {Side::HighY, {Panel::Hood}},
              {Side::LowX, {Panel::FrontBumper}}};
    case Panel::LeftFrontDoor:
      return {{Side::HighX,
               {Panel::LeftRearDoor, Panel::LeftQuarter, Panel::LeftSide, Panel::LeftCabCorner}},
              {Side::LowX, {Panel::LeftFender}},
              {Side::LowY, {Panel::LeftRocker}}};
    case Panel::RightFrontDoor:
      return {{Side::HighX,
               {Panel::RightRearDoor, Panel::RightQuarter, Panel::SlidingDoor, Panel::RightSide,
                Panel::RightCabCorner}},
              {Side::LowX, {Panel::RightFender}},
              {Side::LowY, {Panel::RightRocker}}};
    case Panel::LeftRearDoor:
      return {{Side::HighX, {Panel::LeftQuarter, Panel::LeftCabCorner}},
              {Side::LowX, {Panel::LeftFrontDoor}},
              {Side::LowY, {Panel::LeftRocker}}};
    case Panel::RightRearDoor:
      return {{Side::HighX, {Panel::RightQuarter, Panel::RightCabCorner}},
              {Side::LowX, {Panel::RightFrontDoor}},
              {Side::LowY, {Panel::RightRocker}}};
    case Panel::SlidingDoor:
      return {{Side::HighX, {Panel::RightSide}},
              {Side::LowX, {Panel::RightFrontDoor}},
              {Side::LowY, {Panel::RightRocker}}};
    case Panel::Decklid:
    case Panel::Hatch:
    case Panel::Liftgate:
      return rear_lid({Panel::LeftQuarter}, {Panel::RightQuarter});
    case Panel::Tailgate:
      return rear_lid({Panel::LeftBedSide}, {Panel::RightBedSide});
    case Panel::LeftCargoDoor:
      return rear_lid({Panel::LeftSide}, {Panel::RightCargoDoor});
    case Panel::RightCargoDoor:
      return rear_lid({Panel::LeftCargoDoor}, {Panel::RightSide});
    case Panel::FrontBumper:
      return {{Side::HighY, {Panel::Hood}},
              {Side::HighX, {Panel::LeftFender}},
              {Side::LowX, {Panel::RightFender}}};
    case Panel::RearBumper:
      return {
          {Side::LowX, {Panel::LeftQuarter, Panel::LeftBedSide, Panel::LeftSide}},
          {Side::HighX, {Panel::RightQuarter, Panel::RightBedSide, Panel::RightSide}},
          {Side::HighY,
           {Panel::Decklid, Panel::Hatch, Panel::Liftgate, Panel::Tailgate, Panel::LeftCargoDoor}}};
    default:
      return {};
  }
}

Point_mm outward(Side side) {
  switch (side) {
    case Side::LowX:
      return {-1, 0};
    case Side::HighX:
      return {1, 0};
    case Side::LowY:
      return {0, -1};
    case Side::HighY:
      break;
  }
  return {0, 1};
}

bool of_lamp_or_wheel(const trade::PanelShape& shape, Point_mm middle) {
  return std::any_of(shape.masked_edges.begin(), shape.masked_edges.end(), [&](const auto& edge) {
    return (edge.name == "lamp" || edge.name == "wheel opening") &&
           trade::distance_to_line_mm(middle, edge.line) < 1;
  });
}

// The longest part of the outline that looks to that side.
Polyline part_to(const trade::PanelShape& shape, Side side) {
  constexpr double least_facing = 0.75;
  const auto& corners = shape.outline.corners;
  const std::size_t n = corners.size();
  const Point_mm to = outward(side);
  std::vector<bool> faces(n);
  for (std::size_t i = 0; i < n; ++i) {
    const Point_mm a = corners[i];
    const Point_mm b = corners[(i + 1) % n];
    const double long_mm = trade::distance_mm(a, b);
    if (long_mm <= 0) continue;
    const double facing = ((b.y_mm - a.y_mm) * to.x_mm - (b.x_mm - a.x_mm) * to.y_mm) / long_mm;
    faces[i] = facing > least_facing &&
               !of_lamp_or_wheel(shape, {(a.x_mm + b.x_mm) / 2, (a.y_mm + b.y_mm) / 2});
  }
  Polyline best;
  double best_mm = 0;
  for (std::size_t start = 0; start < n; ++start) {
    if (!faces[start] || faces[(start + n - 1) % n]) continue;
    Polyline line{corners[start]};
    for (std::size_t i = start; faces[i % n] && i < start + n; ++i)
      line.push_back(corners[(i + 1) % n]);
    if (const double long_mm = trade::length_mm(line); long_mm > best_mm) {
      best_mm = long_mm;
      best = std::move(line);
    }
  }
  return best;
}

// `turned`: the line runs against the outline, which is counter-clockwise.
FitPlace place_at(const Polyline& line, double along_mm, bool turned) {
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const double long_mm = trade::distance_mm(line[i], line[i + 1]);
    if (along_mm > long_mm && i + 2 < line.size()) {
      along_mm -= long_mm;
      continue;
    }
    const double share = long_mm > 0 ? std::clamp(along_mm / long_mm, 0.0, 1.0) : 0;
    const double dx = line[i + 1].x_mm - line[i].x_mm;
    const double dy = line[i + 1].y_mm - line[i].y_mm;
    const double out = turned ? std::atan2(dx, -dy) : std::atan2(-dx, dy);
    return {{line[i].x_mm + share * dx, line[i].y_mm + share * dy}, out / one_degree};
  }
  return {};
}

bool runs_against(const FitEdge& edge, const trade::PanelShape& shape) {
  const FitPlace as_drawn = place_at(edge.line, trade::length_mm(edge.line) / 2, false);
  const Point_mm beyond{as_drawn.at.x_mm + 3 * std::cos(as_drawn.direction_deg * one_degree),
                        as_drawn.at.y_mm + 3 * std::sin(as_drawn.direction_deg * one_degree)};
  return trade::contains(shape.outline, beyond);
}

void begin_at_its_end(FitEdge& edge, const PanelWays& ways) {
  const Point_mm first = edge.line.front();
  const Point_mm last = edge.line.back();
  const bool along_x = std::abs(last.x_mm - first.x_mm) > std::abs(last.y_mm - first.y_mm);
  const CarWay positive = along_x ? ways.x : ways.y;
  const bool is_low = along_x ? first.x_mm < last.x_mm : first.y_mm < last.y_mm;
  const bool begins_low = along_x || positive == CarWay::Right;
  if (is_low != begins_low) std::reverse(edge.line.begin(), edge.line.end());
  edge.from = begins_low ? opposite(positive) : positive;
}

std::vector<FitPlace> usual_on(const FitEdge& edge, bool turned) {
  const double long_mm = trade::length_mm(edge.line);
  const int count = long_mm >= 600 ? 5 : long_mm >= 280 ? 3 : 2;
  constexpr double off_the_end = 0.07;
  std::vector<FitPlace> out;
  out.reserve(static_cast<std::size_t>(count));
  for (int i = 0; i < count; ++i)
    out.push_back(place_at(
        edge.line, long_mm * (off_the_end + (1 - 2 * off_the_end) * i / (count - 1)), turned));
  return out;
}

std::vector<FitEdge> edges_of(const CarPattern& car, BodyShape body, const PatternPanel& drawn) {
  std::vector<FitEdge> out;
  const PanelWays ways = ways_of(body, drawn.panel);
  for (const Meets& one : meets(drawn.panel)) {
    FitEdge edge;
    for (const Panel neighbor : one.neighbors)
      if (!edge.neighbor && car.find(neighbor)) edge.neighbor = neighbor;
    if (!edge.neighbor && !one.neighbors.empty()) continue;
    Side side = one.side;
    if (is_right(drawn.panel) && side == Side::LowX)
      side = Side::HighX;
    else if (is_right(drawn.panel) && side == Side::HighX)
      side = Side::LowX;
    edge.line = part_to(drawn.shape, side);
    if (edge.line.size() < 2) continue;
    begin_at_its_end(edge, ways);
    edge.usual = usual_on(edge, runs_against(edge, drawn.shape));
    out.push_back(std::move(edge));
  }
  return out;
}
}  // namespace

CarWay opposite(CarWay way) {
  switch (way) {
    case CarWay::Front:
      return CarWay::Rear;
    case CarWay::Rear:
      return CarWay::Front;
    case CarWay::Left:
      return CarWay::Right;
    case CarWay::Right:
      return CarWay::Left;
    case CarWay::Up:
      return CarWay::Down;
    case CarWay::Down:
      return CarWay::Up;
    case CarWay::Out:
      return CarWay::In;
    case CarWay::In:
      break;
  }
  return CarWay::Out;
}

PanelWays ways_of(BodyShape body, Panel panel) {
  const auto* drawn = pattern(body).find(panel);
  const bool flat = drawn && drawn->shape.attitude != trade::Attitude::Upright;
  switch (panel) {
    case Panel::Hood:
    case Panel::Roof:
      return {CarWay::Rear, CarWay::Right, CarWay::Up};
    case Panel::FrontBumper:
      return {CarWay::Left, CarWay::Up, CarWay::Out};
    case Panel::Decklid:
    case Panel::Hatch:
    case Panel::Liftgate:
    case Panel::Tailgate:
    case Panel::RearBumper:
    case Panel::LeftCargoDoor:
    case Panel::RightCargoDoor:
      return {CarWay::Right, flat ? CarWay::Front : CarWay::Up, flat ? CarWay::Up : CarWay::Out};
    default:
      return {is_right(panel) ? CarWay::Front : CarWay::Rear, CarWay::Up, CarWay::Out};
  }
}

const std::vector<FitEdge>& fit_edges(BodyShape body, Panel panel) {
  static const std::vector<FitEdge> none;
  static const auto all = [] {
    std::map<std::pair<BodyShape, Panel>, std::vector<FitEdge>> out;
    for (std::size_t i = 0; i < enum_words<BodyShape>.size(); ++i) {
      const auto shape = static_cast<BodyShape>(i);
      const CarPattern& car = pattern(shape);
      for (const auto& drawn : car.panels)
        if (!fasteners_of(shape, drawn.panel).empty())
          out[{shape, drawn.panel}] = edges_of(car, shape, drawn);
    }
    return out;
  }();
  const auto found = all.find({body, panel});
  return found == all.end() ? none : found->second;
}

std::optional<NearEdge> nearest_edge(const std::vector<FitEdge>& edges, Point_mm point) {
  std::optional<NearEdge> best;
  for (std::size_t e = 0; e < edges.size(); ++e) {
    const FitEdge& edge = edges[e];
    double before_mm = 0;
    for (std::size_t i = 0; i + 1 < edge.line.size(); ++i) {
      const Point_mm a = edge.line[i];
      const Point_mm b = edge.line[i + 1];
      const double long_mm = trade::distance_mm(a, b);
      if (long_mm <= 0) continue;
      const double share = std::clamp(
          ((point.x_mm - a.x_mm) * (b.x_mm - a.x_mm) + (point.y_mm - a.y_mm) * (b.y_mm - a.y_mm)) /
              (long_mm * long_mm),
          0.0, 1.0);
      const Point_mm at{a.x_mm + share * (b.x_mm - a.x_mm), a.y_mm + share * (b.y_mm - a.y_mm)};
      const double away_mm = trade::distance_mm(at, point);
      if (!best || away_mm < best->away_mm) {
        // A usual place knows which side of the line is out of the panel.
        const double along_deg = std::atan2(b.y_mm - a.y_mm, b.x_mm - a.x_mm) / one_degree;
        const double known = edge.usual.front().direction_deg;
        const double off = std::remainder(along_deg + 90 - known, 360);
        const double out_deg = std::abs(off) < 90 ? along_deg + 90 : along_deg - 90;
        best =
            NearEdge{e, {at, std::remainder(out_deg, 360)}, before_mm + share * long_mm, away_mm};
      }
      before_mm += long_mm;
    }
  }
  return best;
}

}  // namespace jambline::job
