#include "folds/rights_fold.h"

#include <algorithm>

namespace jambline::folds {

using entries::Refused;
using entries::Right;

void RightsFold::apply(const entries::Entry& entry) {
  const auto* said = entry.payload.get_if<entries::PersonAdded>();
  if (said && said->person)
    given_[said->person].insert({entry.order.device, entry.order.seq, said->role});
}

bool RightsFold::obeyed(const DeviceId& device, std::uint64_t seq) const {
  const auto found = devices_.find(device);
  return found != devices_.end() && (!found->second.cut_seq || seq <= *found->second.cut_seq);
}

bool RightsFold::may(const PersonId& person, const DeviceId& device, Right right) const {
  if (right == Right::Technician) return true;
  const auto manages = [&](const DeviceId& one) {
    const auto found = devices_.find(one);
    return found != devices_.end() && found->second.manager;
  };
  if (right == Right::ManagerDevice || !person) return manages(device);
  const auto given = given_.find(person);
  return given != given_.end() &&
         std::any_of(given->second.begin(), given->second.end(), [&](const Given& one) {
           return manages(one.device) && obeyed(one.device, one.seq) &&
                  entries::has_right(one.role, right);
         });
}

std::map<PersonId, Right> RightsFold::rights_of_people() const {
  std::map<PersonId, Right> out;
  for (const auto& [person, given] : given_)
    for (const Right right : {Right::Painter, Right::Manager})
      if (may(person, {}, right)) out[person] = right;
  return out;
}

Refused RightsFold::judge(const entries::Entry& entry, Right right) const {
  if (!obeyed(entry.order.device, entry.order.seq)) return Refused::AfterCut;
  return may(entry.person, entry.order.device, right) ? Refused::No : Refused::NoRight;
}

bool StreamRights::judge(const RightsFold& rights, entries::Entry& entry) {
  bool again = false;
  if (const auto* said = entry.payload.get_if<entries::Withdrawn>()) {
    targets_[entry.hash] = said->target;
    withdrawn_.insert(said->target);
    again = needed(entry.hash) != Right::Technician && withdrawn_.count(entry.hash) != 0;
  } else if (const Right right = entries::right_of(entry.payload); right != Right::Technician) {
    needs_[entry.hash] = right;
    again = withdrawn_.count(entry.hash) != 0;
  }
  entry.refused = rights.judge(entry, needed(entry.hash));
  return again;
}

// A hash can only name an earlier one: the way ends.
Right StreamRights::needed(const Hash& entry) const {
  Hash at = entry;
  for (auto target = targets_.find(at); target != targets_.end(); target = targets_.find(at))
    at = target->second;
  const auto found = needs_.find(at);
  return found == needs_.end() ? Right::Technician : found->second;
}

}  // namespace jambline::folds
