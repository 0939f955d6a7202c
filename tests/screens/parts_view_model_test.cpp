#include "screens/parts_view_model.h"

#include "screens/hand_off_view_model.h"
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

TEST_F(PartsScreen, TheMainActOffersWhereTheLastOneWent) {
  be(add("Ivo", job::Role::Painter));
  act(acts::AddRack{"rack 2"});
  open_car();
  clean(job::Panel::FrontBumper);
  PartsViewModel screen(*session_);
  EXPECT_EQ(screen.mainText(), "Offer the front bumper cover");
  EXPECT_EQ(screen.mainSecond(), "to the body technician, at rack 2");
  screen.act();
  settle();
  EXPECT_EQ(part(screen, "place"), "rack 2, for the body technician, from Ivo");
}

TEST_F(PartsScreen, WhoTookThePartIsSettledByOnePress) {
  const auto jo = add("Jo", job::Role::BodyTechnician);
  const auto ana = add("Ana", job::Role::BodyTechnician);
  be(add("Ivo", job::Role::Painter));
  open_car();
  clean(job::Panel::FrontBumper);
  PartsViewModel screen(*session_);
  screen.act();
  settle();
  // As it is when another device's answer has come too.
  auto both = std::make_shared<engine::Snapshot>(session_->snapshot());
  auto view = std::make_shared<folds::CarView>(*both->car);
  for (auto& panel : view->panels)
    if (panel.plan.panel == job::Panel::FrontBumper) {
      panel.release.disputed = true;
      panel.release.takers = {jo, ana};
    }
  both->car = view;
  session_->publish(both);
  QCoreApplication::processEvents();
  EXPECT_EQ(part(screen, "state").toInt(), static_cast<int>(PartsViewModel::State::Disputed));
  EXPECT_EQ(part(screen, "takers").toStringList(), (QStringList{"Jo", "Ana"}));
  screen.settle(bumper, 1);
  settle();
  EXPECT_EQ(part(screen, "place"), "with Ana");
  EXPECT_FALSE(failed_);
}

TEST_F(PartsScreen, SomebodyElseHasItIsSaidAfterwards) {
  const auto jo = add("Jo", job::Role::BodyTechnician);
  const auto ana = add("Ana", job::Role::BodyTechnician);
  be(jo);
  open_car();
  clean(job::Panel::FrontBumper);
  PartsViewModel screen(*session_);
  screen.offerTo(bumper, "body technician");
  settle();
  screen.take(bumper);
  settle();
  screen.hasIt(bumper, QString::fromStdString(ana.hex()));
  settle();
  EXPECT_EQ(part(screen, "place"), "with Ana");
}

TEST_F(PartsScreen, AnOfferWaitsOnTheFloorForWhomItNamesAndAnyPartIsFound) {
  const auto ivo = add("Ivo", job::Role::Painter);
  const auto jo = add("Jo", job::Role::BodyTechnician);
  be(ivo);
  act(acts::AddRack{"rack 2"});
  open_car();
  clean(job::Panel::FrontBumper);
  HandOffViewModel hand(*session_);
  PartsViewModel screen(*session_);
  screen.act();
  settle();
  EXPECT_EQ(hand.offerCount(), 0) << "the giver's own";
  be(jo);
  ASSERT_EQ(hand.offerCount(), 1);
  auto* offers = hand.offers();
  EXPECT_EQ(offers->data(offers->index(0, 0), offers->roleNames().key("title")).toString(),
            "Take the front bumper cover");
  hand.setQuery("206 bump");
  EXPECT_EQ(hand.foundWords(), "1 of 1 parts");
  auto* found = hand.found();
  EXPECT_EQ(found->data(found->index(0, 0), found->roleNames().key("words")).toString(),
            "rack 2, for the body technician, from Ivo");
  hand.setQuery("hood");
  EXPECT_EQ(hand.foundCount(), 0);
}

}  // namespace
}  // namespace jambline::screens
