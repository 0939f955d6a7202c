#include "screens/inspect_view_model.h"
#include "tests/screens/shop_desk.h"

namespace jambline::screens {
namespace {

class LookingAtParticles : public ShopDesk {
 protected:
  void SetUp() override {
    ShopDesk::SetUp();
    be(add("Ivo", job::Role::Painter));
    open_car();
    screen_ = std::make_unique<InspectViewModel>(*session_);
    screen_->openPanel("hood");
  }
  void TearDown() override {
    screen_.reset();
    ShopDesk::TearDown();
  }
  void mark(double x_mm, double y_mm) {
    screen_->placeMark(x_mm, y_mm);
    settle();
    ASSERT_NE(screen_->chosenMark(), "");
  }
  void end_chosen(job::MarkEnd end) {
    act(acts::EndMark{car().job, MarkId{*MarkId::parse(screen_->chosenMark().toStdString())}, end});
  }
  std::unique_ptr<InspectViewModel> screen_;
};

TEST_F(LookingAtParticles, AreAskedOnThreeMarksOfACarAndRepeatedByOneTap) {
  mark(400, 400);
  EXPECT_TRUE(screen_->lookAsked());
  EXPECT_EQ(screen_->lookAgain(), "");
  screen_->sayLook(static_cast<int>(job::ParticleLook::WhiteFiber));
  settle();
  EXPECT_EQ(screen_->chosenLook(), static_cast<int>(job::ParticleLook::WhiteFiber));
  EXPECT_FALSE(screen_->lookAsked());
  for (const double x_mm : {600.0, 800.0}) {
    mark(x_mm, 400);
    ASSERT_TRUE(screen_->lookAsked());
    EXPECT_EQ(screen_->lookAgain(), "White fiber");
    screen_->sayLookAgain();
    settle();
    EXPECT_EQ(screen_->chosenLook(), static_cast<int>(job::ParticleLook::WhiteFiber));
  }
  mark(1000, 400);
  EXPECT_FALSE(screen_->lookAsked());
  screen_->sayLook(static_cast<int>(job::ParticleLook::HardGrain));
  settle();
  EXPECT_EQ(screen_->chosenLook(), static_cast<int>(job::ParticleLook::HardGrain));
  EXPECT_FALSE(failed_);
}

TEST_F(LookingAtParticles, IsNotAskedOfWhatIsNoDirt) {
  screen_->setKind(static_cast<int>(job::DefectKind::RunOrSag));
  mark(400, 400);
  EXPECT_FALSE(screen_->lookAsked());
}

TEST_F(LookingAtParticles, ALookPastTheLastIsNothing) {
  mark(400, 400);
  screen_->sayLook(6);
  screen_->sayLook(-2);
  settle();
  EXPECT_EQ(screen_->chosenLook(), -1);
  EXPECT_EQ(screen_->lookWords(6), "");
  EXPECT_FALSE(failed_);
}

TEST_F(LookingAtParticles, AMarkThatIsGoneIsStruckAndNoLongerCounts) {
  mark(400, 400);
  end_chosen(job::MarkEnd::Gone);
  EXPECT_EQ(screen_->panelMarkCount(), 1);  // it stays on the drawing
  EXPECT_TRUE(screen_->marks()->rows().front().ended);
  EXPECT_EQ(screen_->markCount(), 0);
  EXPECT_TRUE(screen_->mainText().startsWith("Clean")) << screen_->mainText().toStdString();
  screen_->mainAct();
  settle();
  EXPECT_EQ(car().find(job::Panel::Hood)->verdict, job::Verdict::Clean);
  EXPECT_FALSE(failed_);
}

TEST_F(LookingAtParticles, AMarkThatCameBackIsOpenAgain) {
  mark(400, 400);
  end_chosen(job::MarkEnd::Gone);
  end_chosen(job::MarkEnd::CameBack);
  EXPECT_FALSE(screen_->marks()->rows().front().ended);
  EXPECT_EQ(screen_->markCount(), 1);
  EXPECT_TRUE(screen_->mainText().startsWith("To correct")) << screen_->mainText().toStdString();
}

TEST_F(LookingAtParticles, RingsOfOpenAndEndedMarksAreNotMerged) {
  mark(400, 400);
  end_chosen(job::MarkEnd::Gone);
  screen_->setPxPerMm(0.2);
  mark(500, 400);  // 20 dp away
  const auto& rows = screen_->marks()->rows();
  ASSERT_EQ(rows.size(), 2U);
  EXPECT_TRUE(rows[0].shown && rows[1].shown);
  EXPECT_EQ(rows[0].together, 1);
  EXPECT_EQ(rows[1].together, 1);
}

}  // namespace
}  // namespace jambline::screens
