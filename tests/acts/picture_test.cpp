// Pictures: kept with their place, drawn on, edges looked at, and what a stage's release wants.
#include "folds/shots_of_car.h"
#include "job/body_shape.h"
#include "tests/acts/one_device.h"

namespace jambline::acts {
namespace {

using folds::ShotState;
using job::DefectKind;
using job::Stage;
using trade::PhotoWord;

class PictureTest : public DecideTest {
 protected:
  TakePicture picture(entries::PicturePlace place, PhotoWord word = PhotoWord::Good) {
    TakePicture out{job, {}, job::PictureFrom::Camera, place, word != PhotoWord::Good};
    out.facts.file.bytes[0] = static_cast<std::uint8_t>(++files);
    out.facts.size_bytes = 400'000;
    out.facts.width_px = 1600;
    out.facts.height_px = 1200;
    out.facts.word = word;
    return out;
  }
  // The place of the nth usual shot of a stage.
  static entries::PicturePlace at(Stage stage, std::size_t shot, std::optional<Panel> panel = {}) {
    return {stage, job::usual_shots(stage)[shot].shot, panel, {}};
  }
  std::vector<ShotState> states(Stage stage) {
    std::vector<ShotState> out;
    for (const auto& shot : folds::shots_of_car(car(), shop_view, stage)) out.push_back(shot.state);
    return out;
  }
  const folds::PictureView& last() { return car().pictures.back(); }

