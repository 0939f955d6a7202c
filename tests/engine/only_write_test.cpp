// The log is the only write: when it refuses, every act fails with its reason and nothing changes.
#include <filesystem>
#include <gtest/gtest.h>

#include "base/json.h"
#include "engine/engine.h"
#include "job/body_shape.h"
#include "tests/log/refusing_log.h"

namespace jambline::engine {
namespace {

namespace fs = std::filesystem;

std::string all_of(const Snapshot& snapshot) {
  std::string out = to_json(*snapshot.shop) + to_json(*snapshot.floor);
  if (snapshot.car) out += to_json(*snapshot.car);
  return out + std::to_string(snapshot.own_entries);
}

TEST(OnlyWrite, WithAppendRefusingEveryActFailsAndAllFoldsStayEqual) {
  std::string folder = (fs::temp_directory_path() / "jambline-refuse-XXXXXX").string();
  ASSERT_NE(mkdtemp(folder.data()), nullptr);
  FakeClock clock;
  clock.moment = {1'790'000'000'000, 1000, BootId{{1}}, 0};
  auto real = log::EntryLog::open(folder, log::OpenMode::Write);
  ASSERT_TRUE(real);
  auto refusing = std::make_unique<log::RefusingLog>(std::move(*real));
  log::RefusingLog& log = *refusing;
  Engine::Parts parts{folder, clock, std::make_unique<SeededRandom>(7), "cart", {}, {}};
  parts.log = std::move(refusing);
  auto opened = Engine::open(std::move(parts));
  ASSERT_TRUE(opened);
  Engine& engine = **opened;
  const auto act = [&](acts::Command command, PersonId person) {
    std::optional<Result<Wrote>> out;
    engine.post(std::move(command), person, [&](Result<Wrote> wrote) { out = std::move(wrote); });
    engine.drain();
    return std::move(*out);
  };

  ASSERT_TRUE(act(acts::AddPerson{"Ivo", job::Role::Manager}, {}));
  const PersonId ivo = engine.snapshot()->shop->people.front().person;
  ASSERT_TRUE(act(acts::AddRack{"rack 1"}, ivo));
  const RackId rack = engine.snapshot()->shop->racks.front().rack;
  acts::OpenCar open;
  open.plate = "K 41-206";
  open.body = job::BodyShape::FourDoorSedan;
  open.panels = {{job::Panel::Hood, true}, {job::Panel::FrontBumper, false}};
  open.operations = {{job::Stage::Inspect, "", 60}, {job::Stage::Correct, "", 30}};
  const auto car_opened = act(open, ivo);
  ASSERT_TRUE(car_opened);
  const JobId job = car_opened->job;
  engine.watch(job);
  engine.drain();
  const auto box =
      trade::bounds(job::pattern(open.body).find(job::Panel::Hood)->shape.outline.corners);
  const double x_mm = box.width_mm() / 2;
  const double y_mm = box.height_mm() / 2;
  ASSERT_TRUE(act(acts::PlaceMark{job, job::Panel::Hood, x_mm, y_mm}, ivo));
  ASSERT_TRUE(
      act(acts::GiveVerdict{job, job::Panel::FrontBumper, job::Verdict::Clean, true, rack}, ivo));
  const auto car = engine.snapshot()->car;
  const OperationId inspect = car->operations[0].operation;
  const OperationId correct = car->operations[1].operation;
  ASSERT_TRUE(act(acts::StartClock{ivo, job, inspect}, ivo));
  const auto& hood = *engine.snapshot()->car->find(job::Panel::Hood);
  const MarkId mark = hood.marks.front().mark;
  const ReleaseId release = engine.snapshot()->car->find(job::Panel::FrontBumper)->release.release;

  const std::vector<acts::Command> commands{
      acts::NameShop{"Shop", "America/New_York"},
      acts::AddPerson{"Mara", job::Role::GlassTech},
      acts::RenamePerson{ivo, "Ivan"},
      acts::ChangeRole{ivo, job::Role::Painter},
      acts::LetPersonGo{ivo},
      acts::AddRack{"rack 9"},
      open,
      acts::SetPlate{job, "K 1"},
      acts::SetVin{job, "11111111111111111"},
      acts::SetColor{job, {"R1", "red", ""}},
      acts::SetPromise{job, 5},
      acts::PlanPanel{job, {job::Panel::Roof}},
      acts::PlanOperation{job, {job::Stage::Wash, "", 10}},
      acts::ChangeEstimate{job, inspect, 5},
      acts::FinishStage{job, job::Stage::Inspect},
      acts::WriteNote{job, "door open"},
      acts::Deliver{job},
      acts::PlaceMark{job, job::Panel::Hood, x_mm, y_mm + 10},
      acts::MoveMark{job, mark, x_mm, y_mm + 5},
      acts::DescribeMark{job, mark, job::DefectKind::Crater, 2},
      acts::WithdrawMark{job, mark},
      acts::SayDirtAllOver{job, job::Panel::Hood, job::DirtClass::Over50},
      acts::GiveVerdict{job, job::Panel::Hood, job::Verdict::Redo},
      acts::StartClock{ivo, job, correct},
      acts::PauseClock{ivo},
      acts::StopClock{ivo},
      acts::OfferRelease{job, job::Panel::FrontBumper, job::Role::GlassTech},
      acts::TakeRelease{job, release},
      acts::ReturnRelease{job, release, "scratch"},
      acts::Withdraw{job, hood.marks.front().placed, "wrong panel"},
      acts::UndoAction{engine.snapshot()->last_act->entries}};
  ASSERT_EQ(commands.size(), std::variant_size_v<acts::Command>);  // every act there is

  const std::string before = all_of(*engine.snapshot());
  log.refuse = Code::DiskFull;
  for (const auto& command : commands) {
    const auto refused = act(command, ivo);
    ASSERT_FALSE(refused) << command.index();
    EXPECT_EQ(refused.error().code, Code::DiskFull) << command.index();
    EXPECT_EQ(all_of(*engine.snapshot()), before) << command.index();
    EXPECT_TRUE(engine.snapshot()->trouble) << command.index();
  }
  log.refuse.reset();
  EXPECT_TRUE(act(commands[0], ivo));
  EXPECT_FALSE(engine.snapshot()->trouble);
  opened->reset();
  fs::remove_all(folder);
}

}  // namespace
}  // namespace jambline::engine
