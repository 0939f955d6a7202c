// What somebody may not say is kept, shown with the reason and obeyed by nothing; it is obeyed as
// soon as the right is there. What a device wrote after its cut is not. Our own design:
// DEVELOPERS.md, the decision on rights.
#include "base/json.h"
#include "tests/engine/two_devices.h"

namespace jambline::engine {
namespace {

using entries::Refused;

job::Product a_sheet(const char* name) {
  job::Product out;
  out.product_name = name;
  return out;
}

class Rights : public TwoTablets {
 protected:
  // A technician's answer to a supplement, and a sheet of his.
  void say_what_a_manager_says() {
    const auto asked = log::must(booth.act(
        acts::PlanOperation{car,
                            {job::Stage::Correct, "sand again", 30, job::WorkKind::Supplement,
                             "found", std::nullopt, job::Approval::Asked}},
        tom));
    auto given = asked.entries.front().payload.get<entries::OperationPlanned>();
    given.approval = job::Approval::Given;
    given.replaces = {asked.entries.front().hash};
    booth.say_all_the_same(
        {{car, given}, {{}, entries::ProductSet{ProductId{{5}}, a_sheet("clear of Tom"), {}}}},
        tom);
    for (const auto& entry : booth.entries())
      if (entry.header.kind == entries::OperationPlanned::kind) answer = entry.hash;
  }
  job::Approval approval(const ShopTablet& tablet) {
    for (const auto& one : tablet.car().operations)
      if (one.title == "sand again") return one.approval;
    return job::Approval::NotNeeded;
  }
  Hash answer;
};

TEST_F(Rights, WhatSomebodyMayNotSayIsKeptAndNotObeyedUntilTheRoleArrives) {
  say_what_a_manager_says();
  office.take_from(booth);
  for (const ShopTablet* tablet : {&office, &booth}) {
    EXPECT_EQ(approval(*tablet), job::Approval::Asked);
    EXPECT_EQ(tablet->refused(answer), Refused::NoRight);
    EXPECT_EQ(tablet->car().refused_entries, 1);
    EXPECT_TRUE(tablet->shop().air.products.empty());
    EXPECT_EQ(tablet->shop().refused_entries, 1);
  }
  // The role comes.
  log::must(office.act(acts::ChangeRole{tom, job::Role::Manager}, rosa));
  office.engine->drain();
  booth.take_from(office);
  for (const ShopTablet* tablet : {&office, &booth}) {
    EXPECT_EQ(approval(*tablet), job::Approval::Given);
    EXPECT_EQ(tablet->refused(answer), Refused::No);
    EXPECT_EQ(tablet->car().refused_entries, 0);
    ASSERT_EQ(tablet->shop().air.products.size(), 1U);
    EXPECT_EQ(tablet->shop().refused_entries, 0);
  }
  // It goes again: what was said stays said, and nothing more of the kind is taken.
  log::must(office.act(acts::ChangeRole{tom, job::Role::BodyTechnician}, rosa));
  booth.take_from(office);
  EXPECT_EQ(approval(booth), job::Approval::Given);
  const auto no_more = booth.act(acts::SetProduct{{}, a_sheet("clear B")}, tom);
  ASSERT_FALSE(no_more);
  EXPECT_EQ(no_more.error().code, Code::NotAllowed);
}

TEST_F(Rights, ARestartShowsTheSameWithAndWithoutAShelf) {
  say_what_a_manager_says();
  office.take_from(booth);
  const std::string before = office.shown();
  office.open();
  EXPECT_EQ(office.shown(), before);
  office.engine.reset();
  std::filesystem::remove(office.folder.path() / "shelf.db");
  office.open();
  EXPECT_EQ(office.shown(), before);
}

TEST_F(Rights, NobodyOnATechniciansDeviceGivesRoles) {
  booth.say_all_the_same({{{}, entries::PersonAdded{tom, job::Role::Manager, {}}},
                          {{}, entries::PersonAdded{PersonId{{9}}, job::Role::Manager, {}}},
                          {{}, entries::ProductSet{ProductId{{5}}, a_sheet("clear of Tom"), {}}}},
                         tom);
  office.take_from(booth);
  EXPECT_EQ(office.shop().people.size(), 2U);
  EXPECT_EQ(office.shop().find(tom)->role, job::Role::BodyTechnician);
  EXPECT_TRUE(office.shop().air.products.empty());
  EXPECT_EQ(office.shop().refused_entries, 3);
  // The acts say so before anything is written, also to a manager.
  for (const acts::Command& command : {acts::Command(acts::AddPerson{"Kim", job::Role::Helper}),
                                       acts::Command(acts::ChangeRole{tom, job::Role::Manager})}) {
    const auto refused = booth.act(command, rosa);
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().code, Code::NotAllowed);
    EXPECT_FALSE(refused.error().arg("device").empty());
  }
}

TEST_F(Rights, WhatAManagerSaidIsNotTakenBackByATechnician) {
  const auto said = log::must(office.act(acts::SetProduct{{}, a_sheet("clear A")}, rosa));
  booth.take_from(office);
  const Hash sheet = said.entries.front().hash;
  const auto refused = booth.act(acts::Withdraw{{}, sheet, ""}, tom);
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().code, Code::NotAllowed);
  booth.say_all_the_same({{{}, entries::Withdrawn{sheet, ""}}}, tom);
  office.take_from(booth);
  EXPECT_EQ(office.shop().air.products.size(), 1U);
  EXPECT_EQ(booth.shop().air.products.size(), 1U);
  EXPECT_TRUE(booth.act(acts::Withdraw{{}, sheet, ""}, rosa));
  EXPECT_TRUE(booth.shop().air.products.empty());
}

