// A demo shop's pages, worked out again from its export by SQL and plain Python (recompute.py),
// after a bad week of our own: work done again, waits, late cars, spraying without, a car that came
// back.
#include <cstdlib>
#include <gtest/gtest.h>

#include "app/demo/demo_shop.h"
#include "engine/engine.h"
#include "folds/gun_facts.h"
#include "tests/log/log_folder.h"

namespace jambline::demo {
namespace {

class BadWeek {
 public:
  explicit BadWeek(const std::filesystem::path& folder) {
    clock_.moment = {invented_evening_ms + 8 * 3'600'000, 1000, BootId{{7}}, -300};
    engine_ = log::must(engine::Engine::open(
        {folder, clock_, std::make_unique<SeededRandom>(11), "office", {}, {}}));
    for (const auto& person : engine_->snapshot()->shop->people)
      if (!person.left) people_.push_back(person.person);
  }

  void happen() {
    const auto floor = *engine_->snapshot()->floor;
    ASSERT_GE(floor.size(), 6U);
    ASSERT_GE(people_.size(), 3U);
    for (std::size_t i = 0; i < 6; ++i) {
      const JobId job = floor[i].job;
      did(acts::SetPromise{job, clock_.moment.wall_ms - static_cast<std::int64_t>(i) * 3'600'000});
      if (i % 2 == 0) done_again(job, i);
      waits(job, i);
      if (i < 4) sent_back(job);
    }
    for (std::size_t i = 0; i < 5; ++i) deliver(floor[i].job);
    EXPECT_GE(delivered_, 3);
    const auto booth = engine_->snapshot()->shop->booths.front().booth;
    did(acts::ReportSprayedWithout{
        floor[5].job, booth, {job::GunItem::SealOrFlow, job::GunItem::ExhaustFreshAir}});
    passes_over(floor[5].job, booth);
    engine_->want_record();
    engine_->drain();
    for (const auto& row : *engine_->snapshot()->record)
      if (row.delivered_ms) {
        did(acts::SayCameBack{row.job, "=peels, \"here\"", {}, {}});
        break;
      }
  }

 private:
  void did(acts::Command command) {
    clock_.advance_ms(17 * 60'000 + 13'250);
    engine_->post(std::move(command), people_[0], [](const auto& wrote) {
      EXPECT_TRUE(wrote) << code_name(wrote.error().code) << " " << wrote.error().subject;
    });
    engine_->drain();
  }
  // Late; nobody may give away a car whose latch was not looked at.
  void deliver(const JobId& job) {
    did(acts::Sign{job, job::SignedFor::Delivery, "A. Quince", {{{{0, 0}, {1, 1}}}}});
    clock_.advance_ms(61'500);
    engine_->post(acts::Deliver{job}, people_[0],
                  [this](const auto& wrote) { delivered_ += wrote ? 1 : 0; });
    engine_->drain();
  }
  std::shared_ptr<const folds::CarView> watched(const JobId& job) {
    engine_->watch(job);
    engine_->drain();
    return engine_->snapshot()->car;
  }
  void waits(const JobId& job, std::size_t i) {
    did(acts::SayWait{job, job::WaitReason::Part});
    did(acts::SayWait{job, i % 2 ? job::WaitReason::Booth : job::WaitReason::Approval});
    did(acts::SayWait{job, job::WaitReason::Part, false});
  }
  void sent_back(const JobId& job) {
    const auto car = watched(job);
    ASSERT_TRUE(car);
    ASSERT_FALSE(car->panels.empty());
    did(acts::GiveVerdict{job, car->panels.front().plan.panel, job::Verdict::Redo, false, {}});
    did(acts::GiveVerdict{job, car->panels.front().plan.panel, job::Verdict::Clean, false, {}});
  }
  // Whatever the register does not bear out is passed over, for want of its record or by order.
  void passes_over(const JobId& job, const BoothId& booth) {
    (void)watched(job);
    const auto now = engine_->snapshot();
    RespiratorId hood;
    for (const auto& one : now->shop->air.respirators)
      if (one.said.kind == job::RespiratorKind::SuppliedHood) hood = one.respirator;
    acts::StartSpray spray{job, booth, hood, true, {}};
    for (const auto& fact :
         folds::gun_facts({*now->shop, *now->car, booth, people_[0], hood, true, clock_.now()})) {
      const auto reason =
          spray.checks.size() % 2 ? job::GunReason::RecordNotHere : job::GunReason::ManagerDecided;
      if (job::is_of_now(fact.item))
        spray.checks.push_back({fact.item, job::CutAnswer::Yes, {}, {}});
      else if (job::class_of(fact.item) == job::CheckClass::Must && fact.known != true)
        spray.checks.push_back({fact.item, job::CutAnswer::No, reason, {}});
      else if (job::class_of(fact.item) == job::CheckClass::Should)
        spray.checks.push_back({fact.item, job::CutAnswer::No, {}, {}});
    }
    did(spray);
  }
  // By two people; only the first of it is ended.
  void done_again(const JobId& job, std::size_t i) {
    acts::PlanOperation plan{job, {job::Stage::Spray, "", 45}};
    plan.operation.work = job::WorkKind::Redo;
    plan.operation.why = i == 0 ? "color off" : "+run on the edge";
    did(plan);
    OperationId redo;
    const auto car = watched(job);
    for (const auto& one : car->operations)
      if (one.work == job::WorkKind::Redo) redo = one.operation;
    for (std::size_t who = 1; who < 3; ++who) {
      did(acts::StartClock{people_[who], job, redo});
      did(acts::StopClock{people_[who]});
    }
    if (i == 0) did(acts::FinishOperation{job, redo});
  }

  int delivered_ = 0;
  FakeClock clock_;
  std::unique_ptr<engine::Engine> engine_;
  std::vector<PersonId> people_;
};

TEST(Recompute, ThePagesSayWhatTheExportSays) {
  const log::TempFolder folder;
  DemoOptions options;
  options.delivered = 300;
  log::must(make_shop(folder.path(), options));
  BadWeek(folder.path()).happen();
  const std::string command =
      std::string(JAMBLINE_PYTHON " -B " JAMBLINE_SOURCE_DIR
                                  "/tests/outside/recompute.py " JAMBLINE_RECORD " ") +
      folder.path().string();
  EXPECT_EQ(std::system(command.c_str()), 0);
}

}  // namespace
}  // namespace jambline::demo
