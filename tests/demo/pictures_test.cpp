// Pictures in the demo shop: a story of their own that changes nothing of the others.
#include "app/demo/pictures.h"

#include <gtest/gtest.h>
#include <memory>
#include <set>

#include "tests/demo/made_shop.h"

namespace jambline::demo {
namespace {

using job::Stage;

// Says what was wished for, of files that nobody draws.
DemoOptions with_paper_camera(int delivered = 400) {
  DemoOptions options;
  options.delivered = delivered;
  options.camera = [count = std::make_shared<std::uint8_t>()](const PictureWish& wish) {
    job::PictureFacts facts;
    facts.file.bytes[0] = ++*count;
    facts.size_bytes = 1;
    facts.width_px = 1280;
    facts.height_px = 960;
    facts.word = wish.word;
    facts.camera_time = wish.camera_time;
    facts.camera_offset_min = wish.offset_min;
    return Result<job::PictureFacts>(facts);
  };
  return options;
}

const Made& with_camera() {
  static const Made made(with_paper_camera());
  return made;
}

bool is_of_pictures(const entries::Entry& entry) {
  return entry.payload.is<entries::PictureTaken>() || entry.payload.is<entries::PictureFiled>() ||
         entry.payload.is<entries::PictureNoted>() || entry.payload.is<entries::EdgesLookedAt>() ||
         entry.payload.is<entries::ShotListSet>();
}

// What each entry is, when, who, and what randomness made in it (marks, operations, releases).
std::string told(const entries::Entry& entry) {
  std::string out =
      std::to_string(entry.kind) + " " + std::to_string(entry.wall_ms) + " " + entry.person.hex();
  if (const auto* mark = entry.payload.get_if<entries::MarkPlaced>())
    out += " " + mark->mark.hex() + " " + std::to_string(mark->x_mm);
  if (const auto* round = entry.payload.get_if<entries::RoundFinished>())
    out += " " + std::to_string(static_cast<int>(round->round));
  return out;
}

TEST(DemoPictures, ACameraChangesNothingElse) {
  const Made without(DemoOptions{.delivered = 60});
  const Made with(with_paper_camera(60));
  std::set<JobId> with_find;
  for (const auto& car : with.cars)
    for (const auto& picture : car.pictures)
      if (picture.edges && !picture.edges->finds.empty()) with_find.insert(car.job);
  EXPECT_EQ(with_find.size(), 1U);
  const auto story = [&](const Made& made) {
    std::map<JobId, std::vector<std::string>> out;
    for (const auto& entry : made.entries)
      if (!is_of_pictures(entry) && with_find.count(entry.subject) == 0)
        out[entry.subject].push_back(told(entry));
    return out;
  };
  EXPECT_EQ(story(without), story(with));
}

TEST(DemoPictures, ThereAreThirtyToEightyAllSinceTheCameraCame) {
  const DemoOptions options = with_paper_camera();
  const std::int64_t came_ms = camera_comes_ms(options, Calendar(options.now.wall_ms));
  int pictures = 0, poor = 0, cars = 0, in_work = 0, notes = 0, clean = 0;
  for (const auto& car : with_camera().cars) {
    cars += car.pictures.empty() ? 0 : 1;
    in_work += !car.delivered_ms && !car.pictures.empty() ? 1 : 0;
    for (const auto& picture : car.pictures) {
      ++pictures;
      EXPECT_GE(picture.wall_ms, came_ms);
      EXPECT_EQ(picture.kept_though_poor, picture.facts.word != trade::PhotoWord::Good);
      poor += picture.kept_though_poor ? 1 : 0;
      notes += static_cast<int>(picture.notes.size());
      clean += picture.edges && picture.edges->finds.empty() ? 1 : 0;
    }
  }
  EXPECT_GE(pictures, 30);
  EXPECT_LE(pictures, 80);
  EXPECT_GE(poor, 2);
  EXPECT_LE(poor, pictures / 5);
  EXPECT_GE(in_work, 12);
  EXPECT_GT(cars, in_work) << "delivered cars have some too";
  EXPECT_EQ(notes, 2);
  EXPECT_GE(clean, 1);
}

TEST(DemoPictures, EarlierStagesSayThatThereWasNoCameraAndManyLaterOnesAreComplete) {
  const DemoOptions options = with_paper_camera();
  const std::int64_t came_ms = camera_comes_ms(options, Calendar(options.now.wall_ms));
  int without_camera = 0, complete = 0, lacking = 0;
  for (const auto& entry : with_camera().entries) {
    const auto* done = entry.payload.get_if<entries::StageDone>();
    if (!done || !done->done) continue;
    if (entry.wall_ms < came_ms) {
      if (done->without_shots) {
        EXPECT_EQ(done->without_shots, job::WithoutShots::NoCamera);
        ++without_camera;
      }
    } else {
      done->without_shots ? ++lacking : ++complete;
    }
  }
  EXPECT_GT(without_camera, 1000);
  EXPECT_GT(lacking, 2);
  EXPECT_GT(complete, 5 * lacking);
}

TEST(DemoPictures, OneCarHasAPairOfCheckInAndWalkAroundAndOneMarksAFind) {
  const auto corner = [](Stage stage) { return job::usual_shots(stage).front().shot; };
  int pairs = 0, finds = 0;
  for (const auto& car : with_camera().cars) {
    int corners = 0;
    for (const auto& picture : car.pictures) {
      for (const Stage stage : {Stage::CheckIn, Stage::WalkAround})
        corners += picture.place.shot == corner(stage) ? 1 : 0;
      if (picture.edges && !picture.edges->finds.empty()) {
        ++finds;
        EXPECT_TRUE(picture.place.mark);
      }
    }
    pairs += corners == 2 ? 1 : 0;
  }
  EXPECT_GE(pairs, 1);
  EXPECT_EQ(finds, 1);
}

TEST(DemoPictures, HaveNoClockInDoubtAndPassTheWholeAudit) {
  for (const auto& entry : with_camera().entries) EXPECT_EQ(entry.clock_flags, 0);
  EXPECT_FALSE(log::audit(with_camera().folder.path()).first_bad);
}

}  // namespace
}  // namespace jambline::demo
