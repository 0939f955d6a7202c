// The shots of a car, taken one after another with a camera whose every move the test makes. What a
// stage wants is of job/shot.h (common practice, no source).
#include <QDir>
#include <fstream>

#include "picture/thumbnails.h"
#include "screens/shot_rows.h"
#include "tests/screens_pictures/shot_desk.h"

namespace jambline::screens {
namespace {

using job::Stage;
using Main = ShotViewModel::Main;
using Step = ShotViewModel::Step;

using Shots = ShotDesk;

TEST_F(Shots, AGoodPictureIsKeptByTheShutterAloneAndTheNextMissingShotComes) {
  open_at({Stage::Prep});
  front_on(Stage::Prep);
  EXPECT_EQ(shots_->countWords(), "0 of 4 taken");
  EXPECT_EQ(shot_->title(), "Left front door, guide coat");
  EXPECT_EQ(shot_->countWords(), "1 of 4");
  shoot(good());
  ASSERT_EQ(pictures().size(), 1U);
  EXPECT_EQ(pictures()[0].facts.word, trade::PhotoWord::Good);
  EXPECT_EQ(pictures()[0].place.panel, job::Panel::LeftFrontDoor);
  EXPECT_EQ(pictures()[0].from, job::PictureFrom::Camera);
  EXPECT_EQ(shot_->step(), Step::Aim);
  EXPECT_NE(shot_->title(), "Left front door, guide coat");
  EXPECT_EQ(shots_->missingCount(), 3);
  EXPECT_EQ(shots_->countWords(), "1 of 4 taken");
  EXPECT_FALSE(failed_);
}

// Twelve jambs: hood, decklid and doors, edge and jamb each. One tap a good shot, two with the
// edges.
TEST_F(Shots, TwelveJambsTakeTwoTapsAShotWithTheirEdgesLookedAt) {
  open_at({Stage::EdgesAndJambs},
          {job::Panel::Hood, job::Panel::LeftFrontDoor, job::Panel::RightFrontDoor,
           job::Panel::LeftRearDoor, job::Panel::RightRearDoor, job::Panel::Decklid});
  front_on(Stage::EdgesAndJambs);
  ASSERT_EQ(shots_->missingCount(), 12);
  int taps = 0;
  for (unsigned i = 0; i < 12; ++i) {
    shoot(good(i));
    ++taps;
    ASSERT_EQ(shot_->step(), Step::Edges) << i;
    EXPECT_EQ(shot_->mainText(), "Clean, next");
    if (i == 4)
      shot_->find(static_cast<int>(job::DefectKind::TapeLine));
    else
      shot_->act();
    ++taps;
    ASSERT_TRUE(until([this] { return shot_->step() != Step::Busy; }));
  }
  EXPECT_LE(taps, 24);
  EXPECT_EQ(finished_, 1);
  ASSERT_EQ(pictures().size(), 12U);
  int marks = 0;
  for (const auto& panel : car().panels) marks += panel.open_marks();
  EXPECT_EQ(marks, 1);
  for (const auto& picture : pictures()) ASSERT_TRUE(picture.edges);
  EXPECT_EQ(pictures()[4].edges->finds, std::vector<job::DefectKind>{job::DefectKind::TapeLine});
  EXPECT_TRUE(pictures()[4].place.mark);
  EXPECT_EQ(shots_->missingCount(), 0);
}

TEST_F(Shots, TwelveJambsBeforeMaskingTakeOneTapEach) {
  open_at({Stage::Mask},
          {job::Panel::Hood, job::Panel::LeftFrontDoor, job::Panel::RightFrontDoor,
           job::Panel::LeftRearDoor, job::Panel::RightRearDoor, job::Panel::Decklid});
  front_on(Stage::Mask);
  ASSERT_EQ(shots_->missingCount(), 12);
  for (unsigned i = 0; i < 12; ++i) shoot(good(i));
  EXPECT_EQ(pictures().size(), 12U);
  EXPECT_EQ(finished_, 1);
}

TEST_F(Shots, APoorPictureWaitsWithItsReasonAndTakeAgainIsTheShutter) {
  open_at({Stage::Prep});
  front_on(Stage::Prep);
  shoot(poor());
  EXPECT_EQ(shot_->step(), Step::Poor);
  EXPECT_EQ(shot_->judgedWord(), "Blurred");
  EXPECT_FALSE(shot_->judgedAdvice().isEmpty());
  EXPECT_FALSE(shot_->preview().isNull());
  EXPECT_EQ(shot_->mainText(), "Take again");
  EXPECT_TRUE(pictures().empty());
  shoot(good());  // by "Take again"
  ASSERT_EQ(pictures().size(), 1U);
  EXPECT_EQ(pictures()[0].place.panel, job::Panel::LeftFrontDoor);
  EXPECT_FALSE(pictures()[0].kept_though_poor);
}

TEST_F(Shots, APoorPictureIsKeptWhenThePersonSaysSoAndIsMarked) {
  open_at({Stage::Prep});
  front_on(Stage::Prep);
  shoot(poor());
  shot_->keepAnyway();
  ASSERT_TRUE(at(Step::Aim));
  ASSERT_EQ(pictures().size(), 1U);
  EXPECT_TRUE(pictures()[0].kept_though_poor);
  EXPECT_EQ(pictures()[0].facts.word, trade::PhotoWord::Blurred);
  const auto* rows = shots_->shots();
  EXPECT_EQ(rows->data(rows->index(3, 0), rows->roleNames().key("words")), "poor, kept anyway");
}

TEST_F(Shots, APictureThatWaitsKeepsItsPlaceWhateverIsOpenedMeanwhile) {
  open_at({Stage::Prep, Stage::Mask});
  front_on(Stage::Prep);
  shoot(poor());
  const QString title = shot_->title();
  shot_->open("mask", "");
  EXPECT_EQ(shot_->step(), Step::Poor);
  EXPECT_EQ(shot_->title(), title);
  shot_->keepAnyway();
  ASSERT_TRUE(at(Step::Aim));
  ASSERT_EQ(pictures().size(), 1U);
  EXPECT_EQ(pictures()[0].place.stage, Stage::Prep);
  EXPECT_EQ(shot_->title(), "Another picture, mask");
}

TEST_F(Shots, TheCameraIsOnOnlyWhileTheScreenIsInFront) {
  open_at({Stage::Prep});
  EXPECT_EQ(camera_.starts, 0);
  shot_->open("prep", "");
  EXPECT_EQ(camera_.starts, 0);
  shot_->setFront(true);
  EXPECT_EQ(camera_.starts, 1);
  EXPECT_TRUE(shot_->live());
  shot_->setFront(false);
  EXPECT_EQ(camera_.stops, 1);
  EXPECT_EQ(camera_.now, device::Camera::State::Off);
  EXPECT_FALSE(shot_->live());
}

TEST_F(Shots, WithoutACameraItIsSaidWhyAndFilesAreTheMainAct) {
  open_at({Stage::Prep});
  camera_.why = Error{Code::FileFailed, "start", "camera", {{"cause", "no camera"}}};
  camera_.go(device::Camera::State::NoCamera);
  front_on(Stage::Prep);
  EXPECT_EQ(shot_->troubleWhat(), "There is no camera on this device.");
  EXPECT_EQ(shot_->troubleKept(), "0 of 4 pictures are saved.");
  EXPECT_FALSE(shot_->canRestart());
  EXPECT_EQ(shot_->mainText(), "Take from files");
  int asked = 0;
  QObject::connect(shot_.get(), &ShotViewModel::filesAsked, shot_.get(), [&] { ++asked; });
  shot_->act();
  EXPECT_EQ(asked, 1);
}

// UX.md's words for a camera that stalls: what happened, what is saved, start it again or files.
TEST_F(Shots, AStalledCameraIsStartedAgain) {
  open_at({Stage::Prep});
  front_on(Stage::Prep);
  shoot(good());
  camera_.why = Error{Code::FileFailed, "take a picture", "camera", {{"cause", "stalled"}}};
  camera_.go(device::Camera::State::Stalled);
  EXPECT_EQ(shot_->troubleWhat(), "The camera gives no picture.");
  EXPECT_EQ(shot_->troubleKept(), "1 of 4 pictures are saved.");
  ASSERT_TRUE(shot_->canRestart());
  shot_->restart();
  EXPECT_EQ(camera_.restarts, 1);
  EXPECT_EQ(shot_->mainAct(), Main::Shutter);
}

TEST_F(Shots, AShutterThatGivesNothingIsSaidAndNothingIsKept) {
  open_at({Stage::Prep});
  front_on(Stage::Prep);
  shot_->act();
  camera_.answer(fail(Error{Code::FileFailed, "take a picture", "camera", {{"cause", "stalled"}}}));
  EXPECT_EQ(shot_->step(), Step::Aim);
  EXPECT_EQ(shot_->noticeWhat(), "The camera gives no picture.");
  EXPECT_TRUE(pictures().empty());
  EXPECT_EQ(shot_->title(), "Left front door, guide coat");
}

TEST_F(Shots, AFileIsOfferedAndKeptForTheShotByOneTap) {
  open_at({Stage::Prep});
  front_on(Stage::Prep);
  shot_->offer({put("one.jpg", good())});
  ASSERT_TRUE(at(Step::Offered));
  EXPECT_EQ(shot_->mainText(), "Keep it");
  EXPECT_EQ(shot_->mainSecond(), "for: Left front door, guide coat");
  shot_->act();
  ASSERT_TRUE(at(Step::Aim));
  ASSERT_EQ(pictures().size(), 1U);
  EXPECT_EQ(pictures()[0].from, job::PictureFrom::File);
  EXPECT_EQ(shot_->title(), "Hood, guide coat");
}

TEST_F(Shots, ACameraCardGivesOnePictureAfterAnotherToTheShotsInTurn) {
  open_at({Stage::Prep});
  front_on(Stage::Prep);
  ASSERT_TRUE(QDir(QString::fromStdString(folder_)).mkdir("card"));
  shot_->watch(QUrl::fromLocalFile(QString::fromStdString(folder_ + "/card")));
  EXPECT_EQ(shot_->watchWords(), "New pictures in card are offered here.");
  settle();
  QThread::msleep(600);  // the folder is listed before the card's pictures come
  settle();
  put("card/a.jpg", good(1));
  put("card/b.JPG", good(2));
  for (int i = 0; i < 2; ++i) {
    ASSERT_TRUE(at(Step::Offered)) << i;
    shot_->act();
    ASSERT_TRUE(until([this, i] { return pictures().size() == static_cast<std::size_t>(i + 1); }));
  }
  EXPECT_EQ(pictures()[0].from, job::PictureFrom::WatchedFolder);
  EXPECT_EQ(pictures()[0].place.panel, job::Panel::LeftFrontDoor);
  EXPECT_EQ(pictures()[1].place.panel, job::Panel::Hood);
  shot_->stopWatching();
  EXPECT_FALSE(shot_->watching());
}

TEST_F(Shots, ManyFilesAreTakenInAndEveryOneThatIsNotIsNamedWithItsReason) {
  open_at({Stage::Prep});
  shots_->choose("prep");
  shots_->takeIn({put("good.jpg", good(1)),
                  put("good as png.jpg", file_of(picture::PanelPicture(2).taken(), "PNG")),
                  put("blurred.jpg", poor(4)), put("empty.jpg", {}), put("words.jpg", "no picture"),
                  put("cut.jpg", good(5).left(3000)),
                  QUrl::fromLocalFile(QString::fromStdString(folder_ + "/gone.jpg")),
                  QUrl("https://example.invalid/a.jpg")});
  ASSERT_TRUE(until([this] { return !intake_->importing(); }));
  EXPECT_EQ(pictures().size(), 2U);
  EXPECT_EQ(intake_->importWords(), "2 pictures kept, 5 not");
  EXPECT_EQ(intake_->refusedCount(), 6);
  std::map<QString, QString> why;
  const auto* rows = intake_->refused();
  for (int i = 0; i < rows->rowCount(); ++i)
    why[rows->data(rows->index(i, 0), rows->roleNames().key("title")).toString()] =
        rows->data(rows->index(i, 0), rows->roleNames().key("why")).toString();
  EXPECT_EQ(why["empty.jpg"], "This file is empty.");
  EXPECT_EQ(why["words.jpg"], "This is not a picture.");
  EXPECT_EQ(why["cut.jpg"], "This picture is damaged or cut short.");
  EXPECT_EQ(why["gone.jpg"], "This file is gone.");
  EXPECT_EQ(why["a.jpg"], "This is no file of this device.");
  EXPECT_EQ(why["blurred.jpg"], "This picture proves little: blurred.");
  EXPECT_EQ(intake_->poorCount(), 1);
  EXPECT_FALSE(failed_);
  intake_->keepAllAnyway();
  ASSERT_TRUE(until([this] { return pictures().size() == 3; }));
  EXPECT_TRUE(pictures()[2].kept_though_poor);
  EXPECT_EQ(shots_->otherWords(), "and 3 pictures more");
  // Each with a small one that a slow network carries first.
  for (const auto& picture : pictures()) {
    ASSERT_TRUE(picture.facts.preview);
    const auto preview = engine_->blobs()->get(*picture.facts.preview);
    ASSERT_TRUE(preview);
    EXPECT_LE(preview->size(), picture::most_preview_bytes);
    EXPECT_FALSE(QImage::fromData(preview->data(), static_cast<int>(preview->size())).isNull());
  }
}

TEST_F(Shots, AnImportThatIsStoppedSaysHowManyWereNotLookedAt) {
  open_at({Stage::Prep});
  QList<QUrl> files;
  for (unsigned i = 0; i < 6; ++i) files << put(QStringLiteral("%1.jpg").arg(i), good(i));
  shots_->choose("prep");
  shots_->takeIn(files);
  EXPECT_TRUE(intake_->importing());
  intake_->stop();
  ASSERT_TRUE(until([this] { return !intake_->importing(); }));
  EXPECT_EQ(pictures().size(), 1U);  // the one that was being read
  EXPECT_EQ(intake_->importWords(), "1 picture kept. Stopped: 5 not looked at");
}

// The same file at the same place is in the record once.
TEST_F(Shots, APictureThatIsAlreadyThereIsNotKeptTwice) {
  open_at({Stage::Prep});
  shots_->choose("prep");
  const QUrl file = put("one.jpg", good());
  shots_->takeIn({file});
  ASSERT_TRUE(until([this] { return !intake_->importing(); }));
  shots_->takeIn({file});
  ASSERT_TRUE(until([this] { return !intake_->importing(); }));
  EXPECT_EQ(pictures().size(), 1U);
  EXPECT_EQ(intake_->refusedCount(), 1);
}

TEST_F(Shots, TheEarlierPictureOfTheSameJambLiesOverTheView) {
  open_at({Stage::Mask, Stage::EdgesAndJambs}, {job::Panel::LeftFrontDoor});
  front_on(Stage::Mask);
  EXPECT_TRUE(shot_->ghost().isNull());
  shoot(good(1));
  shoot(good(2));
  EXPECT_EQ(finished_, 1);
  shots_->choose("edges and jambs");
  shot_->open(shots_->stage(), shots_->nextKey());
  ASSERT_TRUE(until([this] { return !shot_->ghost().isNull(); }));
  EXPECT_EQ(shot_->ghostWords(), "dashes: mask");
}

TEST_F(Shots, EdgesThatWereNotLookedAtAreAskedForWhenTheShotIsOpened) {
  open_at({Stage::EdgesAndJambs}, {job::Panel::LeftFrontDoor});
  front_on(Stage::EdgesAndJambs);
  const QString first = shots_->nextKey();
  shoot(good());
  ASSERT_EQ(shot_->step(), Step::Edges);
  shot_->open("edges and jambs", shots_->nextKey());  // left without an answer
  EXPECT_EQ(shot_->step(), Step::Aim);
  shot_->open("edges and jambs", first);
  EXPECT_EQ(shot_->step(), Step::Edges);
  shot_->setSeveral(true);
  shot_->find(static_cast<int>(job::DefectKind::TapeBleed));
  shot_->find(static_cast<int>(job::DefectKind::PrimerShowing));
  EXPECT_EQ(shot_->mainText(), "Keep 2 finds, next");
  shot_->act();
  ASSERT_TRUE(at(Step::Aim));
  ASSERT_TRUE(pictures()[0].edges);
  EXPECT_EQ(pictures()[0].edges->finds.size(), 2U);
  EXPECT_EQ(car().panels[0].open_marks(), 2);
}

TEST_F(Shots, APictureOfAMarkFillsTheShotOfItsKind) {
  open_at({Stage::Inspect});
  act(acts::PlaceMark{.job = car().job,
                      .panel = job::Panel::Hood,
                      .x_mm = 500,
                      .y_mm = 300,
                      .defect = job::DefectKind::Nib});
  ASSERT_FALSE(failed_);
  const auto mark = car().find(job::Panel::Hood)->marks.front().mark;
  shots_->choose("inspect");
  EXPECT_EQ(shots_->mainText(), "Take the next: Nib, mark");
  shot_->setFront(true);
  shot_->openForMark(QString::fromStdString(mark.hex()));
  EXPECT_EQ(shot_->title(), "Nib, mark");
  shoot(good());
  ASSERT_EQ(pictures().size(), 1U);
  EXPECT_EQ(pictures()[0].place.mark, mark);
  EXPECT_EQ(pictures()[0].place.panel, job::Panel::Hood);
  EXPECT_EQ(shots_->missingCount(), 0);
}

TEST_F(Shots, NothingIsTakenWhereThePicturesCannotBeKept) {
  open_at({Stage::Prep});
  front_on(Stage::Prep);
  shoot(good());
  std::filesystem::rename(folder_ + "/blobs", folder_ + "/away");
  std::ofstream(folder_ + "/blobs") << "in the way";
  shot_->act();
  camera_.answer(good(9));
  ASSERT_TRUE(at(Step::Unsaved));
  EXPECT_TRUE(failed_);
  EXPECT_EQ(shot_->mainText(), "Save it again");
  EXPECT_EQ(pictures().size(), 1U);
  std::filesystem::remove(folder_ + "/blobs");
  std::filesystem::rename(folder_ + "/away", folder_ + "/blobs");
  shot_->act();
  ASSERT_TRUE(until([this] { return shot_->step() != Step::Busy; }));
  EXPECT_EQ(shot_->step(), Step::Aim);
  EXPECT_EQ(pictures().size(), 2U);
}

}  // namespace
}  // namespace jambline::screens
