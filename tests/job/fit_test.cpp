// Where a panel is measured and at what it is moved: all of it lies on the panel that is drawn.
#include "job/fit.h"

#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

#include "job/fit_edges.h"

namespace jambline::job {
namespace {

using trade::Point_mm;

class FitOfBody : public testing::TestWithParam<BodyShape> {
 protected:
  template <class Look>
  void each_panel_that_hangs(Look look) const {
    int seen = 0;
    for (const auto& drawn : pattern(GetParam()).panels)
      if (!fasteners_of(GetParam(), drawn.panel).empty()) {
        SCOPED_TRACE(word_of(drawn.panel));
        look(drawn);
        ++seen;
      }
    EXPECT_GE(seen, 8);
  }
};

Point_mm out_of(const FitPlace& place, double by_mm) {
  const double angle = place.direction_deg * std::numbers::pi / 180;
  return {place.at.x_mm + by_mm * std::cos(angle), place.at.y_mm + by_mm * std::sin(angle)};
}

TEST_P(FitOfBody, EveryFastenerLiesOnItsPanelAndCanBeMoved) {
  each_panel_that_hangs([&](const PatternPanel& drawn) {
    for (const auto& one : fasteners_of(GetParam(), drawn.panel)) {
      EXPECT_TRUE(trade::contains(drawn.shape.outline, {one.x_mm, one.y_mm})) << one.fastener_name;
      EXPECT_GT(trade::distance_to_edge_mm({one.x_mm, one.y_mm}, drawn.shape.outline), 10)
          << one.fastener_name;
      EXPECT_GT(one.travel_x_mm + one.travel_y_mm + one.travel_lift_mm, 0) << one.fastener_name;
    }
  });
}

TEST_P(FitOfBody, EveryPointLiesOnTheOutlineAndLooksOutOfThePanel) {
  each_panel_that_hangs([&](const PatternPanel& drawn) {
    const auto& edges = fit_edges(GetParam(), drawn.panel);
    EXPECT_GE(edges.size(), 2U);
    for (const auto& edge : edges) {
      SCOPED_TRACE(edge.neighbor ? word_of(*edge.neighbor) : "cowl");
      ASSERT_GE(edge.usual.size(), 2U);
      EXPECT_LE(edge.usual.size(), 5U);
      for (const auto& place : edge.usual) {
        EXPECT_LT(trade::distance_to_edge_mm(place.at, drawn.shape.outline), 0.5);
        EXPECT_FALSE(trade::contains(drawn.shape.outline, out_of(place, 4)));
        EXPECT_TRUE(trade::contains(drawn.shape.outline, out_of(place, -4)));
        for (const auto& masked : drawn.shape.masked_edges) {
          if (masked.name != "lamp" && masked.name != "wheel opening") continue;
          EXPECT_GT(trade::distance_to_line_mm(place.at, masked.line), 1) << masked.name;
        }
      }
    }
  });
}

TEST_P(FitOfBody, APointOfAnEdgeIsFoundAgainThereWithItsDirection) {
  each_panel_that_hangs([&](const PatternPanel& drawn) {
    const auto& edges = fit_edges(GetParam(), drawn.panel);
    for (std::size_t e = 0; e < edges.size(); ++e)
      for (const auto& place : edges[e].usual) {
        const auto near = nearest_edge(edges, place.at);
        ASSERT_TRUE(near);
        EXPECT_EQ(near->edge, e);
        EXPECT_LT(near->away_mm, 0.01);
        EXPECT_NEAR(std::remainder(near->place.direction_deg - place.direction_deg, 360), 0, 20);
      }
  });
}

TEST_P(FitOfBody, BothNeighborsOfAGapKnowIt) {
  each_panel_that_hangs([&](const PatternPanel& drawn) {
    for (const auto& edge : fit_edges(GetParam(), drawn.panel)) {
      if (!edge.neighbor || fasteners_of(GetParam(), *edge.neighbor).empty()) continue;
      // Both cargo doors stand over one bumper cover, which is set to the left one.
      if (drawn.panel == Panel::RightCargoDoor && edge.neighbor == Panel::RearBumper) continue;
      bool known = false;
      for (const auto& back : fit_edges(GetParam(), *edge.neighbor))
        known = known || back.neighbor == drawn.panel;
      EXPECT_TRUE(known) << word_of(*edge.neighbor);
    }
  });
}

TEST_P(FitOfBody, TheDatumIsANeighborOrStructure) {
  each_panel_that_hangs([&](const PatternPanel& drawn) {
    const auto datum = datum_of(GetParam(), drawn.panel);
    if (!datum) return;
    bool known = false;
    for (const auto& edge : fit_edges(GetParam(), drawn.panel))
      known = known || edge.neighbor == datum;
    EXPECT_TRUE(known) << word_of(*datum);
  });
}

INSTANTIATE_TEST_SUITE_P(Each, FitOfBody,
                         testing::Values(BodyShape::TwoDoorHatchback, BodyShape::FourDoorSedan,
                                         BodyShape::SuvWagon, BodyShape::CrewCabPickup,
                                         BodyShape::CargoVan),
                         [](const auto& shape) {
                           std::string name;
                           for (const char letter : word_of(shape.param))
                             if (std::isalpha(static_cast<unsigned char>(letter))) name += letter;
                           return name;
                         });

TEST(FitWays, LeftIsTheCarsLeftOnEveryPanel) {
  const auto body = BodyShape::FourDoorSedan;
  EXPECT_EQ(ways_of(body, Panel::Hood).x, CarWay::Rear);
  EXPECT_EQ(ways_of(body, Panel::Hood).lift, CarWay::Up);
  EXPECT_EQ(ways_of(body, Panel::LeftFrontDoor).x, CarWay::Rear);
  EXPECT_EQ(ways_of(body, Panel::RightFrontDoor).x, CarWay::Front);
  EXPECT_EQ(ways_of(body, Panel::FrontBumper).x, CarWay::Left);
  EXPECT_EQ(ways_of(body, Panel::RearBumper).x, CarWay::Right);
  EXPECT_EQ(ways_of(body, Panel::Decklid).y, CarWay::Front);
  // What is called left lies on the car's left: the hinges of a hood, the brackets of both covers.
  const auto place_of = [&](Panel panel, const char* name) {
    for (const auto& one : fasteners_of(body, panel))
      if (one.fastener_name == name)
        return pattern(body).find(panel)->place.apply(Point_mm{one.x_mm, one.y_mm});
    return Point_mm{};
  };
  for (const auto& [panel, left, right] :
       {std::tuple{Panel::Hood, "left hinge to hood", "right hinge to hood"},
        std::tuple{Panel::FrontBumper, "left bracket", "right bracket"},
        std::tuple{Panel::RearBumper, "left bracket", "right bracket"},
        std::tuple{Panel::Decklid, "left hinge to lid", "right hinge to lid"}})
    EXPECT_LT(place_of(panel, left).x_mm, place_of(panel, right).x_mm) << word_of(panel);
}

}  // namespace
}  // namespace jambline::job
