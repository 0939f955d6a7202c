#include "screens/shop_view_model.h"

#include <unistd.h>

#include "screens/demo_view_model.h"
#include "tests/screens/shop_desk.h"

namespace jambline::screens {
namespace {

class ShopScreen : public ShopDesk {
 protected:
  void SetUp() override {
    ShopDesk::SetUp();
    mara_ = add("Mara", job::Role::Manager);
    be(mara_);
    ivo_ = add("Ivo", job::Role::Painter);
  }
  static QString id(const PersonId& person) { return QString::fromStdString(person.hex()); }
  PersonId mara_;
  PersonId ivo_;
};

TEST_F(ShopScreen, NameAndZoneAreKeptAndAnUnknownZoneIsRefused) {
  ShopViewModel screen(*session_);
  screen.nameShop("North Street", "America/Chicago");
  settle();
  EXPECT_EQ(screen.name(), "North Street");
  EXPECT_EQ(screen.zone(), "America/Chicago");
  screen.nameShop("North Street", "Nowhere/Town");
  settle();
  EXPECT_TRUE(failed_);
  EXPECT_EQ(screen.zone(), "America/Chicago");
}

TEST_F(ShopScreen, APlaceOnTheRacksIsAddedOnce) {
  ShopViewModel screen(*session_);
  int added = 0;
  QObject::connect(&screen, &ShopViewModel::rackAdded, [&] { ++added; });
  screen.addRack("rack 2, left");
  settle();
  screen.addRack("rack 2, left");
  settle();
  EXPECT_EQ(screen.racks(), QStringList{"rack 2, left"});
  EXPECT_EQ(added, 1);
}

TEST_F(ShopScreen, APersonIsRenamedGivenARoleLetGoAndForgotten) {
  ShopViewModel screen(*session_);
  screen.open(id(ivo_));
  screen.rename("Ivo K.");
  screen.changeRole(static_cast<int>(job::Role::Detailer));
  settle();
  EXPECT_EQ(screen.personName(), "Ivo K.");
  EXPECT_EQ(screen.personStanding(), "Detailer");
  screen.letGo();
  settle();
  EXPECT_TRUE(screen.personLeft());
  EXPECT_FALSE(screen.personErased());
  screen.eraseName();
  settle();
  EXPECT_FALSE(failed_);
  EXPECT_TRUE(screen.personErased());
  EXPECT_EQ(screen.personName(), "someone");
  close();
  open();
  EXPECT_EQ(session_->shop().find(ivo_)->name, "");
}

TEST_F(ShopScreen, WhoIsNoManagerErasesNoName) {
  ShopViewModel screen(*session_);
  screen.open(id(ivo_));
  screen.letGo();
  settle();
  be(add("Lou", job::Role::Helper));
  EXPECT_FALSE(screen.manager());
  screen.eraseName();
  settle();
  ASSERT_TRUE(failed_);
  EXPECT_EQ(failed_->code, Code::NotAllowed);
  EXPECT_EQ(screen.personName(), "Ivo");
}

// Until the child has ended, at most 10 s.
void wait(const DemoViewModel& demo) {
  for (int i = 0; i < 1000 && demo.running(); ++i) {
    QCoreApplication::processEvents(QEventLoop::AllEvents, 10);
    usleep(10'000);
  }
}

TEST_F(ShopScreen, TheDemoIsAProgramOfItsOwnThatEndsWithItsInput) {
  DemoViewModel demo(false, "/bin/cat", {});
  demo.open();
  EXPECT_FALSE(demo.note().isEmpty());
  EXPECT_TRUE(demo.running());
  demo.open();  // no second one
  EXPECT_TRUE(demo.running());
}

TEST_F(ShopScreen, ADemoThatEndsLeavesNoWordsAndOneThatFailsSaysSo) {
  DemoViewModel good(false, "/bin/true", {});
  good.open();
  wait(good);
  EXPECT_FALSE(good.running());
  EXPECT_TRUE(good.note().isEmpty());
  for (const char* program : {"/bin/false", "/nothing/here"}) {
    DemoViewModel bad(false, program, {});
    bad.open();
    wait(bad);
    EXPECT_EQ(bad.note().count('\n'), 2) << program;
  }
}

}  // namespace
}  // namespace jambline::screens
