#include "job/body_shape_cars.h"
#include "job/body_shape_parts.h"

namespace jambline::job::draw {

using trade::Attitude;
using trade::PanelShape;
using trade::Substrate;

namespace {
// Behind the rear door: sill foot, corner and C-pillar up to the roof.
PanelShape cab_corner() {
  Outline o(0, 0, 12);
  o.line(318, 0, 24);
  o.bow(330, 800, 6, 30).seam();
  o.curve({326, 860}, {250, 930}, {232, 1000}, 14).masked("back glass");
  o.bow(0, 990, 4, 14);
  o.curve({10, 930}, {12, 860}, {12, 800}).masked("door opening");
  o.bow(0, 0, -6, 12).masked("door opening");
  o.body_line({{14, 548}, {334, 552}});
  return o.shape(Attitude::Upright);
}

PanelShape bed_side() {
  const double l = 1880;
  const double h = 640;
  const Wheel wheel{800, 20, 384};
  Outline o(8, 0, 18);
  o.arch({wheel.x_mm, wheel.y_mm}, wheel.radius_mm, wheel.radius_mm, 183, 0, 12)
      .masked("wheel opening");
  o.line(l - 60, 20, 26);
  o.bow(l - 8, h * 0.42, 6, 16);
  o.bow(l, h - 20, -8, 24).masked("lamp");
  o.bow(8, h, 4, 20).masked("rail cap");
  o.line(8, 0, 18).seam();
  o.body_line({{10, 374}, {wheel.x_mm - 322, 374}});
  o.body_line({{wheel.x_mm + 322, 374}, {l - 24, 374}});
  o.body_line(curve_points({wheel.x_mm - 450, 30}, {wheel.x_mm - 440, 620}, {wheel.x_mm + 440, 620},
                           {wheel.x_mm + 450, 30}));
  o.body_line({{30, h - 62}, {l - 24, h - 78}});
  PanelShape out = o.shape(Attitude::Upright);
  out.reach_over = edge_strip(out.outline, trade::Side::Upper, lean_band_mm, 14, l - 30);
  return out;
}

PanelShape tailgate() {
  const double w = 1550;
  const double h = 550;
  Outline o(w / 2, 0);
  o.line(w - 10, 0, 30).seam();
  o.bow(w, h - 6, -4, 30).masked("lamp");
  o.bow(w / 2, h, 3).masked("top cap");
  o.body_line({{w / 2, h - 70}, {w - 40, h - 74}});
  o.body_line(curve_points({w / 2, 120}, {w * 0.8, 120}, {w * 0.93, 124}, {w * 0.94, 170}));
  o.body_line(curve_points({w * 0.94, 170}, {w * 0.95, 300}, {w * 0.95, 380}, {w / 2, 384}));
  o.body_line(
      rounded({{{w / 2, 296}, {w / 2 + 130, 296}, {w / 2 + 130, 352}, {w / 2, 352}}}, 10).corners);
  o.mirror_x(w / 2);
  return o.shape(Attitude::Upright);
}

// Broad and shallow, with the wheel opening's end and two openings.
PanelShape bumper() {
  const double w = 2000;
  const double h = 450;
  Outline o(w / 2, 30);
  o.curve({w * 0.64, 30}, {w * 0.72, 0}, {w * 0.84, 0}, 40);
  o.line(w * 0.93, 90, 40);
  o.bow(w, h * 0.56, 6, 24);
  o.bow(w - 12, h - 30, 4, 34).seam();
  o.curve({w * 0.90, h}, {w * 0.80, h}, {w * 0.70, h - 30}, 40).masked("lamp");
  o.curve({w * 0.62, h - 52}, {w * 0.56, h - 56}, {w / 2, h - 56}).masked("grille");
  o.body_line(curve_points({w / 2, 280}, {w * 0.64, 280}, {w * 0.66, 270}, {w * 0.665, 220}));
  o.body_line(curve_points({w * 0.665, 220}, {w * 0.66, 140}, {w * 0.62, 128}, {w / 2, 128}));
  o.body_line(
      rounded({{{w * 0.77, 150}, {w * 0.85, 165}, {w * 0.86, 260}, {w * 0.76, 260}}}, 20).corners);
  o.mirror_x(w / 2);
  PanelShape out = o.shape(Attitude::Upright, Substrate::Steel);
  out.radar_zone = true;
  return out;
}
}  // namespace

CarPattern crew_cab_pickup() {
  const double bottom_mm = 1730;
  const double crease_mm = 540;
  Layout table;

  table.lengthwise(Panel::Hood, hood(1250, 1640, 0.88, Substrate::Aluminum), -40, true);
  table.glass(
      {{0, 1210}, {340, 1218}, {620, 1252}, {760, 1292}, {650, 1706}, {340, 1676}, {0, 1666}}, 36);
  table.lengthwise(Panel::Roof, roof(1650, 1300, 1280, "back glass"), 1740);
  table.glass({{0, 3416}, {590, 3404}, {606, 3650}, {0, 3662}}, 40);
  table.glass({{0, 3790}, {790, 3790}, {790, 5440}, {0, 5440}}, 30);
  table.rearward(Panel::Tailgate, tailgate(), 5520, true);

  const double front_door_mm = 1150 + gap_mm;
  const double rear_door_mm = front_door_mm + 1070 + gap_mm;
  const double corner_mm = rear_door_mm + 950 + gap_mm - 6;
  const double bed_mm = corner_mm + 336 + gap_mm;
  table.pair(Panel::LeftFender, Panel::RightFender,
             fender({1150, 830, {540, 104, 392}, 300, crease_mm, 0.64}), 0, bottom_mm);
  table.pair(Panel::LeftFrontDoor, Panel::RightFrontDoor, door({1070, 800, crease_mm, 230, 230}),
             front_door_mm, bottom_mm);
  table.pair(Panel::LeftRearDoor, Panel::RightRearDoor, door({950, 800, crease_mm + 8, 230, 24}),
             rear_door_mm, bottom_mm);
  table.pair(Panel::LeftCabCorner, Panel::RightCabCorner, cab_corner(), corner_mm, bottom_mm);
  table.pair(Panel::LeftBedSide, Panel::RightBedSide, bed_side(), bed_mm, bottom_mm - 166);
  table.pair(Panel::LeftRocker, Panel::RightRocker, rocker(2180, 190), 980,
             bottom_mm + gap_mm + 190);

  table.frontward(Panel::FrontBumper, bumper(), -40 - gap_mm, true);
  table.pair(Panel::LeftMirror, Panel::RightMirror, mirror_cap(), -400, 1700, true);
  table.left(Panel::FuelDoor, fuel_door(), 5440, 1830, true);

  return table.done({Panel::LeftFender, Panel::LeftMirror, Panel::LeftFrontDoor,
                     Panel::LeftRearDoor, Panel::LeftRocker, Panel::LeftCabCorner,
                     Panel::LeftBedSide, Panel::FuelDoor, Panel::Tailgate, Panel::RightBedSide,
                     Panel::RightCabCorner, Panel::RightRocker, Panel::RightRearDoor,
                     Panel::RightFrontDoor, Panel::RightMirror, Panel::RightFender,
                     Panel::FrontBumper, Panel::Hood, Panel::Roof});
}

}  // namespace jambline::job::draw
