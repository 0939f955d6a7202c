// entries/rights.h: what each role may say: one table, read by who decides an act and by who folds.
//
// Shape:   a kind of entry needs a right; a role has it or not. What happened (a mark, a picture, a
//          clock, a spray, a reading, "do not spray") needs none but to be of the shop: it is true
//          whoever saw it. Rights are for what others then go by: sheets, limits, rules, people,
//          devices, approvals, and who may spray again.
// Source:  our own choice; common practice, no source.
#pragma once

#include <cstdint>
#include <string_view>
#include <vector>

#include "entries/entry.h"
#include "job/person.h"

namespace jambline::entries {

enum class Right : std::uint8_t {
  Technician,     // everybody of the shop
  Painter,        // painters and managers
  Manager,        // managers
  ManagerDevice,  // anybody, on a device that is a manager's (seal/membership.h)
};

// The least that an entry of this kind needs, whatever stands in it.
Right right_of(std::uint16_t kind);
// What this one needs: an answer to a supplement and leave to spray again are a manager's.
Right right_of(const Payload& payload);
// Never true for ManagerDevice: that is no question of a role.
bool has_right(job::Role role, Right right);

}  // namespace jambline::entries
