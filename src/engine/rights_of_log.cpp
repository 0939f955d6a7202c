#include "engine/rights_of_log.h"

#include <algorithm>

#include "engine/read_entry.h"
#include "seal/digest.h"

namespace jambline::engine {

folds::DeviceStandings standings_of(const seal::Members& members) {
  folds::DeviceStandings out;
  for (const auto& [device, member] : members.devices()) {
    folds::DeviceStanding& standing = out[device];
    standing.manager = member.manager;
    if (member.cut) standing.cut_seq = member.cut->seq;
  }
  return out;
}

Result<folds::RightsFold> rights_of(log::EntryLog& log) {
  folds::RightsFold out;
  out.set_devices(standings_of(log.members()));
  JAMBLINE_TRY(log.said_of({}, [&](const log::Said& said) {
    if (said.header.kind == entries::PersonAdded::kind) out.apply(read_entry(said));
    return true;
  }));
  return out;
}

Result<std::pair<folds::ShopFold, folds::StreamRights>> shop_of(log::EntryLog& log,
                                                                const folds::RightsFold& rights) {
  std::pair<folds::ShopFold, folds::StreamRights> out;
  bool again = false;
  const auto read = [&](bool to_fold) {
    return log.said_of({}, [&](const log::Said& said) {
      entries::Entry entry = read_entry(said);
      again = out.second.judge(rights, entry) || again;
      if (to_fold) out.first.apply(entry);
      return true;
    });
  };
  JAMBLINE_TRY(read(true));
  if (again) {
    out.first = folds::ShopFold();
    JAMBLINE_TRY(read(true));
  }
  return out;
}

std::string stamp_of(const folds::RightsFold& rights) {
  seal::Sha256 sum;
  for (const auto& [device, standing] : rights.devices()) {
    sum.add(device.bytes).add(standing.manager ? "manager" : "device");
    if (standing.cut_seq) sum.add(" until " + std::to_string(*standing.cut_seq));
    sum.add("; ");
  }
  for (const auto& [person, right] : rights.rights_of_people())
    sum.add(person.bytes).add(std::to_string(static_cast<int>(right)));
  return sum.finish().hex();
}

Status look_at_changed_devices(log::EntryLog& log, const folds::DeviceStandings& before,
                               const folds::DeviceStandings& now,
                               const std::function<void(const JobId&)>& changed) {
  // Up to where it is obeyed.
  const auto reach = [](const folds::DeviceStandings& standings, const DeviceId& device) {
    const auto found = standings.find(device);
    return found == standings.end() ? 0 : found->second.cut_seq.value_or(UINT64_MAX);
  };
  const auto manages = [](const folds::DeviceStandings& standings, const DeviceId& device) {
    const auto found = standings.find(device);
    return found != standings.end() && found->second.manager;
  };
  folds::DeviceStandings all = before;
  all.insert(now.begin(), now.end());
  for (const auto& [device, standing] : all) {
    std::uint64_t from_seq = std::min(reach(before, device), reach(now, device));
    if (manages(before, device) != manages(now, device)) from_seq = 0;
    if (from_seq == std::max(reach(before, device), reach(now, device))) continue;
    JAMBLINE_TRY(log.read_device(device, from_seq + 1, [&](const log::Stored& stored) {
      changed(stored.entry.header.subject);
      return true;
    }));
  }
  return {};
}

std::set<PersonId> people_with_other_rights(const folds::RightsFold& before,
                                            const folds::RightsFold& now) {
  const auto then = before.rights_of_people();
  const auto later = now.rights_of_people();
  std::set<PersonId> out;
  for (const auto* one : {&then, &later})
    for (const auto& [person, right] : *one) {
      const auto a = then.find(person);
      const auto b = later.find(person);
      if (a == then.end() || b == later.end() || a->second != b->second) out.insert(person);
    }
  return out;
}

}  // namespace jambline::engine
