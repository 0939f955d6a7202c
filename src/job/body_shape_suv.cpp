#include "job/body_shape_cars.h"
#include "job/body_shape_parts.h"

namespace jambline::job::draw {

using trade::Attitude;
using trade::Substrate;

CarPattern suv_wagon() {
  const double bottom_mm = 1800;
  const double crease_mm = 520;
  Layout table;

  table.lengthwise(Panel::Hood, hood(1050, 1640, 0.84, Substrate::Aluminum), -36);
  table.glass(
      {{0, 1014}, {320, 1022}, {600, 1056}, {736, 1098}, {586, 1478}, {320, 1446}, {0, 1436}}, 36);
  table.lengthwise(Panel::Roof, roof(2040, 1170, 1120, "liftgate seal"), 1510);

  const double front_door_mm = 1000 + gap_mm;
  const double rear_door_mm = front_door_mm + 1080 + gap_mm;
  table.pair(Panel::LeftFender, Panel::RightFender,
             fender({1000, 800, {480, 100, 372}, 300, crease_mm, 0.61}), 0, bottom_mm);
  table.pair(Panel::LeftFrontDoor, Panel::RightFrontDoor, door({1080, 770, crease_mm, 320, 300}),
             front_door_mm, bottom_mm);
  table.pair(Panel::LeftRearDoor, Panel::RightRearDoor,
             door({950, 770, crease_mm + 8, 320, 24, 800, 30}), rear_door_mm, bottom_mm);
  const Outline rear = quarter({.door_mm = 950,
                                .cut_mm = 800,
                                .height_mm = 778,
                                .wheel = {1410, 100, 372},
                                .tail_mm = 2220,
                                .joint_mm = 306,
                                .crease_mm = crease_mm + 16,
                                .sill_mm = 560,
                                .pillar_from_mm = 1560,
                                .pillar_to_mm = 1970,
                                .pillar_mm = 348,
                                .shelf_mm = 0,
                                .rear_edge = "liftgate opening",
                                .rear_glass = ""});
  table.pair(Panel::LeftQuarter, Panel::RightQuarter, leaned_over(rear.shape(Attitude::Upright)),
             rear_door_mm + rear.corner().x_mm, bottom_mm - rear.corner().y_mm);
  table.pair(Panel::LeftRocker, Panel::RightRocker, rocker(2000, 170), 900,
             bottom_mm + gap_mm + 170);

  table.rearward(Panel::Liftgate, hatch(1330, 700, 590), 4236);
  table.frontward(Panel::FrontBumper, front_bumper(2150, 600), -36 - gap_mm, true);
  table.rearward(Panel::RearBumper, rear_bumper(2150, 600), 4236 + 700 + gap_mm, true);
  table.pair(Panel::LeftMirror, Panel::RightMirror, mirror_cap(), -440, 1760, true);
  table.left(Panel::FuelDoor, fuel_door(), 5050, 1760, true);

  return table.done({Panel::LeftFender, Panel::LeftMirror, Panel::LeftFrontDoor,
                     Panel::LeftRearDoor, Panel::LeftRocker, Panel::LeftQuarter, Panel::FuelDoor,
                     Panel::Liftgate, Panel::RearBumper, Panel::RightQuarter, Panel::RightRocker,
                     Panel::RightRearDoor, Panel::RightFrontDoor, Panel::RightMirror,
                     Panel::RightFender, Panel::FrontBumper, Panel::Hood, Panel::Roof});
}

}  // namespace jambline::job::draw
