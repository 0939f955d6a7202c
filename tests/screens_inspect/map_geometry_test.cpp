// Expected values here are worked out by hand from the definitions in UX and the critique of taps:
// nearest mark within 36 dp, narrow panels caught at 72 dp, rings apart by 24 dp.
#include "screens/map_geometry.h"

#include <cmath>
#include <gtest/gtest.h>
#include <random>

#include "screens/place_words.h"

namespace jambline::screens {
namespace {

using trade::Box_mm;
using trade::Point_mm;
using trade::Polygon;

Polygon rect(double x, double y, double w, double h) {
  return {{{x, y}, {x + w, y}, {x + w, y + h}, {x, y + h}}};
}

TEST(MapFrame, FitsTheContentWithItsInset) {
  const MapFrame frame({{0, 0}, {1000, 500}}, 420, 400, 10);
  EXPECT_DOUBLE_EQ(frame.px_per_mm(), 0.4);
  EXPECT_EQ(frame.to_px({0, 0}), (Point_px{10, 300}));
  EXPECT_EQ(frame.to_px({1000, 500}), (Point_px{410, 100}));
  EXPECT_DOUBLE_EQ(frame.zoom(), 1);
}

TEST(MapFrame, UpOnThePanelIsUpOnTheScreen) {
  const MapFrame frame({{0, 0}, {1000, 1000}}, 400, 400, 0);
  EXPECT_LT(frame.to_px({500, 900}).y_px, frame.to_px({500, 100}).y_px);
}

TEST(MapFrame, KeepsMillimetresAtAnyZoom) {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> at(0, 5000);
  MapFrame frame({{0, 0}, {5000, 3000}}, 380, 520, 12);
  for (int i = 0; i < 2000; ++i) {
    frame = frame
                .zoomed(std::exp(std::uniform_real_distribution<double>(-1, 1)(random)),
                        {at(random) / 14, at(random) / 10})
                .moved(at(random) / 50 - 50, at(random) / 50 - 50);
    const Point_mm point{at(random), at(random)};
    const Point_mm back = frame.to_mm(frame.to_px(point));
    ASSERT_NEAR(back.x_mm, point.x_mm, 1e-9);
    ASSERT_NEAR(back.y_mm, point.y_mm, 1e-9);
    ASSERT_GE(frame.zoom(), 1 - 1e-12);
    ASSERT_LE(frame.zoom(), most_zoom * (1 + 1e-12));
  }
}

TEST(MapFrame, ZoomKeepsTheMillimetreUnderTheFinger) {
  const MapFrame frame({{0, 0}, {2000, 2000}}, 400, 400, 0);
  const Point_px finger{150, 230};
  const Point_mm before = frame.to_mm(finger);
  const Point_mm after = frame.zoomed(3, finger).to_mm(finger);
  EXPECT_NEAR(before.x_mm, after.x_mm, 1e-9);
  EXPECT_NEAR(before.y_mm, after.y_mm, 1e-9);
}

TEST(MapFrame, AFittedViewCannotBePushedAway) {
  const MapFrame frame({{0, 0}, {1000, 500}}, 420, 400, 10);
  EXPECT_EQ(frame.moved(300, -200).to_px({0, 0}), frame.to_px({0, 0}));
}

TEST(MapFrame, ANewSizeKeepsZoomAndMiddle) {
  const MapFrame frame = MapFrame({{0, 0}, {1000, 1000}}, 400, 400, 0).zoomed(4, {200, 200});
  const MapFrame wide = frame.resized(800, 400);
  EXPECT_DOUBLE_EQ(wide.zoom(), 4);
  EXPECT_NEAR(wide.to_mm({400, 200}).x_mm, 500, 1e-9);
  EXPECT_NEAR(wide.to_mm({400, 200}).y_mm, 500, 1e-9);
}

TEST(Merged, CloserThanTwentyFourBecomeOne) {
  EXPECT_EQ(merged({{0, 0}, {23.9, 0}}), (std::vector<std::vector<std::size_t>>{{0, 1}}));
  EXPECT_EQ(merged({{0, 0}, {24, 0}}), (std::vector<std::vector<std::size_t>>{{0}, {1}}));
}

TEST(Merged, EveryMarkIsInOneRingAndNoTwoRingsTouch) {
  std::mt19937 random(11);
  std::uniform_real_distribution<double> at(0, 300);
  for (int round = 0; round < 50; ++round) {
    std::vector<Point_px> marks(1 + static_cast<std::size_t>(round));
    for (Point_px& mark : marks) mark = {at(random), at(random)};
    const auto groups = merged(marks);
    std::vector<int> seen(marks.size(), 0);
    for (const auto& group : groups)
      for (const std::size_t one : group) ++seen[one];
    EXPECT_EQ(seen, std::vector<int>(marks.size(), 1));
    for (std::size_t a = 0; a < groups.size(); ++a)
      for (std::size_t b = a + 1; b < groups.size(); ++b)
        EXPECT_GE(distance_px(middle_of(marks, groups[a]), middle_of(marks, groups[b])),
                  ring_apart_px);
  }
}

TEST(Nearest, TakesTheNearestWithinThirtySix) {
  EXPECT_EQ(nearest({{0, 0}, {40, 0}}, {30, 0}), 1U);
  EXPECT_EQ(nearest({{0, 0}}, {36, 0}), 0U);
  EXPECT_EQ(nearest({{0, 0}}, {36.1, 0}), std::nullopt);
  EXPECT_EQ(nearest({}, {0, 0}), std::nullopt);
}

TEST(PickPanel, TakesThePanelUnderTheFinger) {
  const MapFrame frame({{0, 0}, {400, 400}}, 400, 400, 0);
  const auto picked = pick_panel(frame, {rect(0, 0, 200, 400), rect(200, 0, 200, 400)}, {300, 50});
  ASSERT_TRUE(picked);
  EXPECT_EQ(picked->index, 1U);
  EXPECT_FALSE(picked->rival);
}

TEST(PickPanel, NarrowPanelsCatchSeventyTwo) {
  const MapFrame frame({{0, 0}, {400, 400}}, 400, 400, 0);
  const std::vector<Polygon> panels{rect(100, 0, 16, 400)};  // a rocker: its middle is at 108
  EXPECT_TRUE(pick_panel(frame, panels, {108 - 35.5, 200}));
  EXPECT_TRUE(pick_panel(frame, panels, {108 + 35.5, 200}));
  EXPECT_FALSE(pick_panel(frame, panels, {108 - 36.5, 200}));
  EXPECT_FALSE(pick_panel(frame, panels, {108 + 36.5, 200}));
}

TEST(PickPanel, ZoomedInANarrowPanelNeedsNoHelp) {
  const MapFrame frame = MapFrame({{0, 0}, {400, 400}}, 400, 400, 0).zoomed(8, {108, 200});
  EXPECT_FALSE(pick_panel(frame, {rect(100, 0, 16, 400)}, {108 + 70, 200}));
}

TEST(PickPanel, AWidePanelWinsOverItsNarrowNeighborButForTheLastMillimetres) {
  const MapFrame frame({{0, 0}, {400, 400}}, 400, 400, 0);
  const std::vector<Polygon> panels{rect(100, 0, 200, 400), rect(80, 0, 16, 400)};
  const auto deep = pick_panel(frame, panels, {115, 200});
  ASSERT_TRUE(deep);
  EXPECT_EQ(deep->index, 0U);
  EXPECT_FALSE(deep->rival);
  const auto unsure = pick_panel(frame, panels, {101, 200});
  ASSERT_TRUE(unsure);
  EXPECT_EQ(unsure->rival, 1U);
}

TEST(PickPanel, TwoNarrowPanelsThatCompeteAreBothGiven) {
  const MapFrame frame({{0, 0}, {400, 400}}, 400, 400, 0);
  const auto picked =
      pick_panel(frame, {rect(100, 100, 20, 20), rect(140, 100, 20, 20)}, {130, 290});
  ASSERT_TRUE(picked);
  EXPECT_TRUE(picked->rival);
}

TEST(Upright, HoodAndRoofHaveTheFrontAtTheTop) {
  for (const job::Panel panel : {job::Panel::Hood, job::Panel::Roof}) {
    const job::PatternPanel* part = job::pattern(job::BodyShape::TwoDoorHatchback).find(panel);
    ASSERT_NE(part, nullptr);
    const trade::Placement place = upright(*part);
    const double rear_mm = part->shape.width_mm();
    EXPECT_GT(place.apply({0, 0}).y_mm, place.apply({rear_mm, 0}).y_mm);
    EXPECT_LT(place.apply({0, 0}).x_mm, place.apply({0, part->shape.height_mm()}).x_mm);
    const Box_mm box = trade::bounds(place.apply(part->shape.outline).corners);
    EXPECT_NEAR(box.low.x_mm, 0, 1e-9);
    EXPECT_NEAR(box.low.y_mm, 0, 1e-9);
  }
}

TEST(Upright, SidesStandAsTheyAre) {
  const job::PatternPanel* part =
      job::pattern(job::BodyShape::FourDoorSedan).find(job::Panel::LeftFender);
  ASSERT_NE(part, nullptr);
  EXPECT_EQ(upright(*part), trade::Placement{});
}

TEST(LabelSpot, LiesOnEveryPanelOfEveryCarAndOffTheGlass) {
  for (std::size_t body = 0; body < enum_words<job::BodyShape>.size(); ++body)
    for (const auto& part : job::pattern(static_cast<job::BodyShape>(body)).panels) {
      const LabelSpot spot = label_spot(part.shape.outline, part.shape.glass);
      EXPECT_TRUE(trade::contains(part.shape.outline, spot.middle)) << word_of(part.panel);
      for (const Polygon& pane : part.shape.glass)
        EXPECT_FALSE(trade::contains(pane, spot.middle)) << word_of(part.panel);
    }
}

TEST(Ninth, NamesThePlaceFromTheCarsPointOfView) {
  const Box_mm box{{0, 0}, {900, 300}};
  const Ninth upper_right = ninth(box, {800, 280});
  EXPECT_EQ(upper_right, (Ninth{2, Rise::Upper}));
  EXPECT_EQ(place_words(job::Panel::LeftQuarter, upper_right), QStringLiteral("upper rear"));
  EXPECT_EQ(place_words(job::Panel::RightQuarter, upper_right), QStringLiteral("upper front"));
  EXPECT_EQ(place_words(job::Panel::RearBumper, upper_right), QStringLiteral("upper right"));
  EXPECT_EQ(place_words(job::Panel::FrontBumper, upper_right), QStringLiteral("upper left"));
  EXPECT_EQ(place_words(job::Panel::Hood, upper_right), QStringLiteral("right front"));
  EXPECT_EQ(place_words(job::Panel::Hood, ninth(box, {450, 150})), QStringLiteral("middle"));
  EXPECT_EQ(ninth(box, {-5, 900}), (Ninth{0, Rise::Upper}));
}

TEST(ScaleBar, IsARoundLengthThatFits) {
  EXPECT_DOUBLE_EQ(scale_bar_mm(0.35, 110, true), 300);
  EXPECT_DOUBLE_EQ(scale_bar_mm(0.35, 110, false), 12 * 25.4);
  EXPECT_DOUBLE_EQ(scale_bar_mm(10, 110, true), 10);
  EXPECT_DOUBLE_EQ(scale_bar_mm(1000, 110, true), 1);
}

}  // namespace
}  // namespace jambline::screens