// A second manager's device knew less of the lost one than the office.
class Cut : public Rights {
 protected:
  void SetUp() override {
    TwoTablets::SetUp();
    log::must(office.admit(desk.admission(true), rosa));
    log::must(booth.act(mark(300), tom));
    desk.take_from(office);
    desk.take_from(booth);
    late = log::must(booth.act(mark(500), tom)).entries.front().hash;
    log::must(booth.act(acts::SetPlate{car, "K 99-999"}, tom));
    office.take_from(booth);
    ASSERT_EQ(office.car().find(job::Panel::Hood)->marks.size(), 2U);
    ASSERT_EQ(office.engine->snapshot()->floor->front().plate, "K 99-999");
    log::must(desk.revoke(booth.key().device(), rosa));
  }
  ShopTablet desk{"desk", true};
  Hash late;
};

TEST_F(Cut, WhatCameFromTheLostDeviceAfterItIsShownAndNotObeyed) {
  office.take_from(desk);
  EXPECT_EQ(office.car().find(job::Panel::Hood)->marks.size(), 1U);
  EXPECT_EQ(office.car().plate, "K 41-206");
  EXPECT_EQ(office.refused(late), Refused::AfterCut);
  EXPECT_EQ(office.car().refused_entries, 2);
  EXPECT_EQ(office.engine->snapshot()->floor->front().plate, "K 41-206");
  const std::string before = office.shown();
  office.open();
  EXPECT_EQ(office.shown(), before);
  // The desk never took them.
  desk.watch(car);
  EXPECT_EQ(desk.car().find(job::Panel::Hood)->marks, office.car().find(job::Panel::Hood)->marks);
}

// As after a kill between the revocation and the folding anew: the shelf is of the time before.
TEST_F(Cut, AShelfFoldedByOtherRightsIsFoldedAnew) {
  office.engine.reset();
  const auto shelf = office.folder.path() / "shelf.db";
  const log::TempFolder aside;
  for (const char* ending : {"", "-wal", "-shm"})
    if (std::filesystem::exists(shelf.string() + ending))
      std::filesystem::copy(shelf.string() + ending,
                            aside.path() / ("shelf.db" + std::string(ending)));
  office.open();
  office.take_from(desk);
  office.engine.reset();
  for (const char* ending : {"", "-wal", "-shm"}) {
    std::filesystem::remove(shelf.string() + ending);
    const auto old = aside.path() / ("shelf.db" + std::string(ending));
    if (std::filesystem::exists(old)) std::filesystem::copy(old, shelf.string() + ending);
  }
  office.open();
  EXPECT_EQ(office.engine->snapshot()->floor->front().plate, "K 41-206");
}

}  // namespace
}  // namespace jambline::engine
