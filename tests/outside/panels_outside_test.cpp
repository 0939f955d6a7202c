#include <gtest/gtest.h>

#include "job/body_shape.h"
#include "tests/outside/table.h"

namespace jambline::job {
namespace {

TEST(PanelsOutside, EveryPanelOfTheTradesTableIsThereInItsSize) {
  for (const auto& row : outside::table("body_panels.csv")) {
    const std::string name = row.at("shape") + ", " + row.at("panel");
    const auto shape = from_word<BodyShape>(row.at("shape"));
    const auto panel = from_word<Panel>(row.at("panel"));
    ASSERT_TRUE(shape && panel) << name;
    const PatternPanel* found = pattern(*shape).find(*panel);
    ASSERT_NE(found, nullptr) << name;
    const double length = std::stod(row.at("length"));
    const double height = std::stod(row.at("height")) + std::stod(row.at("pillar_height"));
    EXPECT_NEAR(found->shape.width_mm(), length, length * 0.15) << name;
    EXPECT_NEAR(found->shape.height_mm(), height, height * 0.15) << name;
    EXPECT_EQ(word_of(found->shape.attitude), row.at("attitude")) << name;

    // What is left of length x height when wheel openings, lamps and rounds are cut out.
    const double box = length * std::stod(row.at("height")) +
                       std::stod(row.at("pillar_length")) * std::stod(row.at("pillar_height"));
    const double share = trade::area_mm2(found->shape.outline) / box;
    EXPECT_GT(share, 0.45) << name;
    EXPECT_LT(share, 1.15) << name;
  }
}

// Source: common practice of the trade, no source; mirror caps 220 x 180, fuel door 200 x 180 mm
TEST(PanelsOutside, EveryShapeHasMirrorCapsAndAFuelDoor) {
  for (std::size_t i = 0; i < enum_words<BodyShape>.size(); ++i) {
    const CarPattern& car = pattern(static_cast<BodyShape>(i));
    for (const auto& [panel, length, height] : {std::tuple{Panel::LeftMirror, 220.0, 180.0},
                                                {Panel::RightMirror, 220.0, 180.0},
                                                {Panel::FuelDoor, 200.0, 180.0}}) {
      const PatternPanel* found = car.find(panel);
      ASSERT_NE(found, nullptr) << i;
      EXPECT_NEAR(found->shape.width_mm(), length, length * 0.15);
      EXPECT_NEAR(found->shape.height_mm(), height, height * 0.15);
    }
  }
}

}  // namespace
}  // namespace jambline::job
