// job/body_shape_parts.h: the panels that several body shapes share, cut to size.
//
// Left panels: x from front to rear, y up from the sill line. Inner to body_shape*.cpp.
#pragma once

#include "job/body_shape_draw.h"

namespace jambline::job::draw {

inline constexpr double gap_mm = 72;
inline constexpr double lean_band_mm = 250;

struct Wheel {
  double x_mm;
  double y_mm;  // of its middle over the sill line
  double radius_mm;
};

struct FenderPlan {
  double length_mm;
  double height_mm;
  Wheel wheel;
  double joint_mm;     // height of the bumper joint at the wheel opening
  double crease_mm;    // height of the body line at the door
  double nose = 0.55;  // height of the front edge, share of the whole
};
trade::PanelShape fender(const FenderPlan& plan);

struct DoorPlan {
  double length_mm;
  double height_mm;
  double crease_mm;
  double glass_mm;            // height of the glass over the belt
  double pillar_mm = 260;     // how far the glass leans back at the front
  double cut_mm = 0;          // rear door: where the dogleg meets the sill; 0 = straight
  double glass_rear_mm = 20;  // how far the glass leans forward at the rear
};
trade::PanelShape door(const DoorPlan& plan);

// Drawn in the coordinates of the door before it (same x, same y): the gap is in it.
struct QuarterPlan {
  double door_mm;  // length of that door
  double cut_mm;   // its dogleg; equal to door_mm = straight
  double height_mm;
  Wheel wheel;
  double tail_mm;   // x of the rearmost point
  double joint_mm;  // height of the bumper joint at the wheel opening
  double crease_mm;
  double sill_mm;         // length of the quarter glass over the belt; 0 = none
  double pillar_from_mm;  // pillar top, front and rear x
  double pillar_to_mm;
  double pillar_mm;  // its height over the belt
  double shelf_mm;   // length of the decklid gutter; 0 = the pillar runs down to the tail
  const char* rear_edge;
  const char* rear_glass;
};
Outline quarter(const QuarterPlan& plan);
// With the strip under the upper edge that the painter leans over.
trade::PanelShape leaned_over(trade::PanelShape shape);

trade::PanelShape hood(double length_mm, double width_mm, double front_share,
                       trade::Substrate substrate);
trade::PanelShape roof(double length_mm, double width_mm, double rear_width_mm,
                       const char* rear_edge);
trade::PanelShape front_bumper(double width_mm, double height_mm);
trade::PanelShape rear_bumper(double width_mm, double height_mm);
trade::PanelShape rocker(double length_mm, double height_mm);
trade::PanelShape mirror_cap();
trade::PanelShape fuel_door();
// Hatch and liftgate below the glass; the glass stands over it.
trade::PanelShape hatch(double width_mm, double height_mm, double glass_mm);

}  // namespace jambline::job::draw
