// What goes with a picture that is taken on the way: a part that is sent back, a supplement.
#include "screens/operations_view_model.h"
#include "screens/parts_view_model.h"
#include "tests/screens_pictures/picture_desk.h"

namespace jambline::screens {
namespace {

using job::Panel;
using job::Stage;

class WithAPicture : public PictureDesk {};

TEST_F(WithAPicture, APartGoesBackWithTheOneThatWasTakenMeanwhile) {
  keep({.stage = Stage::Prep});  // an older one is none of it
  act(acts::GiveVerdict{car().job, Panel::FrontBumper, job::Verdict::Clean, true, {}});
  act(acts::OfferRelease{car().job, Panel::FrontBumper, job::Role::Manager, {}});
  const QString bumper = QStringLiteral("front bumper cover");
  PartsViewModel screen(*session_);
  screen.startReturn(bumper);
  screen.willTakePicture();
  EXPECT_EQ(screen.returnFile(), "");
  const QString taken = keep({.stage = Stage::Prep});
  EXPECT_NE(screen.returnFile(), "");
  EXPECT_TRUE(screen.returns()) << "the reason is still asked";
  screen.sendBack(bumper, QStringLiteral("scratched"));
  settle();
  const auto& release = car().find(Panel::FrontBumper)->release;
  ASSERT_TRUE(release.picture);
  EXPECT_EQ(QString::fromStdString(release.picture->hex()), taken);
  EXPECT_FALSE(screen.returns());
}

TEST_F(WithAPicture, ASupplementKeepsWhatWasTypedAndTheOneThatWasTaken) {
  OperationsViewModel screen(*session_);
  screen.startAdding();
  screen.setKind(1);
  screen.chooseStage(QStringLiteral("prep"));
  screen.setWhy(QStringLiteral("beam bent"));
  screen.willTakePicture();
  const QString taken = keep({.stage = Stage::Prep});
  EXPECT_TRUE(screen.adding());
  EXPECT_EQ(screen.why(), "beam bent");
  EXPECT_NE(screen.pictureFile(), "");
  screen.keep();
  settle();
  const auto& all = car().operations;
  const auto more =
      std::find_if(all.begin(), all.end(), [](const auto& one) { return one.why == "beam bent"; });
  ASSERT_NE(more, all.end());
  ASSERT_TRUE(more->picture);
  EXPECT_EQ(QString::fromStdString(more->picture->hex()), taken);
  EXPECT_EQ(more->approval, job::Approval::Asked);
}

}  // namespace
}  // namespace jambline::screens
