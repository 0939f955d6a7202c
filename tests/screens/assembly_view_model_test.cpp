#include "screens/assembly_view_model.h"

#include "screens/rules_view_model.h"
#include "tests/screens/shop_desk.h"

namespace jambline::screens {
namespace {

using Mode = AssemblyViewModel::StepMode;

class AssemblyScreen : public ShopDesk {
 protected:
  // A front end that was painted off the car.
  void open_front() {
    acts::OpenCar open;
    open.plate = "K 41-206";
    open.color = {"G7", "deep green", "#1F4D3A"};
    open.body = job::BodyShape::FourDoorSedan;
    open.panels = {{job::Panel::LeftFrontDoor, false},
                   {job::Panel::LeftFender, false},
                   {job::Panel::Hood, false},
                   {job::Panel::FrontBumper, false}};
    open.operations = {{job::Stage::Assemble, "", 60}};
    session_->post(open, [&](const Result<engine::Wrote>& wrote) {
      ASSERT_TRUE(wrote);
      session_->openCar(QString::fromStdString(wrote->job.hex()));
    });
    settle();
    ASSERT_NE(session_->car(), nullptr);
  }
  QVariant of(QAbstractItemModel* rows, const char* key, const char* role) {
    for (int row = 0; row < rows->rowCount(); ++row)
      if (rows->data(rows->index(row, 0), rows->roleNames().key("key")).toString() == key)
        return rows->data(rows->index(row, 0), rows->roleNames().key(role));
    return {};
  }
  QVariant at(QAbstractItemModel* rows, int row, const char* role) {
    return rows->data(rows->index(row, 0), rows->roleNames().key(role));
  }
};

TEST_F(AssemblyScreen, AStepThatWaitsSaysWhatItIsNotBefore) {
  be(add("Jo", job::Role::BodyTechnician));
  open_front();
  AssemblyViewModel screen(*session_);
  settle();
  ASSERT_TRUE(screen.ofInterest());
  EXPECT_EQ(of(screen.steps(), "fender fitted", "words"),
            "not before: front door set to the rear door");
  EXPECT_TRUE(of(screen.steps(), "fender fitted", "dashed").toBool());
  screen.open("fender fitted");
  EXPECT_EQ(screen.stepMode(), Mode::Reason);
  EXPECT_FALSE(screen.stepCautions().isEmpty()) << "two people, a prop";
  screen.say();
  settle();
  EXPECT_EQ(car().assembly.find(job::Step::FenderFit), nullptr) << "not without a reason";
}

TEST_F(AssemblyScreen, ABrokenRuleIsKeptWithItsReasonAndShownOnTheRow) {
  be(add("Jo", job::Role::BodyTechnician));
  open_front();
  AssemblyViewModel screen(*session_);
  settle();
  ASSERT_EQ(screen.reasons().size(), 4);
  screen.open("fender fitted");
  screen.sayAgainst(1);
  settle();
  EXPECT_EQ(of(screen.steps(), "fender fitted", "broken"),
            "before front door set to the rear door: no other way");
  EXPECT_TRUE(of(screen.steps(), "fender fitted", "words").toString().startsWith("Jo, "));
  EXPECT_EQ(screen.stepMode(), Mode::Done);
  screen.reopen();
  settle();
  EXPECT_FALSE(car().assembly.find(job::Step::FenderFit)->done);
}

TEST_F(AssemblyScreen, ThereIsNoWayRoundTheLatch) {
  be(add("Rosa", job::Role::Manager));
  open_front();
  AssemblyViewModel screen(*session_);
  settle();
  screen.open("road test");
  EXPECT_EQ(screen.stepMode(), Mode::NoWay);
  screen.sayAgainst(3);
  screen.say();
  settle();
  EXPECT_EQ(car().assembly.find(job::Step::RoadTest), nullptr);
  screen.open("latch and secondary catch checked");
  EXPECT_EQ(screen.stepMode(), Mode::Ready);
  screen.say();
  settle();
  screen.open("road test");
  EXPECT_EQ(screen.stepMode(), Mode::Ready);
}

TEST_F(AssemblyScreen, TheNextStepIsOnePress) {
  be(add("Jo", job::Role::BodyTechnician));
  open_front();
  AssemblyViewModel screen(*session_);
  settle();
  QStringList done;
  for (int i = 0; i < 60 && !screen.mainWaits(); ++i) {
    done << screen.mainText();
    screen.act();
    settle();
  }
  EXPECT_FALSE(failed_);
  EXPECT_LT(done.indexOf("Done: front door set to the rear door"),
            done.indexOf("Done: fender set"));
  EXPECT_LT(done.indexOf("Done: fender set"), done.indexOf("Done: hood set"));
  EXPECT_GE(done.indexOf("Done: front door set to the rear door"), 0);
  for (const auto& one : car().assembly.steps) EXPECT_TRUE(one.broken.empty());
}

class RulesScreen : public AssemblyScreen {};

TEST_F(RulesScreen, ACircleIsRefusedWithItsNamesAndWhatWasChosenStays) {
  be(add("Rosa", job::Role::Manager));
  RulesViewModel screen(*session_);
  ASSERT_TRUE(screen.manager());
  screen.chooseBefore("hood fitted");
  screen.chooseAfter("front door to rear door");
  screen.setKind(static_cast<int>(job::RuleKind::Hard));
  screen.keep("our own order");
  settle();
  EXPECT_EQ(screen.wrongField(), "rule");
  EXPECT_TRUE(screen.wrongWords().contains("in a circle"));
  EXPECT_TRUE(screen.wrongWords().contains("fender set")) << qPrintable(screen.wrongWords());
  EXPECT_EQ(screen.before(), "Hood set");
  screen.chooseAfter("delivery");
  screen.keep("our own order");
  settle();
  EXPECT_EQ(screen.wrongField(), "");
  EXPECT_EQ(session_->shop().rules.back().said.why, "our own order");
}

TEST_F(RulesScreen, AManagerRetiresARuleButNotWhatProtectsWhoDrives) {
  const auto rosa = add("Rosa", job::Role::Manager);
  be(rosa);
  RulesViewModel screen(*session_);
  auto* rows = screen.rules();
  EXPECT_TRUE(at(rows, 0, "fixed").toBool()) << "the strictest first";
  int hard = 0;
  while (hard < rows->rowCount() && at(rows, hard, "fixed").toBool()) ++hard;
  const QString key = at(rows, hard, "key").toString();
  screen.retire(key);
  settle();
  EXPECT_TRUE(of(rows, qPrintable(key), "retired").toBool());
  screen.putBack(key);
  settle();
  EXPECT_FALSE(of(rows, qPrintable(key), "retired").toBool());
  screen.retire(at(rows, 0, "key").toString());
  settle();
  ASSERT_TRUE(failed_);
  EXPECT_EQ(failed_->code, Code::NotAllowed);
  EXPECT_TRUE(at(rows, 0, "fixed").toBool());
}

}  // namespace
}  // namespace jambline::screens
