// folds/rights_fold.h: which entries are obeyed: who of the shop may say what, by the shop's own
// stream and by what is known of its devices.
//
// Rule:    a person has every right of every role that he was ever given by an entry of a manager's
//          device; that a role was taken away again is for acts/decide.h and never changes what was
//          said before. Nobody (no person) may found things on a manager's device. After its cut a
//          device says nothing. To take an entry back needs what it needed itself.
// Promise: a function of the sets of entries and devices: neither order of arrival nor clocks
// matter. Threads: plain values.
#pragma once

#include <map>
#include <optional>
#include <set>
#include <tuple>

#include "entries/entry.h"
#include "entries/rights.h"

namespace jambline::folds {

struct DeviceStanding {
  bool manager = false;
  std::optional<std::uint64_t> cut_seq;  // set: what it wrote after it is not obeyed
  friend bool operator==(const DeviceStanding&, const DeviceStanding&) = default;
};
using DeviceStandings = std::map<DeviceId, DeviceStanding>;  // of those that belong to the shop

class RightsFold {
 public:
  void set_devices(DeviceStandings devices) { devices_ = std::move(devices); }
  const DeviceStandings& devices() const { return devices_; }
  // Of the shop's own stream; entries that give no role change nothing.
  void apply(const entries::Entry& entry);

  // The most that each person may, without those who may no more than everybody.
  std::map<PersonId, entries::Right> rights_of_people() const;
  bool may(const PersonId& person, const DeviceId& device, entries::Right right) const;
  // Of an entry that needs `right`; what the entry itself says about being refused is not looked
  // at.
  entries::Refused judge(const entries::Entry& entry, entries::Right right) const;

 private:
  struct Given {
    DeviceId device;
    std::uint64_t seq{};
    job::Role role{};
    friend auto operator<=>(const Given&, const Given&) = default;
  };
  bool obeyed(const DeviceId& device, std::uint64_t seq) const;

  DeviceStandings devices_;
  std::map<PersonId, std::set<Given>> given_;
};

// What entries of one stream need, and the withdrawals among them.
class StreamRights {
 public:
  // Takes the entry in and marks it. Answers whether a withdrawal came before what it takes back,
  // and has to be judged again now.
  bool judge(const RightsFold& rights, entries::Entry& entry);
  // What it needs to take this entry back.
  entries::Right needed(const Hash& entry) const;

 private:
  std::map<Hash, entries::Right> needs_;  // without those that need none
  std::map<Hash, Hash> targets_;          // of withdrawals
  std::set<Hash> withdrawn_;
};

// All entries of one stream, in any order.
template <class Entries>
StreamRights judge_all(const RightsFold& rights, Entries& stream) {
  StreamRights out;
  bool again = false;
  for (auto& entry : stream) again = out.judge(rights, entry) || again;
  if (again)
    for (auto& entry : stream) (void)out.judge(rights, entry);
  return out;
}

}  // namespace jambline::folds
