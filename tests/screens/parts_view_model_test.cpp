#include "screens/parts_view_model.h"

#include "tests/screens/shop_desk.h"

namespace jambline::screens {
namespace {

class PartsScreen : public ShopDesk {
 protected:
  const QString bumper = "front bumper cover";
  QVariant part(PartsViewModel& screen, const char* role) {
    auto* rows = screen.parts();
    return rows->data(rows->index(0, 0), rows->roleNames().key(role));
  }
  void clean(job::Panel panel) {
    act(acts::GiveVerdict{car().job, panel, job::Verdict::Clean, true, std::nullopt});
  }
};

TEST_F(PartsScreen, OnlyACleanLoosePartIsOffered) {
  be(add("Ivo", job::Role::Painter));
  open_car();
  PartsViewModel screen(*session_);
  EXPECT_EQ(screen.partCount(), 1);
  EXPECT_FALSE(part(screen, "canOffer").toBool());
  EXPECT_EQ(screen.mainAct(), PartsViewModel::Act::None);
  clean(job::Panel::FrontBumper);
  EXPECT_TRUE(part(screen, "canOffer").toBool());
  EXPECT_EQ(screen.mainAct(), PartsViewModel::Act::Offer);
  EXPECT_EQ(screen.mainKey(), bumper);
}

TEST_F(PartsScreen, TheRoleThatIsNamedTakesThePart) {
  const auto ivo = add("Ivo", job::Role::Painter);
  const auto jo = add("Jo", job::Role::BodyTechnician);
  be(ivo);
  open_car();
  clean(job::Panel::FrontBumper);
  PartsViewModel screen(*session_);
  screen.offerTo(bumper, "body technician");
  settle();
  EXPECT_EQ(screen.mainAct(), PartsViewModel::Act::None);
  be(jo);
  EXPECT_EQ(screen.mainAct(), PartsViewModel::Act::Take);
  screen.take(bumper);
  settle();
  EXPECT_EQ(part(screen, "place"), "with Jo");
  EXPECT_FALSE(failed_);
}

TEST_F(PartsScreen, APartSentBackSaysWhyAndCanBeOfferedAgain) {
  be(add("Ivo", job::Role::Painter));
  open_car();
  clean(job::Panel::FrontBumper);
  PartsViewModel screen(*session_);
  screen.addRack("rack 2");
  settle();
  ASSERT_EQ(screen.rackCount(), 1);
  auto* racks = screen.racks();
  screen.hang(bumper, racks->data(racks->index(0, 0), racks->roleNames().key("key")).toString());
  settle();
  EXPECT_EQ(part(screen, "place"), "rack 2, from Ivo");
  screen.sendBack(bumper, "still soft");
  settle();
  EXPECT_EQ(part(screen, "place"), "still soft, with Ivo");
  EXPECT_TRUE(part(screen, "canOffer").toBool());
  EXPECT_FALSE(failed_);
}

TEST_F(PartsScreen, WholeCarIsHandedOnToo) {
  be(add("Ivo", job::Role::Detailer));
  open_car();
  PartsViewModel screen(*session_);
  EXPECT_EQ(screen.carState(), PartsViewModel::State::NotClean);
  screen.offerTo("", "detailer");
  settle();
  EXPECT_EQ(screen.carState(), PartsViewModel::State::Offered);
  EXPECT_EQ(screen.mainAct(), PartsViewModel::Act::Take);
  screen.take(screen.mainKey());
  settle();
  EXPECT_EQ(screen.carState(), PartsViewModel::State::Taken);
  EXPECT_FALSE(failed_);
}

}  // namespace
}  // namespace jambline::screens
