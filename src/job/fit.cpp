#include "job/fit.h"

#include <algorithm>
#include <map>

#include "job/body_shape.h"

namespace jambline::job {

namespace {
// Places as parts of the panel's box, from its lower left corner as drawn; travel each way.
struct At {
  const char* name;
  double x;
  double y;
  double travel_x_mm;
  double travel_y_mm;
  double travel_lift_mm;
  bool latch;
};

// Hood: x from front to rear, y from left to right. Others: y up; x along the car on a left side,
// from its front on, and across from the car's left on lids and bumper covers. A right side and the
// front bumper cover, seen from the front, are the mirror image.
const std::vector<At>& hood() {
  static const std::vector<At> list{{"left hinge to hood", 0.93, 0.08, 4, 3, 2, true},
                                    {"right hinge to hood", 0.93, 0.92, 4, 3, 2, true},
                                    {"left bump stop", 0.1, 0.22, 0, 0, 5, false},
                                    {"right bump stop", 0.1, 0.78, 0, 0, 5, false},
                                    {"latch", 0.05, 0.5, 4, 4, 4, true}};
  return list;
}
const std::vector<At>& lid() {
  static const std::vector<At> list{{"left hinge to lid", 0.15, 0.92, 3, 3, 3, true},
                                    {"right hinge to lid", 0.85, 0.92, 3, 3, 3, true},
                                    {"striker", 0.5, 0.05, 3, 3, 3, true}};
  return list;
}
const std::vector<At>& tailgate_fit() {
  static const std::vector<At> list{{"left hinge", 0.05, 0.06, 2, 2, 2, true},
                                    {"right hinge", 0.95, 0.06, 2, 2, 2, true},
                                    {"left striker", 0.02, 0.9, 3, 3, 3, true},
                                    {"right striker", 0.98, 0.9, 3, 3, 3, true}};
  return list;
}
const std::vector<At>& door() {
  static const std::vector<At> list{{"upper hinge to body", 0.04, 0.65, 3, 3, 3, true},
                                    {"lower hinge to body", 0.04, 0.2, 3, 3, 3, true},
                                    {"striker", 0.97, 0.5, 3, 3, 3, true}};
  return list;
}
const std::vector<At>& sliding_door_fit() {
  static const std::vector<At> list{{"upper roller", 0.05, 0.95, 3, 3, 3, true},
                                    {"lower roller", 0.05, 0.05, 3, 3, 3, true},
                                    {"middle roller", 0.95, 0.5, 3, 3, 3, true}};
  return list;
}
const std::vector<At>& fender() {
  static const std::vector<At> list{{"upper rear bolt", 0.9, 0.95, 3, 3, 2, false},
                                    {"lower rear bolt", 0.92, 0.08, 3, 3, 3, false},
                                    {"upper front bolt", 0.2, 0.8, 3, 3, 2, false}};
  return list;
}
const std::vector<At>& bumper_fit() {
  static const std::vector<At> list{{"left bracket", 0.05, 0.6, 2, 3, 2, false},
                                    {"right bracket", 0.95, 0.6, 2, 3, 2, false},
                                    {"middle support", 0.5, 0.78, 3, 3, 2, false}};
  return list;
}

bool is_mirror_image(Panel panel) {
  return panel == Panel::RightFrontDoor || panel == Panel::RightRearDoor ||
         panel == Panel::RightFender || panel == Panel::RightCargoDoor ||
         panel == Panel::SlidingDoor || panel == Panel::FrontBumper;
}

const std::vector<At>* at_of(Panel panel) {
  switch (panel) {
    case Panel::Hood:
      return &hood();
    case Panel::Decklid:
    case Panel::Hatch:
    case Panel::Liftgate:
      return &lid();
    case Panel::Tailgate:
      return &tailgate_fit();
    case Panel::SlidingDoor:
      return &sliding_door_fit();
    case Panel::LeftFrontDoor:
    case Panel::RightFrontDoor:
    case Panel::LeftRearDoor:
    case Panel::RightRearDoor:
    case Panel::LeftCargoDoor:
    case Panel::RightCargoDoor:
      return &door();
    case Panel::LeftFender:
    case Panel::RightFender:
      return &fender();
    case Panel::FrontBumper:
    case Panel::RearBumper:
      return &bumper_fit();
    default:
      return nullptr;
  }
}

std::vector<Panel> datums(Panel panel) {
  switch (panel) {
    case Panel::LeftRearDoor:
      return {Panel::LeftQuarter, Panel::LeftCabCorner, Panel::LeftRocker};
    case Panel::RightRearDoor:
      return {Panel::RightQuarter, Panel::RightCabCorner, Panel::RightRocker};
    case Panel::LeftFrontDoor:
      return {Panel::LeftRearDoor, Panel::LeftQuarter, Panel::LeftSide, Panel::LeftRocker};
    case Panel::RightFrontDoor:
      return {Panel::RightRearDoor, Panel::RightQuarter, Panel::SlidingDoor, Panel::RightRocker};
    case Panel::SlidingDoor:
      return {Panel::RightSide};
    case Panel::LeftFender:
      return {Panel::LeftFrontDoor};
    case Panel::RightFender:
      return {Panel::RightFrontDoor};
    case Panel::Hood:
      return {Panel::LeftFender};
    case Panel::FrontBumper:
      return {Panel::Hood, Panel::LeftFender};
    case Panel::Decklid:
    case Panel::Hatch:
    case Panel::Liftgate:
      return {Panel::LeftQuarter};
    case Panel::Tailgate:
      return {Panel::LeftBedSide};
    case Panel::LeftCargoDoor:
      return {Panel::LeftSide};
    case Panel::RightCargoDoor:
      return {Panel::RightSide};
    case Panel::RearBumper:
      return {Panel::LeftQuarter, Panel::LeftBedSide, Panel::LeftSide};
    default:
      return {};
  }
}
}  // namespace

const std::vector<Fastener>& fasteners_of(BodyShape body, Panel panel) {
  static const std::vector<Fastener> none;
  static const auto all = [] {
    std::map<std::pair<BodyShape, Panel>, std::vector<Fastener>> out;
    for (std::size_t i = 0; i < enum_words<BodyShape>.size(); ++i) {
      const auto shape = static_cast<BodyShape>(i);
      for (const auto& drawn : pattern(shape).panels) {
        const auto* list = at_of(drawn.panel);
        if (!list) continue;
        const auto box = trade::bounds(drawn.shape.outline.corners);
        auto& fasteners = out[{shape, drawn.panel}];
        for (const auto& one : *list) {
          const double x = is_mirror_image(drawn.panel) ? 1 - one.x : one.x;
          fasteners.push_back({one.name, box.low.x_mm + x * box.width_mm(),
                               box.low.y_mm + one.y * box.height_mm(), one.travel_x_mm,
                               one.travel_y_mm, one.travel_lift_mm, one.latch});
        }
      }
    }
    return out;
  }();
  const auto found = all.find({body, panel});
  return found == all.end() ? none : found->second;
}

std::optional<Panel> datum_of(BodyShape body, Panel panel) {
  for (const Panel one : datums(panel))
    if (pattern(body).find(one)) return one;
  return std::nullopt;
}

}  // namespace jambline::job
