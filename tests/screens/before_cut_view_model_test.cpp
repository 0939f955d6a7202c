#include "screens/before_cut_view_model.h"

#include "tests/screens/shop_desk.h"

namespace jambline::screens {
namespace {

class BeforeCutScreen : public ShopDesk {
 protected:
  void SetUp() override {
    ShopDesk::SetUp();
    be(add("Ivo", job::Role::Painter));
    open_car();
  }
  QString answer(BeforeCutViewModel& screen, const QString& key) {
    auto* rows = screen.items();
    const auto roles = rows->roleNames();
    for (int row = 0; row < rows->rowCount(); ++row)
      if (rows->data(rows->index(row, 0), roles.key("key")) == key)
        return rows->data(rows->index(row, 0), roles.key("answerWords")).toString();
    return "no such row";
  }
  void say(BeforeCutViewModel& screen, const QString& key, const QString& words) {
    screen.open(key);
    const auto row = screen.openAnswers().indexOf(words);
    ASSERT_GE(row, 0) << key.toStdString();
    screen.choose(static_cast<int>(row));
  }
  void make_matte() {
    acts::PlanPanel plan{car().job, car().find(job::Panel::Hood)->plan};
    plan.plan.finish = job::Finish::Matte;
    act(plan);
  }
};

TEST_F(BeforeCutScreen, AGoodDayIsTwoTapsAndAsksOncePerPersonAndCar) {
  BeforeCutViewModel screen(*session_);
  int done = 0;
  QObject::connect(&screen, &BeforeCutViewModel::done, &screen, [&] { ++done; });
  EXPECT_TRUE(screen.needed());
  screen.ask();
  for (int row = 0; row < screen.items()->rowCount(); ++row)  // nothing is answered before a tap
    EXPECT_EQ(screen.items()->data(screen.items()->index(row, 0),
                                   screen.items()->roleNames().key("answerWords")),
              "");
  EXPECT_TRUE(screen.mainWaits());
  screen.answerTheRest();  // tap 1
  EXPECT_FALSE(screen.mainWaits());
  screen.keep();  // tap 2
  settle();
  EXPECT_EQ(done, 1);
  EXPECT_FALSE(screen.needed());
  const auto* kept = car().before_cut_of(session_->person());
  ASSERT_NE(kept, nullptr);
  EXPECT_EQ(kept->checks.size(), 11u);  // breaks only show later
  be(add("Jo", job::Role::BodyTechnician));
  EXPECT_TRUE(screen.needed());
  EXPECT_FALSE(failed_);
}

TEST_F(BeforeCutScreen, AMustAnsweredNoHasAReasonAndAShouldHasNone) {
  BeforeCutViewModel screen(*session_);
  screen.ask();
  screen.press("gloves");
  EXPECT_EQ(answer(screen, "gloves"), "yes");
  say(screen, "gloves", "No: none at hand");
  say(screen, "hearing", "No");
  say(screen, "cord and outlet", "Does not apply");
  screen.open("gloves");
  EXPECT_FALSE(screen.openAnswers().contains("No"));
  EXPECT_FALSE(screen.openAnswers().contains("Does not apply"));
  screen.answerTheRest();
  EXPECT_EQ(answer(screen, "gloves"), "no: none at hand");
  screen.keep();
  settle();
  EXPECT_FALSE(screen.needed());
  EXPECT_FALSE(failed_);
}

TEST_F(BeforeCutScreen, AStopAnsweredNoHasNoWayRound) {
  BeforeCutViewModel screen(*session_);
  screen.ask();
  say(screen, "not matte", "No: do not cut");
  screen.answerTheRest();
  EXPECT_TRUE(screen.stopped());
  EXPECT_TRUE(screen.mainWaits());
  screen.keep();
  settle();
  EXPECT_TRUE(screen.needed());
  EXPECT_EQ(car().before_cut_of(session_->person()), nullptr);
}

TEST_F(BeforeCutScreen, WithAMattePanelTheFinishIsAnsweredByATapOfItsOwn) {
  make_matte();
  BeforeCutViewModel screen(*session_);
  screen.ask();
  EXPECT_TRUE(screen.stopWords().contains("hood"));
  screen.answerTheRest();
  EXPECT_EQ(answer(screen, "not matte"), "");
  EXPECT_TRUE(screen.mainWaits());
  screen.press("not matte");
  EXPECT_FALSE(screen.mainWaits());
}

TEST_F(BeforeCutScreen, AnotherPersonStartsWithoutAnAnswer) {
  BeforeCutViewModel screen(*session_);
  screen.ask();
  screen.answerTheRest();
  be(add("Jo", job::Role::BodyTechnician));
  EXPECT_EQ(answer(screen, "gloves"), "");
  EXPECT_TRUE(screen.mainWaits());
}

}  // namespace
}  // namespace jambline::screens