  int files = 0;
};

// The usual car: hood on the car, front bumper cover loose; of these only the hood opens.
TEST_F(PictureTest, JambsAreWantedOfPanelsThatOpenAndEdgesOfAll) {
  const auto shots = folds::shots_of_car(car(), shop_view, Stage::EdgesAndJambs);
  ASSERT_EQ(shots.size(), 6U);
  EXPECT_EQ(shots[0].panel, Panel::FrontBumper) << "in walking order";
  EXPECT_EQ(shots[1].panel, Panel::Hood);
  EXPECT_EQ(shots[2].shot.shot_name, "jamb");
  EXPECT_EQ(shots[2].panel, Panel::Hood);
  EXPECT_EQ(shots[3].state, ShotState::Offered);
  EXPECT_EQ(folds::missing_shots(car(), shop_view, Stage::EdgesAndJambs), 3);
}

TEST_F(PictureTest, AGoodPictureStandsForItsShotAndAPoorOneSaysSo) {
  EXPECT_EQ(states(Stage::Prep)[1], ShotState::Missing);
  did(picture(at(Stage::Prep, 0, Panel::Hood), PhotoWord::Blurred));
  EXPECT_EQ(states(Stage::Prep)[1], ShotState::KeptThoughPoor);
  EXPECT_TRUE(last().kept_though_poor);
  did(picture(at(Stage::Prep, 0, Panel::Hood)));
  EXPECT_EQ(states(Stage::Prep)[1], ShotState::Taken);
  EXPECT_EQ(folds::shots_of_car(car(), shop_view, Stage::Prep)[1].pictures.size(), 2U);
  EXPECT_EQ(states(Stage::Prep)[0], ShotState::Missing) << "the bumper cover's is another one";
}

TEST_F(PictureTest, APoorPictureIsKeptOnlyWhenThePersonSaysSo) {
  TakePicture blurred = picture(at(Stage::Prep, 0, Panel::Hood), PhotoWord::Blurred);
  blurred.kept_though_poor = false;
  refused(blurred, Code::NotYet);
  TakePicture good = picture(at(Stage::Prep, 0, Panel::Hood));
  good.kept_though_poor = true;
  did(good);
  EXPECT_FALSE(last().kept_though_poor) << "a good one was never poor";
}

TEST_F(PictureTest, AStageIsReleasedWithItsPicturesOrWithAReason) {
  refused(FinishStage{job, Stage::Prep}, Code::NotYet);
  did(FinishStage{job, Stage::Prep, true, job::WithoutShots::NotReachable});
  EXPECT_EQ(car().stages.front().without_shots, job::WithoutShots::NotReachable);
  EXPECT_EQ(car().stages.front().shots_missing, 4);
  did(FinishStage{job, Stage::Prep, false});
  EXPECT_FALSE(car().stages.front().without_shots);
  for (const Panel name : {Panel::Hood, Panel::FrontBumper})
    for (const std::size_t shot : {0U, 1U}) did(picture(at(Stage::Prep, shot, name)));
  did(FinishStage{job, Stage::Prep, true, job::WithoutShots::NoCamera});
  EXPECT_FALSE(car().stages.front().without_shots) << "nothing was missing";
}

TEST_F(PictureTest, APictureTakenBackIsMissingAgain) {
  const auto taken = did(picture(at(Stage::Prep, 0, Panel::Hood)));
  did(UndoAction{{{job, taken.front().hash}}});
  EXPECT_TRUE(car().pictures.empty());
  EXPECT_EQ(states(Stage::Prep)[1], ShotState::Missing);
}

TEST_F(PictureTest, APlaceNamesOnlyWhatTheCarHas) {
  refused(picture({Stage::Prep, {}, Panel::Roof, {}}), Code::Unknown);
  refused(picture({Stage::Prep, ShotId{}, {}, {}}), Code::Unknown);
  refused(picture(at(Stage::Prep, 0, Panel::Roof)), Code::Unknown);
  entries::PicturePlace of_another_stage = at(Stage::Mask, 0, Panel::Hood);
  of_another_stage.stage = Stage::Prep;
  refused(picture(of_another_stage), Code::Unknown);
  TakePicture without_file = picture({Stage::Prep, {}, {}, {}});
  without_file.facts.file = {};
  refused(without_file, Code::Missing);
}

TEST_F(PictureTest, TheSameFileIsKeptOnceAPlace) {
  const TakePicture one = picture({Stage::Prep, {}, {}, {}});
  did(one);
  refused(one, Code::AlreadyDone);
  TakePicture elsewhere = one;
  elsewhere.place.stage = Stage::Color;
  did(elsewhere);
  EXPECT_EQ(car().pictures.size(), 2U);
}

TEST_F(PictureTest, AMarkBringsItsPanelAndEachKindWantsItsPicture) {
  did(nib(400, 400));
  const MarkId mark = panel(Panel::Hood).marks.front().mark;
  EXPECT_EQ(folds::missing_shots(car(), shop_view, Stage::Inspect), 1);
  entries::PicturePlace place = at(Stage::Inspect, 0);
  place.mark = mark;
  did(picture(place));
  EXPECT_EQ(last().place.panel, Panel::Hood);
  EXPECT_EQ(folds::missing_shots(car(), shop_view, Stage::Inspect), 0);
  place.panel = Panel::FrontBumper;
  refused(picture(place), Code::Unknown);
  did(WithdrawMark{job, mark});
  EXPECT_EQ(car().pictures.size(), 1U) << "the picture outlives its mark";
}

TEST_F(PictureTest, APictureIsFiledElsewhereAndOfTwoPlacesTheLaterIsShown) {
  did(picture({Stage::Prep, {}, {}, {}}));
  const PictureId id = last().picture;
  did(FilePicture{job, id, at(Stage::Prep, 1, Panel::Hood)});
  EXPECT_EQ(states(Stage::Prep)[3], ShotState::Taken);
  refused(FilePicture{job, id, at(Stage::Prep, 1, Panel::Hood)}, Code::AlreadyDone);
  refused(FilePicture{job, PictureId{}, {Stage::Prep, {}, {}, {}}}, Code::Unknown);
}

TEST_F(PictureTest, NotesAreDrawnChangedAndTakenBackAndThePictureStays) {
  did(picture({Stage::Correct, {}, Panel::Hood, {}}));
  const PictureId id = last().picture;
  using Shape = job::PictureNoteShape;
  did(NotePicture{job, id, {Shape::Arrow, 0.2, 0.3, 0.5, 0.6, "ignored"}});
  EXPECT_EQ(last().notes.front().drawn.text, "");
  refused(NotePicture{job, id, {Shape::Circle, 0.2, 1.3, 0.5, 0.6, ""}}, Code::OutOfRange);
  refused(NotePicture{job, id, {Shape::Circle, 0.2, 0.3, 0.2, 0.3, ""}}, Code::Missing);
  refused(NotePicture{job, id, {Shape::Text, 0.2, 0.3, 0.2, 0.3, "  "}}, Code::Missing);
  const PictureNoteId note = last().notes.front().note;
  did(NotePicture{job, id, {Shape::Text, 0.2, 0.3, 0.2, 0.3, "deep one"}, note});
  ASSERT_EQ(last().notes.size(), 1U);
  EXPECT_EQ(last().notes.front().drawn.text, "deep one");
  did(Withdraw{job, last().notes.front().heads.front(), ""});
  ASSERT_EQ(last().notes.size(), 1U) << "the arrow stands again";
  EXPECT_EQ(last().notes.front().drawn.shape, Shape::Arrow);
}

TEST_F(PictureTest, EachFindOnAnEdgePlacesItsMarkOnceOnThePanel) {
  did(GiveVerdict{job, Panel::Hood, Verdict::Clean, false, {}});
  did(picture(at(Stage::EdgesAndJambs, 2, Panel::Hood)));
  const PictureId id = last().picture;
  refused(CheckEdges{job, id, {DefectKind::Nib}}, Code::OutOfRange);
  did(CheckEdges{job, id, {DefectKind::TapeLine}});
  ASSERT_EQ(panel(Panel::Hood).marks.size(), 1U);
  const auto mark = panel(Panel::Hood).marks.front();
  EXPECT_EQ(mark.defect, DefectKind::TapeLine);
  EXPECT_EQ(mark.stage, Stage::EdgesAndJambs);
  EXPECT_EQ(panel(Panel::Hood).verdict, Verdict::ToCorrect);
  EXPECT_EQ(last().place.mark, mark.mark);
  const auto& outline = job::pattern(car().body).find(Panel::Hood)->shape.outline;
  EXPECT_TRUE(trade::contains(outline, {mark.x_mm, mark.y_mm}));
  EXPECT_LT(trade::distance_to_edge_mm({mark.x_mm, mark.y_mm}, outline), 40);
  did(CheckEdges{job, id, {DefectKind::TapeLine, DefectKind::PrimerShowing}});
  EXPECT_EQ(panel(Panel::Hood).marks.size(), 2U);
  refused(CheckEdges{job, id, {DefectKind::PrimerShowing, DefectKind::TapeLine}},
          Code::AlreadyDone);
}

TEST_F(PictureTest, ACleanEdgeIsSaidTooAndAPictureOfNoPanelHasNoEdges) {
  did(picture(at(Stage::EdgesAndJambs, 0, Panel::FrontBumper)));
  EXPECT_FALSE(last().edges);
  did(CheckEdges{job, last().picture, {}});
  ASSERT_TRUE(last().edges);
  EXPECT_TRUE(last().edges->finds.empty());
  EXPECT_EQ(panel(Panel::FrontBumper).verdict, Verdict::NotLookedAt);
  did(picture({Stage::EdgesAndJambs, {}, {}, {}}));
  refused(CheckEdges{job, last().picture, {}}, Code::Missing);
}

// Every panel of every body shape has a place for a find on its edge.
TEST(BesideEdge, LiesOnEveryPanelNearItsEdge) {
  for (std::size_t i = 0; i < enum_words<job::BodyShape>.size(); ++i)
    for (const auto& one : job::pattern(static_cast<job::BodyShape>(i)).panels) {
      const auto at = trade::beside_edge(one.shape);
      EXPECT_TRUE(trade::contains(one.shape.outline, at)) << i << word_of(one.panel);
      EXPECT_LT(trade::distance_to_edge_mm(at, one.shape.outline), 60) << i << word_of(one.panel);
    }
}

TEST_F(PictureTest, AManagerWritesTheShotsOfAStageAndNobodyElse) {
  auto shots = job::usual_shots(Stage::Prep);
  shots.pop_back();
  shots.push_back(
      {{}, " filler before sanding ", job::ShotView::SideLight, job::ShotWanted::EachPanel});
  person = painter;
  refused(SetShotList{Stage::Prep, shots}, Code::NotAllowed);
  person = manager;
  did(SetShotList{Stage::Prep, shots});
  const auto& list = folds::shots_of(shop_view, Stage::Prep);
  ASSERT_EQ(list.size(), 2U);
  EXPECT_EQ(list.back().shot_name, "filler before sanding");
  EXPECT_TRUE(list.back().shot);
  refused(SetShotList{Stage::Prep, list}, Code::AlreadyDone);
  did(SetShotList{Stage::Prep, {}});
  EXPECT_TRUE(states(Stage::Prep).empty());
  did(FinishStage{job, Stage::Prep});
  EXPECT_FALSE(car().stages.front().without_shots);
}

TEST_F(PictureTest, TheGhostIsOfTheSameShotOrOfTheSameViewBefore) {
  const auto& jamb = job::usual_shots(Stage::EdgesAndJambs)[1];
  const auto before = [&] {
    const auto* found =
        folds::picture_before(car(), shop_view, Stage::EdgesAndJambs, jamb, Panel::Hood);
    return found ? std::optional(found->picture) : std::nullopt;
  };
  EXPECT_FALSE(before());
  did(picture(at(Stage::Mask, 1, Panel::Hood)));
  const PictureId masked = last().picture;
  EXPECT_EQ(before(), masked);
  did(picture(at(Stage::Mask, 0, Panel::Hood)));
  EXPECT_EQ(before(), masked) << "an edge run is another view";
  did(picture(at(Stage::EdgesAndJambs, 1, Panel::Hood)));
  EXPECT_EQ(before(), last().picture);
}

}  // namespace
}  // namespace jambline::acts
