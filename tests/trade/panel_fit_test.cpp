#include "trade/panel_fit.h"

#include <cmath>
#include <gtest/gtest.h>
#include <limits>

namespace jambline::trade {
namespace {

// A door 1000 x 600 with gaps in front (180 degrees), behind (0) and below (270); 4 mm wanted.
PanelFit door(double front, double behind, double below, double travel_mm) {
  PanelFit out;
  out.datum = "rocker";
  out.points = {{"front low", 0, 100, 180, front, 4},
                {"front high", 0, 500, 180, front, 4},
                {"behind low", 1000, 100, 0, behind, 4},
                {"behind high", 1000, 500, 0, behind, 4},
                {"below", 500, 0, 270, below, 4}};
  out.fasteners = {{"upper hinge", 0, 450, travel_mm, travel_mm},
                   {"lower hinge", 0, 150, travel_mm, travel_mm}};
  return out;
}
std::string field(const PanelFit& fit) {
  const auto result = panel_fit(fit);
  return result ? "taken" : result.error().subject;
}

TEST(PanelFit, ADoorTooFarBackGoesForward) {
  // Behind 2, in front 6: 2 mm towards the front; below 5: 1 mm down.
  const auto fit = panel_fit(door(6, 2, 5, 10));
  ASSERT_TRUE(fit);
  EXPECT_NEAR(fit->shift_x_mm, -2, 1e-8);
  EXPECT_NEAR(fit->shift_y_mm, -1, 1e-8);
  EXPECT_NEAR(fit->turn_deg, 0, 1e-8);
  EXPECT_TRUE(fit->reached);
  EXPECT_FALSE(fit->stopped_by_slots);
  EXPECT_FALSE(fit->datum_is_out);
  for (const auto& point : fit->points) EXPECT_NEAR(point.after_mm, 4, 1e-8) << point.point;
  for (const auto& move : fit->moves) {
    EXPECT_NEAR(move.x_mm, -2, 1e-8);
    EXPECT_NEAR(move.y_mm, -1, 1e-8);
    EXPECT_FALSE(move.at_its_end);
  }
}

TEST(PanelFit, ASlotStopsItAndSaysSo) {
  const auto fit = panel_fit(door(6, 2, 4, 0.5));
  ASSERT_TRUE(fit);
  EXPECT_NEAR(fit->shift_x_mm, -0.5, 1e-8);
  EXPECT_TRUE(fit->stopped_by_slots);
  EXPECT_FALSE(fit->reached);
  EXPECT_FALSE(fit->datum_is_out);  // a free move would do
  EXPECT_TRUE(fit->moves[0].at_its_end || fit->moves[1].at_its_end);
  EXPECT_NEAR(fit->points[0].off_mm, 1.5, 1e-8);
}

TEST(PanelFit, AnOpeningTooWideIsNoMatterOfHinges) {
  const auto fit = panel_fit(door(7, 7, 4, 10));
  ASSERT_TRUE(fit);
  EXPECT_NEAR(fit->shift_x_mm, 0, 1e-8);
  EXPECT_TRUE(fit->datum_is_out);
  EXPECT_NEAR(fit->free_rms_mm, std::sqrt(4 * 9 / 5.0), 1e-6);
}

TEST(PanelFit, ASaggedDoorIsTurned) {
  // Behind it hangs 2 mm low over 1000 mm: turned back by 0.002 rad about the place (0, 0).
  PanelFit fit;
  fit.points = {{"below front", 0, 0, 270, 4, 4},
                {"below behind", 1000, 0, 270, 2, 4},
                {"front", 0, 300, 180, 4 - 0.6, 4}};
  fit.fasteners = {{"hinge", 0, 300, 10, 10}};
  const auto found = panel_fit(fit);
  ASSERT_TRUE(found);
  EXPECT_NEAR(found->turn_deg, 0.002 * 180 / 3.14159265358979323846, 1e-8);
  // A point 300 mm up goes 0.6 mm to the front by the turn: the shift brings it 1.2 back.
  EXPECT_NEAR(found->shift_x_mm, 1.2, 1e-7);
  EXPECT_NEAR(found->shift_y_mm, 0, 1e-7);
  EXPECT_TRUE(found->reached);
}

TEST(PanelFit, AHoodIsTiltedLevel) {
  PanelFit hood;
  hood.flush = true;
  // 1 mm high at the front, 3 mm at the rear over a meter: lift -1, rise -2 a meter.
  hood.points = {{"front left", 0, 0, 0, 1, 0},
                 {"front right", 0, 1000, 0, 1, 0},
                 {"rear left", 1000, 0, 0, 3, 0},
                 {"rear right", 1000, 1000, 0, 3, 0}};
  hood.fasteners = {
      {"left stop", 0, 0, 5, 0}, {"right stop", 0, 1000, 5, 0}, {"hinge", 1000, 500, 5, 0}};
  const auto fit = panel_fit(hood);
  ASSERT_TRUE(fit);
  EXPECT_NEAR(fit->shift_x_mm, -1, 1e-8);
  EXPECT_NEAR(fit->shift_y_mm, -2, 1e-8);
  EXPECT_NEAR(fit->turn_deg, 0, 1e-8);
  EXPECT_NEAR(fit->moves[2].x_mm, -3, 1e-8);
  EXPECT_NEAR(fit->rms_mm, 0, 1e-8);
}

TEST(PanelFit, AHeavierPointPullsHarder) {
  PanelFit fit = door(6, 6, 4, 10);
  for (std::size_t i = 0; i < 2; ++i) fit.points[i].weight = 3;  // the front
  const auto found = panel_fit(fit);
  ASSERT_TRUE(found);
  EXPECT_NEAR(found->shift_x_mm, -1, 1e-8);  // (3 x -2 + 2) / 4
}

TEST(PanelFit, WhatCannotBeIsRefusedByName) {
  PanelFit fit = door(4, 4, 4, 3);
  fit.points.resize(1);
  EXPECT_EQ(field(fit), "points");
  fit = door(4, 4, 4, 3);
  fit.fasteners.clear();
  EXPECT_EQ(field(fit), "fasteners");
  fit = door(4, 4, 4, -1);
  EXPECT_EQ(field(fit), "fasteners[0].travel_x_mm");
  fit = door(std::numeric_limits<double>::quiet_NaN(), 4, 4, 3);
  EXPECT_EQ(field(fit), "points[0].found_mm");
  fit = door(4, 4, 4, 3);
  fit.points.resize(61, fit.points[0]);
  EXPECT_EQ(field(fit), "points");
}

}  // namespace
}  // namespace jambline::trade
