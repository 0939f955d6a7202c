#include "entries/rights.h"

#include <algorithm>

namespace jambline::entries {

namespace {

struct RightOfKind {
  std::uint16_t kind;
  Right right;
};

// Every kind that is not named here needs none.
constexpr RightOfKind rights_of_kinds[] = {
    {PersonAdded::kind, Right::ManagerDevice},
    {PersonLeft::kind, Right::Manager},
    {DeviceNamed::kind, Right::Manager},
    {BoothFactsSet::kind, Right::Painter},  // what a clearance is counted from
    {ShotListSet::kind, Right::Manager},
    {RespiratorSet::kind, Right::Manager},
    {FitTestDone::kind, Right::Manager},
    {DueSet::kind, Right::Manager},
    {LimitSet::kind, Right::Manager},
    {ProductSet::kind, Right::Manager},
    {CalendarSet::kind, Right::Manager},
    {RuleSet::kind, Right::Manager},
    {RetentionSet::kind, Right::Manager},
};

}  // namespace

Right right_of(std::uint16_t kind) {
  const auto* found = std::find_if(std::begin(rights_of_kinds), std::end(rights_of_kinds),
                                   [&](const RightOfKind& one) { return one.kind == kind; });
  return found == std::end(rights_of_kinds) ? Right::Technician : found->right;
}

Right right_of(const Payload& payload) {
  return payload.visit([](const auto& said) {
    using T = std::decay_t<decltype(said)>;
    if constexpr (std::is_same_v<T, OperationPlanned>)
      return said.approval == job::Approval::Given || said.approval == job::Approval::Refused
                 ? Right::Manager
                 : Right::Technician;
    else if constexpr (std::is_same_v<T, DoNotSpraySaid>)
      return said.do_not_spray ? Right::Technician : Right::Manager;
    else if constexpr (requires { T::kind; })
      return right_of(T::kind);
    else
      return Right::Technician;
  });
}

bool has_right(job::Role role, Right right) {
  switch (right) {
    case Right::Technician:
      return true;
    case Right::Painter:
      return role == job::Role::Painter || role == job::Role::Manager;
    case Right::Manager:
      return role == job::Role::Manager;
    case Right::ManagerDevice:
      return false;
  }
  return false;
}

}  // namespace jambline::entries
