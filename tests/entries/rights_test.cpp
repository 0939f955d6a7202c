// Which role may say what. Our own choice, told again here by hand: whoever changes the table has
// to change it here too.
#include "entries/rights.h"

#include <gtest/gtest.h>
#include <set>

namespace jambline::entries {
namespace {

std::vector<std::uint16_t> every_kind() {
  std::vector<std::uint16_t> out;
  PayloadKinds::each([&]<class T>() {
    if constexpr (requires { T::kind; }) out.push_back(T::kind);
  });
  return out;
}

TEST(RightsTable, OnlyWhatOthersGoByNeedsARight) {
  const std::set<std::string> of_a_manager{
      "PersonLeft", "DeviceNamed", "ShotListSet", "RespiratorSet", "FitTestDone", "DueSet",
      "LimitSet",   "ProductSet",  "CalendarSet", "RuleSet",       "RetentionSet"};
  int seen = 0;
  for (const auto kind : every_kind()) {
    const std::string name = kind_name(kind);
    const Right right = right_of(kind);
    if (of_a_manager.count(name) != 0)
      EXPECT_EQ(right, Right::Manager) << name;
    else if (name == "BoothFactsSet")
      EXPECT_EQ(right, Right::Painter);
    else if (name == "PersonAdded")
      EXPECT_EQ(right, Right::ManagerDevice);
    else
      EXPECT_EQ(right, Right::Technician) << name;
    ++seen;
  }
  EXPECT_GT(seen, 60);
  EXPECT_EQ(right_of(std::uint16_t{60'000}), Right::Technician);  // of a newer version
}

TEST(RightsTable, LettingSomebodySprayAgainIsAManagersAndStoppingIsAnybodys) {
  EXPECT_EQ(right_of(Payload(DoNotSpraySaid{PersonId{{1}}, true, {}})), Right::Technician);
  EXPECT_EQ(right_of(Payload(DoNotSpraySaid{PersonId{{1}}, false, {}})), Right::Manager);
}

TEST(RightsTable, ASupplementIsAskedForByAnybodyAndAnsweredByAManager) {
  OperationPlanned planned;
  EXPECT_EQ(right_of(Payload(planned)), Right::Technician);
  for (const auto& [approval, right] : {std::pair{job::Approval::NotNeeded, Right::Technician},
                                        {job::Approval::Asked, Right::Technician},
                                        {job::Approval::Given, Right::Manager},
                                        {job::Approval::Refused, Right::Manager}}) {
    planned.approval = approval;
    EXPECT_EQ(right_of(Payload(planned)), right);
  }
}

TEST(RightsTable, ARoleHasItsRightsAndThoseBelow) {
  for (std::size_t i = 0; i < enum_words<job::Role>.size(); ++i) {
    const auto role = static_cast<job::Role>(i);
    EXPECT_TRUE(has_right(role, Right::Technician));
    EXPECT_EQ(has_right(role, Right::Painter),
              role == job::Role::Painter || role == job::Role::Manager);
    EXPECT_EQ(has_right(role, Right::Manager), role == job::Role::Manager);
    EXPECT_FALSE(has_right(role, Right::ManagerDevice));
  }
}

}  // namespace
}  // namespace jambline::entries
