// The main job from a new folder to a read-back, through the one door.
#include <filesystem>
#include <gtest/gtest.h>

#include "base/json.h"
#include "engine/engine.h"
#include "engine/restore.h"
#include "job/body_shape.h"

namespace jambline::engine {
namespace {

namespace fs = std::filesystem;

class MainJob : public testing::Test {
 protected:
  void SetUp() override {
    std::string pattern = (fs::temp_directory_path() / "jambline-engine-XXXXXX").string();
    folder_ = mkdtemp(pattern.data());
    clock_.moment = {1'790'000'000'000, 1000, BootId{{1}}, -240};
    open();
  }
  void TearDown() override {
    engine_.reset();
    fs::remove_all(folder_);
  }

  void open() {
    engine_.reset();
    Engine::Parts parts{folder_, clock_, std::make_unique<SeededRandom>(++seed_), "cart 1", {}};
    auto opened = Engine::open(std::move(parts));
    ASSERT_TRUE(opened) << code_name(opened.error().code) << " " << opened.error().subject;
    engine_ = std::move(*opened);
  }

  Result<Wrote> act(acts::Command command, PersonId person = {}) {
    Result<Wrote> out = fail(Code::Missing, "", "");
    engine_->post(std::move(command), person, [&](Result<Wrote> wrote) { out = std::move(wrote); });
    engine_->drain();
    return out;
  }

  PersonId add(const char* name, job::Role role) {
    EXPECT_TRUE(act(acts::AddPerson{name, role}));
    return engine_->snapshot()->shop->people.back().person;
  }

  JobId open_car() {
    acts::OpenCar open;
    open.plate = "K 41-206";
    open.color = {"G7", "deep green", "#1F4D3A"};
    open.body = job::BodyShape::FourDoorSedan;
    open.panels = {
        {job::Panel::Hood, true}, {job::Panel::LeftFender, true}, {job::Panel::FrontBumper, false}};
    open.operations = {{job::Stage::Inspect, "", 60}, {job::Stage::Correct, "", 90}};
    auto wrote = act(open);
    EXPECT_TRUE(wrote);
    engine_->watch(wrote->job);
    engine_->drain();
    return wrote->job;
  }

  trade::Point_mm middle(job::Panel panel) {
    const auto& outline = job::pattern(job::BodyShape::FourDoorSedan).find(panel)->shape.outline;
    const auto box = trade::bounds(outline.corners);
    return {box.width_mm() / 2, box.height_mm() / 2};
  }

