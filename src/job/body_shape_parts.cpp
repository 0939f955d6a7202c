#include "job/body_shape_parts.h"

#include <cmath>

namespace jambline::job::draw {

using trade::Attitude;
using trade::PanelShape;
using trade::Polygon;
using trade::Polyline;
using trade::Substrate;

namespace {
constexpr double in_degrees = 180 / 3.14159265358979323846;

double rise_deg(const Wheel& wheel, double y_mm) {
  return std::asin((y_mm - wheel.y_mm) / wheel.radius_mm) * in_degrees;
}

// The crease that follows a wheel opening.
Polyline flare(const Wheel& wheel, double from_deg, double to_deg) {
  Polyline line;
  for (int i = 0; i <= 24; ++i) {
    const double angle = (from_deg + (to_deg - from_deg) * i / 24) / in_degrees;
    line.push_back({wheel.x_mm + (wheel.radius_mm + 48) * std::cos(angle),
                    wheel.y_mm + (wheel.radius_mm + 48) * std::sin(angle)});
  }
  return line;
}

// The drawn polygon where it was drawn, not moved to its own box.
Polygon placed_back(const Outline& outline) {
  const trade::Placement place{false, 0, 0, outline.corner()};
  return place.apply(outline.shape(Attitude::Upright).outline);
}

void lean_on_both_edges(PanelShape& shape, double from_mm, double to_mm) {
  for (const trade::Side side : {trade::Side::Lower, trade::Side::Upper})
    for (Polygon& strip : edge_strip(shape.outline, side, lean_band_mm, from_mm, to_mm))
      shape.reach_over.push_back(std::move(strip));
}
}  // namespace

PanelShape fender(const FenderPlan& plan) {
  const double l = plan.length_mm;
  const double h = plan.height_mm;
  const Wheel& w = plan.wheel;
  Outline o(14, plan.joint_mm + 46, 22);
  o.arch({w.x_mm, w.y_mm}, w.radius_mm, w.radius_mm, 180 - rise_deg(w, plan.joint_mm),
         rise_deg(w, 0), 10)
      .masked("wheel opening");
  o.line(l - 8, 0, 14);
  o.bow(l, h * 0.86, -9, 26).masked("door opening");
  o.curve({l - 8, h * 0.93}, {l - 40, h - 4}, {l - 96, h}, 10).masked("door opening");
  o.curve({l * 0.62, h * 0.995}, {l * 0.36, h * 0.945}, {l * 0.14, h * 0.84}, 46)
      .masked("hood edge");
  o.curve({l * 0.07, h * 0.79}, {l * 0.015, h * (plan.nose + 0.09)}, {0, h * plan.nose}, 20)
      .masked("lamp");
  o.body_line(curve_points({l * 0.13, plan.crease_mm + 30}, {l * 0.4, plan.crease_mm + 48},
                           {l * 0.7, plan.crease_mm + 20}, {l - 14, plan.crease_mm}));
  o.body_line(flare(w, 168 - rise_deg(w, plan.joint_mm), 4));
  PanelShape out = o.shape(Attitude::Upright);
  out.reach_over = edge_strip(out.outline, trade::Side::Upper, lean_band_mm, l * 0.17, l - 12);
  return out;
}

PanelShape door(const DoorPlan& plan) {
  const double l = plan.length_mm;
  const double h = plan.height_mm;
  Outline o(8, 0, 36);
  if (plan.cut_mm > 0) {
    o.line(plan.cut_mm, 0, 30);
    o.curve({plan.cut_mm + 6, h * 0.26}, {l - 6, h * 0.30}, {l, h * 0.62}).seam();
    o.bow(l - 4, h, 3, 16).seam();
  } else {
    o.line(l - 4, 0, 36);
    o.bow(l - 6, h, -8, 16).seam();
  }
  o.bow(6, h - 20, 5, 14).masked("glass run");
  o.bow(8, 0, 9, 36).seam();
  o.body_line({{3, plan.crease_mm}, {l - 12, plan.crease_mm + 8}});
  o.body_line(curve_points({40, h * 0.17}, {l * 0.3, h * 0.2}, {l * 0.6, h * 0.2},
                           {(plan.cut_mm > 0 ? plan.cut_mm : l) - 30, h * 0.24}));
  const double rear_mm = l - 34;
  Outline glass(50, h + 12, 16);
  glass.line(rear_mm, h + 28, 16);
  glass.line(rear_mm - plan.glass_rear_mm, h + plan.glass_mm, 40);
  glass.bow(plan.pillar_mm + 40, h + plan.glass_mm - 14, 6, 60);
  glass.bow(50, h + 12, 10, 16);
  o.glass(placed_back(glass));
  return o.shape(Attitude::Upright);
}

Outline quarter(const QuarterPlan& plan) {
  const double h = plan.height_mm;
  const Wheel& w = plan.wheel;
  const double front_mm = plan.door_mm + gap_mm;
  const double foot_mm = plan.cut_mm + gap_mm;
  const double tail_mm = plan.tail_mm;
  const bool dogleg = plan.cut_mm < plan.door_mm;

  Outline o(foot_mm, 0, 12);
  o.arch({w.x_mm, w.y_mm}, w.radius_mm, w.radius_mm, 180 - rise_deg(w, 0),
         rise_deg(w, plan.joint_mm), 10)
      .masked("wheel opening");
  o.line(tail_mm - 14, plan.joint_mm + 60, 24);
  o.line(tail_mm, h * 0.64, 14);
  if (plan.shelf_mm > 0) {
    o.curve({tail_mm - 4, h * 0.76}, {tail_mm - 40, h * 0.88}, {tail_mm - 84, h * 0.955}, 36)
        .masked("lamp");
    o.bow(tail_mm - 84 - plan.shelf_mm, h + 6, 8).masked(plan.rear_edge);
    o.curve({tail_mm - 150 - plan.shelf_mm, h + 12},
            {plan.pillar_to_mm + 170, h + plan.pillar_mm * 0.70},
            {plan.pillar_to_mm, h + plan.pillar_mm}, 14)
        .masked(plan.rear_glass);
  } else {
    o.curve({tail_mm - 2, h * 0.78}, {tail_mm - 16, h * 0.92}, {tail_mm - 38, h * 1.0}, 12)
        .masked("lamp");
    o.curve({tail_mm - 70, h + plan.pillar_mm * 0.32},
            {plan.pillar_to_mm + 60, h + plan.pillar_mm * 0.76},
            {plan.pillar_to_mm, h + plan.pillar_mm}, 20)
        .masked(plan.rear_edge);
  }
  o.bow(plan.pillar_from_mm, h + plan.pillar_mm - 8, 4, 14);
  if (plan.sill_mm > 0) {
    const double sill_rear_mm = front_mm + plan.sill_mm;
    o.curve({plan.pillar_from_mm + 60, h + plan.pillar_mm * 0.5}, {sill_rear_mm - 20, h + 60},
            {sill_rear_mm, h + 6}, 50)
        .masked("quarter glass");
    o.line(front_mm - 4, h, 14).masked("quarter glass");
    Outline glass(front_mm + 8, h + 14, 16);
    glass.line(sill_rear_mm - 66, h + 16, 34);
    glass.curve({sill_rear_mm - 58, h + 70}, {plan.pillar_from_mm + 16, h + plan.pillar_mm * 0.5},
                {plan.pillar_from_mm - 36, h + plan.pillar_mm - 30}, 40);
    glass.line(front_mm + 8, h + plan.pillar_mm - 26, 16);
    o.glass(placed_back(glass));
  } else {
    o.curve({plan.pillar_from_mm + 36, h + plan.pillar_mm * 0.55}, {front_mm, h + 60},
            {front_mm - 4, h}, 6)
        .masked("door opening");
  }
  if (dogleg) {
    o.bow(front_mm, h * 0.62, -3).masked("door opening");
    o.curve({front_mm - 6, h * 0.30}, {foot_mm + 6, h * 0.26}, {foot_mm, 0}, 12)
        .masked("door opening");
  } else {
    o.bow(foot_mm, 0, -8, 12).masked("door opening");
  }
  o.body_line(curve_points({front_mm + 2, plan.crease_mm}, {w.x_mm, plan.crease_mm + 20},
                           {tail_mm - 300, plan.crease_mm + 14}, {tail_mm - 30, h * 0.74}));
  o.body_line(flare(w, 172, rise_deg(w, plan.joint_mm) + 12));
  return o;
}

PanelShape leaned_over(PanelShape shape) {
  shape.reach_over =
      edge_strip(shape.outline, trade::Side::Upper, lean_band_mm, 4, shape.width_mm() - 44);
  return shape;
}

PanelShape hood(double length_mm, double width_mm, double front_share, Substrate substrate) {
  const double l = length_mm;
  const double w = width_mm;
  const double in_mm = w * (1 - front_share) / 2;
  Outline o(0, w / 2);
  o.curve({0, w * 0.34}, {26, in_mm + w * 0.12}, {70, in_mm}, 70).seam();
  o.curve({l * 0.22, in_mm * 0.60}, {l * 0.62, 4}, {l, 0}, 22).masked("fender");
  o.curve({l - 34, w * 0.14}, {l - 74, w * 0.32}, {l - 78, w / 2}).masked("cowl");
  o.body_line(curve_points({46, in_mm + w * 0.16}, {l * 0.3, in_mm + w * 0.13}, {l * 0.6, w * 0.19},
                           {l - 58, w * 0.165}));
  o.body_line(curve_points({16, w * 0.40}, {l * 0.35, w * 0.37}, {l * 0.6, w * 0.36},
                           {l * 0.72, w * 0.35}));
  o.mirror_y(w / 2);
  PanelShape out = o.shape(Attitude::Flat, substrate);
  lean_on_both_edges(out, 72, l - 4);
  return out;
}

PanelShape roof(double length_mm, double width_mm, double rear_width_mm, const char* rear_edge) {
  const double l = length_mm;
  const double w = width_mm;
  const double in_mm = (w - rear_width_mm) / 2;
  Outline o(0, w / 2);
  o.curve({0, w * 0.28}, {16, w * 0.10}, {46, 14}, 34).masked("windshield");
  o.curve({l * 0.3, -6}, {l * 0.7, in_mm * 0.5}, {l - 30, in_mm}, 34).masked("ditch");
  o.curve({l - 10, in_mm + w * 0.12}, {l, w * 0.32}, {l, w / 2}).masked(rear_edge);
  o.body_line(curve_points({90, w * 0.2}, {l * 0.35, w * 0.17}, {l * 0.7, in_mm + w * 0.15},
                           {l - 90, in_mm + w * 0.17}));
  o.mirror_y(w / 2);
  PanelShape out = o.shape(Attitude::Flat);
  lean_on_both_edges(out, 50, l - 34);
  return out;
}

PanelShape front_bumper(double width_mm, double height_mm) {
  const double w = width_mm;
  const double h = height_mm;
  Outline o(w / 2, 0);
  o.curve({w * 0.66, 0}, {w * 0.80, 4}, {w * 0.885, 26}, 46);
  o.curve({w * 0.915, h * 0.26}, {w * 0.95, h * 0.40}, {w, h * 0.47}, 18).masked("wheel opening");
  o.bow(w - 22, h * 0.80, 4, 30).seam();
  o.curve({w * 0.94, h * 0.76}, {w * 0.80, h * 0.72}, {w * 0.735, h * 0.90}, 40).masked("lamp");
  o.curve({w * 0.66, h * 0.985}, {w * 0.57, h}, {w / 2, h}).masked("hood edge");
  o.body_line(curve_points({w / 2, h * 0.80}, {w * 0.58, h * 0.80}, {w * 0.645, h * 0.79},
                           {w * 0.665, h * 0.72}));
  o.body_line(curve_points({w * 0.665, h * 0.72}, {w * 0.65, h * 0.56}, {w * 0.60, h * 0.52},
                           {w / 2, h * 0.52}));
  o.body_line(curve_points({w / 2, h * 0.16}, {w * 0.64, h * 0.16}, {w * 0.72, h * 0.2},
                           {w * 0.84, h * 0.42}));
  o.mirror_x(w / 2);
  PanelShape out = o.shape(Attitude::Upright, Substrate::Plastic);
  out.radar_zone = true;
  return out;
}

PanelShape rear_bumper(double width_mm, double height_mm) {
  const double w = width_mm;
  const double h = height_mm;
  Outline o(w / 2, 0);
  o.curve({w * 0.66, 0}, {w * 0.80, 6}, {w * 0.875, 30}, 50);
  o.curve({w * 0.91, h * 0.24}, {w * 0.945, h * 0.40}, {w, h * 0.50}, 18).masked("wheel opening");
  o.bow(w - 18, h * 0.86, 4, 30).seam();
  o.curve({w * 0.95, h * 0.985}, {w * 0.86, h}, {w * 0.78, h}, 30).masked("lamp");
  o.line(w * 0.735, h * 0.90, 40).masked("lamp");
  o.curve({w * 0.66, h * 0.875}, {w * 0.57, h * 0.87}, {w / 2, h * 0.87}).seam();
  o.body_line(curve_points({w / 2, h * 0.66}, {w * 0.66, h * 0.66}, {w * 0.82, h * 0.68},
                           {w * 0.965, h * 0.74}));
  o.body_line(curve_points({w / 2, h * 0.30}, {w * 0.64, h * 0.30}, {w * 0.74, h * 0.27},
                           {w * 0.80, h * 0.06}));
  o.mirror_x(w / 2);
  PanelShape out = o.shape(Attitude::Upright, Substrate::Plastic);
  out.radar_zone = true;
  return out;
}

PanelShape rocker(double length_mm, double height_mm) {
  const double l = length_mm;
  const double h = height_mm;
  Outline o(26, 0, 18);
  o.line(l - 26, 0, 18);
  o.bow(l, h, -10, 14).masked("wheel opening");
  o.line(0, h, 14).masked("door opening");
  o.bow(26, 0, -10, 18).masked("wheel opening");
  o.body_line({{24, h * 0.42}, {l - 24, h * 0.42}});
  return o.shape(Attitude::Upright);
}

PanelShape mirror_cap() {
  Outline o(6, 96);
  o.curve({0, 40}, {30, 14}, {90, 6});
  o.curve({130, 0}, {170, 0}, {210, 8}, 26);
  o.bow(220, 132, 4, 44).masked("mirror glass");
  o.curve({190, 168}, {150, 180}, {104, 180});
  o.curve({50, 180}, {12, 160}, {6, 96});
  o.body_line(curve_points({30, 62}, {90, 44}, {150, 42}, {208, 50}));
  return o.shape(Attitude::Upright, Substrate::Plastic);
}

PanelShape fuel_door() {
  Outline o(0, 0, 46);
  o.bow(200, 0, 4, 46).seam();
  o.bow(200, 176, 4, 46).seam();
  o.bow(0, 176, 4, 46).seam();
  o.bow(0, 0, 4, 46).seam();
  return o.shape(Attitude::Upright);
}

PanelShape hatch(double width_mm, double height_mm, double glass_mm) {
  const double w = width_mm;
  const double h = height_mm;
  Outline o(w / 2, 0);
  o.curve({w * 0.68, 0}, {w * 0.80, 4}, {w * 0.885, 16}, 46).seam();
  o.curve({w * 0.915, h * 0.20}, {w * 0.94, h * 0.32}, {w * 0.965, h * 0.40}, 20).seam();
  o.bow(w, h * 0.72, -10, 24).masked("lamp");
  o.bow(w * 0.962, h, 6, 20).seam();
  o.curve({w * 0.80, h - 22}, {w * 0.62, h - 30}, {w / 2, h - 30}).masked("glass");
  o.body_line(curve_points({w / 2, h * 0.64}, {w * 0.70, h * 0.64}, {w * 0.86, h * 0.66},
                           {w * 0.96, h * 0.72}));
  o.body_line(curve_points({w / 2, h * 0.16}, {w * 0.64, h * 0.16}, {w * 0.72, h * 0.2},
                           {w * 0.73, h * 0.44}));
  o.body_line(curve_points({w / 2, h * 0.46}, {w * 0.66, h * 0.46}, {w * 0.70, h * 0.46},
                           {w * 0.73, h * 0.44}));
  o.mirror_x(w / 2);
  Outline pane(w / 2, h + 6);
  pane.curve({w * 0.64, h + 6}, {w * 0.80, h + 14}, {w * 0.925, h + 26}, 40);
  pane.curve({w * 0.90, h + glass_mm * 0.5}, {w * 0.86, h + glass_mm * 0.8},
             {w * 0.83, h + glass_mm - 14}, 50);
  pane.curve({w * 0.72, h + glass_mm}, {w * 0.6, h + glass_mm}, {w / 2, h + glass_mm});
  pane.mirror_x(w / 2);
  o.glass(placed_back(pane));
  PanelShape out = o.shape(Attitude::Upright);
  out.reach_over =
      edge_strip(out.outline, trade::Side::Upper, out.height_mm() / 3, w * 0.045, w * 0.955);
  return out;
}

}  // namespace jambline::job::draw
