#include "job/body_shape_cars.h"
#include "job/body_shape_parts.h"

namespace jambline::job::draw {

using trade::Attitude;
using trade::PanelShape;
using trade::Substrate;

namespace {
PanelShape decklid() {
  const double w = 1340;
  const double face_mm = 340;
  const double h = 890;
  Outline o(w / 2, 0);
  o.bow(w * 0.80, 14, 6, 40).seam();
  o.curve({w * 0.83, face_mm * 0.5}, {w * 0.90, face_mm * 0.62}, {w * 0.965, face_mm * 0.72}, 30)
      .masked("lamp");
  o.line(w * 0.985, face_mm, 40).masked("lamp");
  o.curve({w, face_mm + 120}, {w * 0.985, h * 0.72}, {w * 0.945, h - 10}, 26).seam();
  o.curve({w * 0.82, h - 34}, {w * 0.64, h - 52}, {w / 2, h - 52}).masked("back glass");
  o.body_line(curve_points({w / 2, face_mm + 22}, {w * 0.72, face_mm + 22},
                           {w * 0.88, face_mm + 14}, {w * 0.975, face_mm - 6}));
  o.body_line(curve_points({w / 2, 70}, {w * 0.62, 70}, {w * 0.69, 86}, {w * 0.70, 200}));
  o.body_line(curve_points({w * 0.70, 200}, {w * 0.68, 214}, {w * 0.64, 216}, {w / 2, 216}));
  o.mirror_x(w / 2);
  return o.shape(Attitude::Flat);
}
}  // namespace

CarPattern four_door_sedan() {
  const double bottom_mm = 1640;
  const double crease_mm = 452;
  Layout table;

  table.lengthwise(Panel::Hood, hood(1150, 1560, 0.80, Substrate::Aluminum), -36, false);
  table.glass(
      {{0, 1118}, {300, 1126}, {560, 1160}, {690, 1204}, {556, 1640}, {300, 1606}, {0, 1594}}, 36);
  table.lengthwise(Panel::Roof, roof(1450, 1130, 1060, "back glass"), 1670);
  table.glass({{0, 3196}, {300, 3190}, {478, 3170}, {600, 3640}, {400, 3676}, {0, 3690}}, 36);
  table.rearward(Panel::Decklid, decklid(), 3770);

  const double front_door_mm = 1150 + gap_mm;
  const double rear_door_mm = front_door_mm + 1080 + gap_mm;
  table.pair(Panel::LeftFender, Panel::RightFender,
             fender({1150, 716, {548, 92, 346}, 262, crease_mm, 0.58}), 0, bottom_mm);
  table.pair(Panel::LeftFrontDoor, Panel::RightFrontDoor, door({1080, 690, crease_mm, 300, 330}),
             front_door_mm, bottom_mm);
  table.pair(Panel::LeftRearDoor, Panel::RightRearDoor,
             door({980, 690, crease_mm + 8, 300, 30, 820, 150}), rear_door_mm, bottom_mm);
  const Outline rear = quarter({.door_mm = 980,
                                .cut_mm = 820,
                                .height_mm = 700,
                                .wheel = {1392, 92, 346},
                                .tail_mm = 2340,
                                .joint_mm = 262,
                                .crease_mm = crease_mm + 16,
                                .sill_mm = 0,
                                .pillar_from_mm = 900,
                                .pillar_to_mm = 1130,
                                .pillar_mm = 312,
                                .shelf_mm = 580,
                                .rear_edge = "decklid gutter",
                                .rear_glass = "back glass"});
  table.pair(Panel::LeftQuarter, Panel::RightQuarter, leaned_over(rear.shape(Attitude::Upright)),
             rear_door_mm + rear.corner().x_mm, bottom_mm - rear.corner().y_mm);
  table.pair(Panel::LeftRocker, Panel::RightRocker, rocker(2000, 160), 1130,
             bottom_mm + gap_mm + 160);

  table.frontward(Panel::FrontBumper, front_bumper(2150, 560), -36 - gap_mm, true);
  table.rearward(Panel::RearBumper, rear_bumper(2150, 560), 4740, true);
  table.pair(Panel::LeftMirror, Panel::RightMirror, mirror_cap(), -420, 1700, true);
  table.left(Panel::FuelDoor, fuel_door(), 4800, 1700, true);

  return table.done({Panel::LeftFender, Panel::LeftMirror, Panel::LeftFrontDoor,
                     Panel::LeftRearDoor, Panel::LeftRocker, Panel::LeftQuarter, Panel::FuelDoor,
                     Panel::Decklid, Panel::RearBumper, Panel::RightQuarter, Panel::RightRocker,
                     Panel::RightRearDoor, Panel::RightFrontDoor, Panel::RightMirror,
                     Panel::RightFender, Panel::FrontBumper, Panel::Hood, Panel::Roof});
}

}  // namespace jambline::job::draw
