// The wall, one picture, and two of the same thing.
#include "folds/shots_of_car.h"
#include "screens/compare_view_model.h"
#include "screens/look_view_model.h"
#include "screens/wall_view_model.h"
#include "tests/screens_pictures/picture_desk.h"

namespace jambline::screens {

namespace {
using job::Panel;
using job::Stage;

class Looking : public PictureDesk {
 protected:
  void SetUp() override {
    PictureDesk::SetUp();
    wall_ = std::make_unique<WallViewModel>(*session_, *store_);
    look_ = std::make_unique<LookViewModel>(*session_, *store_);
    compare_ = std::make_unique<CompareViewModel>(*session_, *store_);
  }
  void TearDown() override {
    compare_.reset();
    look_.reset();
    wall_.reset();
    PictureDesk::TearDown();
  }
  // One line a row: the heading, or the titles of its pictures.
  std::vector<std::string> shown() const {
    std::vector<std::string> out;
    for (int row = 0; row < wall_->rowCount(); ++row) {
      const auto at = wall_->index(row);
      QString line = wall_->data(at, WallViewModel::HeadingRole).toString();
      for (const QVariant& cell : wall_->data(at, WallViewModel::CellsRole).toList())
        line += '[' + cell.toMap()["title"].toString() + ']';
      out.push_back(line.toStdString());
    }
    return out;
  }
  std::string fact(const char* label) {
    auto& facts = *look_->facts();
    for (int row = 0; row < facts.rowCount(); ++row)
      if (facts.data(facts.index(row), DetailRows::LabelRole) == label)
        return facts.data(facts.index(row), DetailRows::ValueRole).toString().toStdString();
    return "no such fact";
  }
  void open(const QString& picture) { look_->open(picture, wall_->keys()); }

