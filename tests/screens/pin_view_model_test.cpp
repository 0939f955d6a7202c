#include "screens/pin_view_model.h"

#include "tests/screens/shop_desk.h"

namespace jambline::screens {
namespace {

class PinScreen : public ShopDesk {
 protected:
  void SetUp() override {
    ShopDesk::SetUp();
    ivo_ = add("Ivo", job::Role::Painter);
    mara_ = add("Mara", job::Role::Manager);
    be(ivo_);
    PinViewModel screen(*session_);
    screen.set("2704");
    settle();
    be(mara_);
  }
  PersonId ivo_;
  PersonId mara_;
};

TEST_F(PinScreen, OneWithAPinIsChosenOnlyWithIt) {
  PinViewModel screen(*session_);
  be(ivo_);
  EXPECT_TRUE(screen.asking());
  EXPECT_EQ(screen.who(), "Ivo");
  EXPECT_EQ(session_->person(), mara_);
  screen.enter("0000");
  settle();
  EXPECT_TRUE(screen.asking());
  EXPECT_TRUE(screen.wrong().contains("Ivo"));
  EXPECT_EQ(session_->person(), mara_);
  screen.enter("2704");
  settle();
  EXPECT_FALSE(screen.asking());
  EXPECT_EQ(session_->person(), ivo_);
}

TEST_F(PinScreen, AfterThreeWrongTriesEvenTheRightOneWaits) {
  PinViewModel screen(*session_);
  be(ivo_);
  for (int i = 0; i < 3; ++i) {
    screen.enter("0000");
    settle();
  }
  screen.enter("2704");
  settle();
  EXPECT_TRUE(screen.wrong().contains("5 s"));
  EXPECT_EQ(session_->person(), mara_);
  clock_.moment.wall_ms += 5'000;
  screen.enter("2704");
  settle();
  EXPECT_EQ(session_->person(), ivo_);
}

TEST_F(PinScreen, GivingUpChoosesNobodyElse) {
  PinViewModel screen(*session_);
  be(ivo_);
  screen.giveUp();
  EXPECT_FALSE(screen.asking());
  EXPECT_EQ(session_->person(), mara_);
}

TEST_F(PinScreen, AManagerTakesAForgottenOneAway) {
  PinViewModel screen(*session_);
  EXPECT_EQ(screen.others()->rowCount(), 1);
  screen.takeAway(QString::fromStdString(ivo_.hex()));
  settle();
  EXPECT_EQ(screen.others()->rowCount(), 0);
  be(ivo_);
  EXPECT_EQ(session_->person(), ivo_);
}

TEST_F(PinScreen, ItIsAskedForAgainAfterARestartAndNoEntrySpeaksOfIt) {
  const auto entries = session_->snapshot().own_entries;
  close();
  open();
  EXPECT_EQ(session_->snapshot().own_entries, entries);
  PinViewModel screen(*session_);
  be(ivo_);
  EXPECT_TRUE(screen.asking());
  EXPECT_NE(session_->person(), ivo_);
}

TEST_F(PinScreen, APinThatIsNoneIsSaidInWords) {
  PinViewModel screen(*session_);
  screen.set("12");
  settle();
  ASSERT_TRUE(failed_.has_value());
  EXPECT_EQ(failed_->code, Code::Malformed);
  EXPECT_FALSE(screen.hasPin());
}

}  // namespace
}  // namespace jambline::screens
