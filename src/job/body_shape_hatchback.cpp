#include "job/body_shape_cars.h"
#include "job/body_shape_parts.h"

namespace jambline::job::draw {

using trade::Attitude;
using trade::Substrate;

CarPattern two_door_hatchback() {
  const double bottom_mm = 1560;
  const double crease_mm = 462;
  Layout table;

  table.lengthwise(Panel::Hood, hood(950, 1440, 0.78, Substrate::Steel), -30);
  table.glass({{0, 922}, {280, 930}, {520, 962}, {650, 1004}, {520, 1412}, {280, 1380}, {0, 1370}},
              36);
  table.lengthwise(Panel::Roof, roof(1440, 1080, 1020, "hatch seal"), 1444);

  const double door_mm = 1050 + gap_mm;
  table.pair(Panel::LeftFender, Panel::RightFender,
             fender({1050, 674, {506, 88, 326}, 256, crease_mm, 0.60}), 0, bottom_mm);
  table.pair(Panel::LeftFrontDoor, Panel::RightFrontDoor, door({1350, 720, crease_mm, 280, 360}),
             door_mm, bottom_mm);
  const Outline rear = quarter({.door_mm = 1350,
                                .cut_mm = 1350,
                                .height_mm = 724,
                                .wheel = {1870, 88, 326},
                                .tail_mm = 2640,
                                .joint_mm = 262,
                                .crease_mm = crease_mm + 10,
                                .sill_mm = 470,
                                .pillar_from_mm = 1740,
                                .pillar_to_mm = 2190,
                                .pillar_mm = 236,
                                .shelf_mm = 0,
                                .rear_edge = "hatch opening",
                                .rear_glass = ""});
  table.pair(Panel::LeftQuarter, Panel::RightQuarter, leaned_over(rear.shape(Attitude::Upright)),
             door_mm + rear.corner().x_mm, bottom_mm - rear.corner().y_mm);
  table.pair(Panel::LeftRocker, Panel::RightRocker, rocker(1600, 150), 880,
             bottom_mm + gap_mm + 150);

  table.rearward(Panel::Hatch, hatch(1250, 740, 450), 3400);
  table.frontward(Panel::FrontBumper, front_bumper(2050, 550), -30 - gap_mm, true);
  table.rearward(Panel::RearBumper, rear_bumper(2000, 520), 3400 + 740 + gap_mm, true);
  table.pair(Panel::LeftMirror, Panel::RightMirror, mirror_cap(), -420, 1600, true);
  table.left(Panel::FuelDoor, fuel_door(), 4240, 1600, true);

  return table.done({Panel::LeftFender, Panel::LeftMirror, Panel::LeftFrontDoor, Panel::LeftRocker,
                     Panel::LeftQuarter, Panel::FuelDoor, Panel::Hatch, Panel::RearBumper,
                     Panel::RightQuarter, Panel::RightRocker, Panel::RightFrontDoor,
                     Panel::RightMirror, Panel::RightFender, Panel::FrontBumper, Panel::Hood,
                     Panel::Roof});
}

}  // namespace jambline::job::draw