  std::unique_ptr<WallViewModel> wall_;
  std::unique_ptr<LookViewModel> look_;
  std::unique_ptr<CompareViewModel> compare_;
};

TEST_F(Looking, TheWallStandsByStageWithAsManySideBySideAsFit) {
  EXPECT_TRUE(wall_->empty());
  wall_->set_columns(2);
  keep({Stage::Inspect, {}, Panel::Hood, {}});
  keep({Stage::CheckIn, {}, {}, {}});
  keep({Stage::Inspect, {}, Panel::FrontBumper, {}});
  keep({Stage::Inspect, {}, Panel::Hood, mark_hood()});
  EXPECT_EQ(shown(), (std::vector<std::string>{"Check-in, 1", "[Check-in]", "Inspect, 3",
                                               "[Hood][Front bumper cover]", "[Hood, nib]"}));
  EXPECT_EQ(wall_->countWords(), "4 pictures");
}

TEST_F(Looking, TheWallIsAskedForAStageAndAPanel) {
  keep({Stage::Inspect, {}, Panel::Hood, {}});
  keep({Stage::CheckIn, {}, Panel::Hood, {}});
  keep({Stage::Inspect, {}, Panel::FrontBumper, {}});
  EXPECT_EQ(wall_->choices("stage"), (QStringList{"all stages", "check-in", "inspect"}));
  wall_->answerWith("stage", 2);
  EXPECT_EQ(shown(), (std::vector<std::string>{"Inspect, 2", "[Hood][Front bumper cover]"}));
  EXPECT_EQ(wall_->choices("panel"), (QStringList{"the whole car", "front bumper cover", "hood"}));
  wall_->answerWith("panel", 2);
  EXPECT_EQ(shown(), (std::vector<std::string>{"Inspect, 1", "[Hood]"}));
  EXPECT_EQ(wall_->countWords(), "1 of 3 pictures");
  EXPECT_EQ(wall_->keys().size(), 1);
  wall_->askAll();
  EXPECT_EQ(wall_->keys().size(), 3);
}

TEST_F(Looking, APoorPictureSaysSoOnTheWallAndLarge) {
  const QString picture = keep({Stage::CheckIn, {}, {}, {}}, [](acts::TakePicture& command) {
    command.facts.word = trade::PhotoWord::Blurred;
    command.facts.sharpness = 12;
    command.kept_though_poor = true;
  });
  const auto cells = wall_->data(wall_->index(1), WallViewModel::CellsRole).toList();
  EXPECT_EQ(cells[0].toMap()["poor"], "blurred, kept anyway");
  open(picture);
  EXPECT_EQ(look_->poor(), "blurred, kept anyway");
  EXPECT_EQ(fact("Sharpness").substr(0, 6), "12 of ");
}

TEST_F(Looking, PreviousAndNextFollowTheWall) {
  keep({Stage::Inspect, {}, Panel::Hood, {}});
  const QString first = keep({Stage::CheckIn, {}, {}, {}});
  keep({Stage::Inspect, {}, Panel::FrontBumper, {}});
  open(first);
  EXPECT_EQ(look_->placeInList(), "1 of 3");
  EXPECT_FALSE(look_->hasPrevious());
  look_->next();
  EXPECT_EQ(look_->title(), "Hood");
  look_->next();
  EXPECT_EQ(look_->title(), "Front bumper cover");
  EXPECT_FALSE(look_->hasNext());
  look_->next();
  EXPECT_EQ(look_->title(), "Front bumper cover");
}

// The desk's clock stands at 2026-09-21 14:13:20 UTC.
TEST_F(Looking, ACameraClockThatIsAYearOffIsSaid) {
  const QString off = keep({Stage::CheckIn, {}, {}, {}}, [](acts::TakePicture& command) {
    command.facts.camera_time = "2025-09-21T14:13:00";
    command.facts.camera_offset_min = 0;
    command.facts.has_location = true;
  });
  const QString right = keep({Stage::CheckIn, {}, Panel::Hood, {}}, [](acts::TakePicture& command) {
    command.facts.camera_time = "2026-09-21T16:13:00";
    command.facts.camera_offset_min = 120;
  });
  open(off);
  EXPECT_EQ(look_->clockWords(), "The camera's clock says a year earlier");
  EXPECT_EQ(fact("By the camera's clock"), "2025-09-21 14:13, a year earlier");
  EXPECT_EQ(fact("Where it was taken"), "stands in the file; left out of export copies");
  open(right);
  EXPECT_EQ(look_->clockWords(), "");
  EXPECT_EQ(fact("By the camera's clock"), "2026-09-21 16:13");
  EXPECT_EQ(fact("Hash of the file"), car().pictures[1].facts.file.hex());
}

TEST_F(Looking, WhatIsDrawnStandsBesideThePictureAndIsTakenBack) {
  open(keep({Stage::CheckIn, {}, {}, {}}));
  const Hash file = look_->shown()->facts.file;
  int ended = 0;
  QObject::connect(look_.get(), &LookViewModel::noteEnded, look_.get(), [&] { ++ended; });
  look_->draw(static_cast<int>(job::PictureNoteShape::Arrow), 0.5, 0.5, 0.25, 0.75);
  settle();
  look_->write(0.1, 0.2, "  run here ");
  settle();
  look_->write(0.1, 0.2, "   ");
  settle();
  EXPECT_EQ(ended, 2);
  ASSERT_EQ(look_->shown()->notes.size(), 2U);
  EXPECT_EQ(look_->shown()->notes[0].drawn.to_x, 0.25);
  EXPECT_EQ(look_->shown()->notes[1].drawn.text, "run here");
  EXPECT_EQ(look_->shown()->facts.file, file);
  const auto cells = wall_->data(wall_->index(1), WallViewModel::CellsRole).toList();
  EXPECT_EQ(cells[0].toMap()["notes"], 2);
  look_->takeNoteBack(QString::fromStdString(look_->shown()->notes[0].note.hex()));
  settle();
  ASSERT_EQ(look_->noteCount(), 1);
  EXPECT_EQ(look_->shown()->notes[0].drawn.text, "run here");
}

TEST_F(Looking, APictureLeadsToItsMarkAndAMarkToItsPictures) {
  const MarkId mark = mark_hood();
  const QString key = QString::fromStdString(mark.hex());
  const QString of_mark = keep({Stage::Inspect, {}, {}, mark});
  const QString of_hood = keep({Stage::Inspect, {}, Panel::Hood, {}});
  open(of_mark);
  EXPECT_EQ(look_->markKey(), key);
  EXPECT_EQ(look_->markPanel(), "hood");
  EXPECT_EQ(look_->markWords(), "nib");
  open(of_hood);
  EXPECT_EQ(look_->markKey(), "");
  look_->set_mark(key);
  EXPECT_EQ(look_->ofMarkKeys(), QStringList{of_mark});
  act(acts::WithdrawMark{car().job, mark});
  open(of_mark);
  EXPECT_EQ(look_->markKey(), "");
}

TEST_F(Looking, APictureIsFiledElsewhere) {
  mark_hood();
  open(keep({Stage::CheckIn, {}, {}, {}}));
  look_->startFiling();
  EXPECT_FALSE(look_->filedElsewhere());
  EXPECT_EQ(look_->markChoices(), QStringList{"No mark"});
  look_->chooseStage(static_cast<int>(Stage::Inspect));
  look_->choosePanel(2);
  look_->chooseMark(1);
  EXPECT_TRUE(look_->filedElsewhere());
  int filed = 0;
  QObject::connect(look_.get(), &LookViewModel::filed, look_.get(), [&] { ++filed; });
  look_->fileHere();
  settle();
  EXPECT_EQ(filed, 1);
  EXPECT_EQ(look_->title(), "Hood, nib");
  EXPECT_EQ(look_->shown()->place.stage, Stage::Inspect);
  // Another panel lets go of the mark, another stage of the shot.
  look_->startFiling();
  look_->choosePanel(1);
  EXPECT_EQ(look_->filedMark(), 0);
}

TEST_F(Looking, TwoPicturesOfTheSameThingStandEarlierBeforeLater) {
  const auto& shots = folds::shots_of(session_->shop(), Stage::CheckIn);
  ASSERT_GE(shots.size(), 2U);
  const QString first = keep({Stage::CheckIn, shots[0].shot, {}, {}});
  open(first);
  EXPECT_FALSE(look_->comparable());
  clock_.advance_ms(60'000);
  const QString second = keep({Stage::CheckIn, shots[0].shot, {}, {}});
  clock_.advance_ms(60'000);
  const QString third = keep({Stage::CheckIn, shots[0].shot, {}, {}});
  keep({Stage::CheckIn, shots[1].shot, {}, {}});
  open(first);
  EXPECT_TRUE(look_->comparable());
  const auto file = [&](const QString& picture) {
    const auto id = PictureId{*PictureId::parse(picture.toStdString())};
    return QString::fromStdString(car().find(id)->facts.file.hex());
  };
  compare_->open(third);
  EXPECT_EQ(compare_->beforeFile(), file(second));  // the newest before it
  EXPECT_EQ(compare_->afterFile(), file(third));
  EXPECT_EQ(compare_->otherCount(), 2);
  compare_->against(first);
  EXPECT_EQ(compare_->beforeFile(), file(first));
  compare_->open(first);
  EXPECT_EQ(compare_->beforeFile(), file(first));
  EXPECT_EQ(compare_->afterFile(), file(second));  // the next after it
}
}  // namespace

}  // namespace jambline::screens