  std::string folder_;
  FakeClock clock_;
  std::uint64_t seed_ = 0;
  std::unique_ptr<Engine> engine_;
};

TEST_F(MainJob, ACarIsOpenedLookedOverClockedAndHandedOnAndComesBackAfterARestart) {
  const PersonId ivo = add("Ivo", job::Role::Painter);
  ASSERT_TRUE(act(acts::AddRack{"rack 2"}));
  const RackId rack = engine_->snapshot()->shop->racks.front().rack;
  const JobId job = open_car();
  const auto car = [&] { return engine_->snapshot()->car; };

  ASSERT_TRUE(act(acts::StartClock{ivo, job, car()->operations.front().operation}, ivo));
  clock_.advance_ms(6 * 60'000);
  const auto at = middle(job::Panel::Hood);
  ASSERT_TRUE(act(acts::PlaceMark{job, job::Panel::Hood, at.x_mm, at.y_mm}, ivo));
  EXPECT_EQ(car()->find(job::Panel::Hood)->verdict, job::Verdict::ToCorrect);
  ASSERT_TRUE(act(acts::GiveVerdict{job, job::Panel::LeftFender, job::Verdict::Clean}, ivo));
  ASSERT_TRUE(
      act(acts::GiveVerdict{job, job::Panel::FrontBumper, job::Verdict::Clean, true, rack}, ivo));
  ASSERT_TRUE(act(acts::StopClock{ivo}, ivo));

  const auto before = *car();
  EXPECT_EQ(before.operations.front().clocked_ms, 6 * 60'000);
  EXPECT_EQ(before.find(job::Panel::FrontBumper)->release.state, folds::ReleaseState::Offered);
  const std::string floor_before = to_json(*engine_->snapshot()->floor);

  open();
  engine_->watch(job);
  engine_->drain();
  EXPECT_EQ(*car(), before);
  EXPECT_EQ(to_json(*engine_->snapshot()->floor), floor_before);

  engine_.reset();
  fs::remove(fs::path(folder_) / "shelf.db");
  fs::remove(fs::path(folder_) / "shelf.db-wal");
  open();
  EXPECT_EQ(to_json(*engine_->snapshot()->floor), floor_before);
}

TEST_F(MainJob, UndoTakesTheLastActBackAndUndoOfUndoBringsItAgain) {
  const PersonId ivo = add("Ivo", job::Role::Painter);
  const JobId job = open_car();
  const auto at = middle(job::Panel::Hood);
  ASSERT_TRUE(act(acts::PlaceMark{job, job::Panel::Hood, at.x_mm, at.y_mm}, ivo));
  const auto with_mark = engine_->snapshot()->car;
  ASSERT_TRUE(act(acts::UndoAction{engine_->snapshot()->last_act->entries}, ivo));
  EXPECT_TRUE(engine_->snapshot()->car->find(job::Panel::Hood)->marks.empty());
  EXPECT_EQ(engine_->snapshot()->car->find(job::Panel::Hood)->verdict, job::Verdict::NotLookedAt);
  ASSERT_TRUE(act(acts::UndoAction{engine_->snapshot()->last_act->entries}, ivo));
  EXPECT_EQ(engine_->snapshot()->car->find(job::Panel::Hood)->marks,
            with_mark->find(job::Panel::Hood)->marks);
}

TEST_F(MainJob, ARefusedActWritesNothing) {
  const PersonId ivo = add("Ivo", job::Role::Painter);
  const JobId job = open_car();
  const auto before = engine_->snapshot();
  EXPECT_EQ(act(acts::StopClock{ivo}, ivo).error().code, Code::NotRunning);
  EXPECT_EQ(act(acts::PlaceMark{job, job::Panel::Hood, -5, -5}, ivo).error().code,
            Code::OutsidePanel);
  EXPECT_EQ(engine_->snapshot()->own_entries, before->own_entries);
}

TEST_F(MainJob, StartingOnAnotherCarEndsTheFirstClockInTheSameAction) {
  const PersonId ivo = add("Ivo", job::Role::Painter);
  const JobId first = open_car();
  ASSERT_TRUE(
      act(acts::StartClock{ivo, first, engine_->snapshot()->car->operations[0].operation}, ivo));
  clock_.advance_ms(60'000);
  const JobId second = open_car();
  auto wrote =
      act(acts::StartClock{ivo, second, engine_->snapshot()->car->operations[0].operation}, ivo);
  ASSERT_TRUE(wrote);
  ASSERT_EQ(wrote->entries.size(), 2U);
  EXPECT_EQ(wrote->entries[0].action, wrote->entries[1].action);
  engine_->watch(first);
  engine_->drain();
  EXPECT_TRUE(engine_->snapshot()->car->running.empty());
  EXPECT_EQ(engine_->snapshot()->car->operations[0].clocked_ms, 60'000);
}

TEST_F(MainJob, HalfTypedFormsComeBack) {
  engine_->keep_draft("open car", R"({"plate":"K 4"})");
  engine_->drain();
  open();
  EXPECT_EQ(engine_->draft("open car"), R"({"plate":"K 4"})");
  engine_->keep_draft("open car", "");
  engine_->drain();
  open();
  EXPECT_EQ(engine_->draft("open car"), "");
}

TEST_F(MainJob, AShopGoesOutAsAFolderAndComesBackWhole) {
  add("Ivo", job::Role::Painter);
  open_car();
  const auto floor = *engine_->snapshot()->floor;
  const fs::path out = fs::path(folder_) / "export";
  std::optional<Result<log::Exported>> exported;
  engine_->export_shop(out, {}, {},
                       [&](Result<log::Exported> done) { exported = std::move(done); });
  engine_->drain();
  ASSERT_TRUE(exported && *exported);
  EXPECT_GT((**exported).entries, 5U);

  const fs::path back = fs::path(folder_) / "restored";
  fs::create_directory(back);
  const auto restored = restore_shop(out, back);
  ASSERT_TRUE(restored) << code_name(restored.error().code);
  EXPECT_EQ(restored->entries, (**exported).entries);
  EXPECT_EQ(restore_shop(out, back).error().code, Code::AlreadyDone);
  engine_.reset();
  fs::copy_file(fs::path(folder_) / "device.key", back / "device.key");
  folder_ = back.string();
  open();
  EXPECT_FALSE(engine_->snapshot()->read_only);
  EXPECT_EQ(*engine_->snapshot()->floor, floor);
  add("Mara", job::Role::Manager);
}

}  // namespace
}  // namespace jambline::engine
