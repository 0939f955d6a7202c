#include "job/body_shape.h"

#include <cmath>
#include <gtest/gtest.h>
#include <set>

namespace jambline::job {
namespace {

using trade::Point_mm;
using trade::Polygon;
using trade::Polyline;

class BodyShapes : public testing::TestWithParam<BodyShape> {
 protected:
  const CarPattern& car = pattern(GetParam());
};

std::string name(const PatternPanel& one) {
  return std::string(word_of(one.panel));
}

Polygon placed(const PatternPanel& one) {
  return one.place.apply(one.shape.outline);
}

bool nearly_inside(const Polygon& outline, Point_mm point) {
  return contains(outline, point) || distance_to_edge_mm(point, outline) <= 1;
}

TEST_P(BodyShapes, OutlinesAreSimpleCounterClockwiseAndInTheirOwnBox) {
  for (const PatternPanel& one : car.panels) {
    EXPECT_FALSE(crosses_itself(one.shape.outline)) << name(one);
    EXPECT_GT(signed_area_mm2(one.shape.outline), 0) << name(one);
    const auto box = trade::bounds(one.shape.outline.corners);
    EXPECT_NEAR(box.low.x_mm, 0, 1e-6) << name(one);
    EXPECT_NEAR(box.low.y_mm, 0, 1e-6) << name(one);
  }
}

TEST_P(BodyShapes, PanelsLieApartOnThePattern) {
  for (std::size_t i = 0; i < car.panels.size(); ++i)
    for (std::size_t j = i + 1; j < car.panels.size(); ++j)
      EXPECT_GT(gap_mm(placed(car.panels[i]), placed(car.panels[j])), 50)
          << name(car.panels[i]) << " and " << name(car.panels[j]);
}

TEST_P(BodyShapes, GlassBearsNoPanel) {
  std::vector<Polygon> panes = car.glass;
  for (const PatternPanel& one : car.panels)
    for (const Polygon& pane : one.shape.glass) panes.push_back(one.place.apply(pane));
  EXPECT_FALSE(panes.empty());
  for (std::size_t i = 0; i < panes.size(); ++i) {
    EXPECT_FALSE(crosses_itself(panes[i])) << i;
    for (const PatternPanel& one : car.panels)
      EXPECT_GT(gap_mm(panes[i], placed(one)), 0) << i << " on " << name(one);
    for (std::size_t j = i + 1; j < panes.size(); ++j)
      EXPECT_GT(gap_mm(panes[i], panes[j]), 0) << i << " on " << j;
  }
}

TEST_P(BodyShapes, EverythingLiesInTheBoundsThatBeginAtZero) {
  EXPECT_NEAR(car.bounds.low.x_mm, 0, 1e-6);
  EXPECT_NEAR(car.bounds.low.y_mm, 0, 1e-6);
  trade::Box_mm box = trade::bounds(placed(car.panels.front()).corners);
  for (const PatternPanel& one : car.panels) box = joined(box, trade::bounds(placed(one).corners));
  EXPECT_GE(box.low.x_mm, -1e-6);
  EXPECT_GE(box.low.y_mm, -1e-6);
  EXPECT_LE(box.high.x_mm, car.bounds.high.x_mm + 1e-6);
  EXPECT_LE(box.high.y_mm, car.bounds.high.y_mm + 1e-6);
}

TEST_P(BodyShapes, MaskedEdgesAndSeamsLieOnTheOutline) {
  std::size_t edges = 0;
  for (const PatternPanel& one : car.panels) {
    std::vector<Polyline> lines = one.shape.seams;
    for (const auto& edge : one.shape.masked_edges) {
      EXPECT_FALSE(edge.name.empty()) << name(one);
      lines.push_back(edge.line);
    }
    for (const Polyline& line : lines) {
      ASSERT_GE(line.size(), 2U) << name(one);
      for (std::size_t i = 0; i < line.size(); ++i) {
        EXPECT_LE(distance_to_edge_mm(line[i], one.shape.outline), 1) << name(one);
        if (i == 0) continue;
        const Point_mm middle{(line[i].x_mm + line[i - 1].x_mm) / 2,
                              (line[i].y_mm + line[i - 1].y_mm) / 2};
        EXPECT_LE(distance_to_edge_mm(middle, one.shape.outline), 1) << name(one);
      }
      ++edges;
    }
  }
  EXPECT_GT(edges, car.panels.size());
}

TEST_P(BodyShapes, StripsToLeanOverLieInsideAndAreNoDeeperThanTheRule) {
  std::set<Panel> with_strip;
  for (const PatternPanel& one : car.panels)
    for (const Polygon& strip : one.shape.reach_over) {
      with_strip.insert(one.panel);
      EXPECT_FALSE(crosses_itself(strip)) << name(one);
      EXPECT_GT(signed_area_mm2(strip), 0) << name(one);
      EXPECT_LT(area_mm2(strip), area_mm2(one.shape.outline) * 0.75) << name(one);
      for (std::size_t i = 0; i < strip.corners.size(); ++i) {
        const Point_mm a = strip.corners[i];
        const Point_mm b = strip.corners[(i + 1) % strip.corners.size()];
        EXPECT_TRUE(nearly_inside(one.shape.outline, a)) << name(one);
        EXPECT_TRUE(
            nearly_inside(one.shape.outline, {(a.x_mm + b.x_mm) / 2, (a.y_mm + b.y_mm) / 2}))
            << name(one) << ' ' << a.x_mm << ' ' << a.y_mm << ' ' << b.x_mm << ' ' << b.y_mm;
        if (one.panel != Panel::Hatch && one.panel != Panel::Liftgate) {
          EXPECT_LE(distance_to_edge_mm(a, one.shape.outline), 251) << name(one);
        }
      }
    }
  for (const Panel panel : {Panel::Hood, Panel::Roof, Panel::LeftFender, Panel::RightFender})
    EXPECT_TRUE(with_strip.count(panel)) << word_of(panel);
  for (const Panel panel : {Panel::LeftQuarter, Panel::RightQuarter, Panel::Hatch, Panel::Liftgate})
    EXPECT_EQ(with_strip.count(panel), car.find(panel) ? 1U : 0U) << word_of(panel);
}

TEST_P(BodyShapes, BodyLinesStayOnThePanel) {
  for (const PatternPanel& one : car.panels)
    for (const Polyline& line : one.shape.body_lines)
      for (const Point_mm& point : line)
        EXPECT_TRUE(contains(one.shape.outline, point) ||
                    distance_to_edge_mm(point, one.shape.outline) < 3)
            << name(one) << ' ' << point.x_mm << ' ' << point.y_mm;
}

TEST_P(BodyShapes, CurvesHaveStrokesOfAtMostFortyMillimetres) {
  // A longer stroke is a straight one: its neighbours do not turn by the small angle of a curve.
  for (const PatternPanel& one : car.panels) {
    const auto& corners = one.shape.outline.corners;
    const std::size_t n = corners.size();
    for (std::size_t i = 0; i < n; ++i) {
      const Point_mm a = corners[i];
      const Point_mm b = corners[(i + 1) % n];
      const Point_mm c = corners[(i + 2) % n];
      if (trade::distance_mm(a, b) <= 40 || trade::distance_mm(b, c) <= 40) continue;
      const double bend = std::abs(std::atan2(c.y_mm - b.y_mm, c.x_mm - b.x_mm) -
                                   std::atan2(b.y_mm - a.y_mm, b.x_mm - a.x_mm));
      EXPECT_TRUE(bend < 1e-6 || bend > 0.1) << name(one) << " at " << b.x_mm << ' ' << b.y_mm;
    }
  }
}

TEST_P(BodyShapes, LeftAndRightAreMirrorImages) {
  const double middle_mm = car.bounds.width_mm() / 2;
  int pairs = 0;
  for (const PatternPanel& left : car.panels) {
    const std::string word = name(left);
    if (word.rfind("left ", 0) != 0) continue;
    if (GetParam() == BodyShape::CargoVan && left.panel == Panel::LeftSide) continue;
    const auto panel = from_word<Panel>("right " + word.substr(5));
    ASSERT_TRUE(panel) << word;
    const PatternPanel* right = car.find(*panel);
    ASSERT_NE(right, nullptr) << word;
    EXPECT_NEAR(area_mm2(left.shape.outline), area_mm2(right->shape.outline), 1e-3) << word;
    EXPECT_EQ(left.shape.masked_edges.size(), right->shape.masked_edges.size()) << word;
    EXPECT_EQ(left.shape.reach_over.size(), right->shape.reach_over.size()) << word;
    EXPECT_EQ(left.often_off, right->often_off) << word;
    const Polygon there = placed(*right);
    for (const Point_mm& corner : placed(left).corners)
      EXPECT_LT(distance_to_edge_mm({2 * middle_mm - corner.x_mm, corner.y_mm}, there), 0.01)
          << word;
    ++pairs;
  }
  EXPECT_GE(pairs, 5);
}

TEST_P(BodyShapes, NoPanelStandsTwiceAndTheWalkBeginsAtTheLeftFrontCorner) {
  std::set<Panel> seen;
  for (const PatternPanel& one : car.panels)
    EXPECT_TRUE(seen.insert(one.panel).second) << name(one);
  EXPECT_EQ(car.panels.front().panel, Panel::LeftFender);
  EXPECT_EQ(car.panels.back().panel, Panel::Roof);
}

TEST_P(BodyShapes, BumperCoversMayHideARadar) {
  for (const PatternPanel& one : car.panels)
    EXPECT_EQ(one.shape.radar_zone,
              one.panel == Panel::FrontBumper || one.panel == Panel::RearBumper)
        << name(one);
}

TEST_P(BodyShapes, ThePatternIsBuiltOnce) {
  EXPECT_EQ(&pattern(GetParam()), &car);
}

std::string shape_name(const testing::TestParamInfo<BodyShape>& info) {
  static constexpr const char* names[] = {"TwoDoorHatchback", "FourDoorSedan", "SuvWagon",
                                          "CrewCabPickup", "CargoVan"};
  return names[static_cast<std::size_t>(info.param)];
}

INSTANTIATE_TEST_SUITE_P(All, BodyShapes,
                         testing::Values(BodyShape::TwoDoorHatchback, BodyShape::FourDoorSedan,
                                         BodyShape::SuvWagon, BodyShape::CrewCabPickup,
                                         BodyShape::CargoVan),
                         shape_name);

}  // namespace
}  // namespace jambline::job
