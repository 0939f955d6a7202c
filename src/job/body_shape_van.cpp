#include "job/body_shape_cars.h"
#include "job/body_shape_parts.h"

namespace jambline::job::draw {

using trade::Attitude;
using trade::PanelShape;
using trade::Substrate;

namespace {
constexpr double side_mm = 1300;  // sill to roof ditch
constexpr double crease_mm = 560;

// From the front edge at x = 0 to the tail; the wheel stands `wheel_mm` behind the front edge.
PanelShape side(double length_mm, double wheel_mm, bool rail) {
  const double l = length_mm;
  const Wheel wheel{wheel_mm, 96, 372};
  Outline o(4, 0, 20);
  o.arch({wheel.x_mm, wheel.y_mm}, wheel.radius_mm, wheel.radius_mm, 195, 16, 12)
      .masked("wheel opening");
  o.line(l - 20, 210, 22);
  o.bow(l, 420, 4, 8);
  o.line(l - 2, 800, 8).masked("lamp");
  o.curve({l - 4, side_mm * 0.75}, {l - 14, side_mm * 0.93}, {l - 54, side_mm}, 30)
      .masked("rear door opening");
  o.bow(16, side_mm, 6, 30).masked("ditch");
  o.bow(4, 0, 6, 20).seam();
  o.body_line({{6, crease_mm}, {l - 6, crease_mm}});
  if (rail) o.body_line({{10, 800}, {l - 120, 800}});
  // The pressed fields of a van's side.
  const double fields = rail ? 1 : 2;
  const double first_mm = rail ? 150 : 130;
  const double field_mm = (l - first_mm - 190 - (fields - 1) * 110) / fields;
  for (int i = 0; i < static_cast<int>(fields); ++i) {
    const double x_mm = first_mm + i * (field_mm + 110);
    auto field = rounded({{{x_mm, 850},
                           {x_mm + field_mm, 850},
                           {x_mm + field_mm - 14, side_mm - 110},
                           {x_mm + 8, side_mm - 110}}},
                         70)
                     .corners;
    field.push_back(field.front());
    o.body_line(std::move(field));
  }
  return o.shape(Attitude::Upright);
}

PanelShape sliding_door() {
  const double l = 1270;
  Outline o(0, 0, 40);
  o.line(l, 0, 40).seam();
  o.bow(l - 12, side_mm, 6, 60).seam();
  o.bow(40, side_mm, 4, 60).masked("track");
  o.bow(0, 0, 8, 40).seam();
  o.body_line({{14, crease_mm}, {l - 12, crease_mm}});
  o.body_line({{90, 800}, {l - 14, 800}});
  auto field =
      rounded({{{140, 850}, {l - 120, 850}, {l - 128, side_mm - 110}, {152, side_mm - 110}}}, 70)
          .corners;
  field.push_back(field.front());
  o.body_line(std::move(field));
  return o.shape(Attitude::Upright);
}

PanelShape cargo_door() {
  const double w = 770;
  const double h = 1500;
  Outline o(24, 0, 30);
  o.line(w, 0, 12).seam();
  o.line(w, h, 12).seam();
  o.bow(70, h - 24, 8, 70).seam();
  o.curve({30, h * 0.8}, {8, h * 0.68}, {4, h * 0.60}, 10).masked("hinge");
  o.line(0, h * 0.26, 10).masked("lamp");
  o.bow(24, 0, 3, 30).masked("hinge");
  o.body_line({{4, h * 0.36}, {w - 4, h * 0.36}});
  auto pane = rounded({{{120, 850}, {w - 70, 850}, {w - 70, 1390}, {158, 1390}}}, 60).corners;
  pane.push_back(pane.front());
  o.body_line(std::move(pane));
  auto plate = rounded({{{130, 200}, {w - 90, 200}, {w - 90, 400}, {130, 400}}}, 40).corners;
  plate.push_back(plate.front());
  o.body_line(std::move(plate));
  return o.shape(Attitude::Upright);
}

PanelShape step_bumper() {
  const double w = 1900;
  const double h = 350;
  Outline o(w / 2, 0);
  o.curve({w * 0.72, 0}, {w * 0.84, 0}, {w * 0.92, 24}, 60);
  o.bow(w, h * 0.5, 8, 40).masked("wheel opening");
  o.bow(w - 14, h - 10, 4, 34).seam();
  o.line(w * 0.80, h - 10, 40).masked("lamp");
  o.line(w * 0.775, h - 70, 30).masked("step");
  o.line(w / 2, h - 70).masked("step");
  o.body_line(curve_points({w / 2, 120}, {w * 0.7, 120}, {w * 0.9, 124}, {w * 0.975, 160}));
  o.mirror_x(w / 2);
  PanelShape out = o.shape(Attitude::Upright, Substrate::Plastic);
  out.radar_zone = true;
  return out;
}
}  // namespace

CarPattern cargo_van() {
  const double bottom_mm = 2112;
  Layout table;

  PanelShape short_hood = hood(740, 1710, 0.86, Substrate::Steel);
  short_hood.attitude = Attitude::Sloped;
  table.lengthwise(Panel::Hood, std::move(short_hood), -30, false);
  table.glass({{0, 690}, {340, 698}, {640, 736}, {790, 780}, {690, 1420}, {340, 1390}, {0, 1380}},
              40);
  table.lengthwise(Panel::Roof, roof(3400, 1470, 1460, "rear door seal"), 1456);

  const double door_mm = 850 + gap_mm;
  const double side_at_mm = door_mm + 1050 + gap_mm;
  table.pair(Panel::LeftFender, Panel::RightFender,
             fender({850, 856, {424, 100, 344}, 340, crease_mm, 0.66}), 0, bottom_mm);
  table.pair(Panel::LeftFrontDoor, Panel::RightFrontDoor, door({1050, 920, crease_mm, 340, 420}),
             door_mm, bottom_mm);
  table.left(Panel::LeftSide, side(2800, 1780, false), side_at_mm, bottom_mm);
  table.right(Panel::SlidingDoor, sliding_door(), side_at_mm, bottom_mm);
  const double behind_mm = side_at_mm + 1270 + gap_mm;
  table.right(Panel::RightSide, side(2800 - 1270 - gap_mm, 1780 - 1270 - gap_mm, true), behind_mm,
              bottom_mm);
  table.pair(Panel::LeftRocker, Panel::RightRocker, rocker(2640, 160), 790,
             bottom_mm + gap_mm + 160);

  const PanelShape rear_door = cargo_door();
  table.rearward(Panel::LeftCargoDoor, rear_door, 4940, false, -(770 + gap_mm) / 2);
  table.rearward(Panel::RightCargoDoor, trade::mirrored(rear_door), 4940, false,
                 (770 + gap_mm) / 2);
  table.frontward(Panel::FrontBumper, front_bumper(2100, 600), -30 - gap_mm, true);
  table.rearward(Panel::RearBumper, step_bumper(), 4940 + 1500 + gap_mm, true);
  table.pair(Panel::LeftMirror, Panel::RightMirror, mirror_cap(), -420, 1800, true);
  table.left(Panel::FuelDoor, fuel_door(), 4980, 1800, true);

  return table.done({Panel::LeftFender, Panel::LeftMirror, Panel::LeftFrontDoor, Panel::LeftRocker,
                     Panel::LeftSide, Panel::FuelDoor, Panel::LeftCargoDoor, Panel::RightCargoDoor,
                     Panel::RearBumper, Panel::RightSide, Panel::RightRocker, Panel::SlidingDoor,
                     Panel::RightFrontDoor, Panel::RightMirror, Panel::RightFender,
                     Panel::FrontBumper, Panel::Hood, Panel::Roof});
}

}  // namespace jambline::job::draw
