// What has to hold at the end of every schedule. Source: FAULTS.md, its head.
#include <algorithm>
#include <regex>

#include "engine/read_entry.h"
#include "engine/rights_of_log.h"
#include "seal/chain.h"
#include "seal/digest.h"
#include "tests/property/devices.h"
#include "tests/simulator/world.h"

namespace jambline::simulator {

namespace {
std::string place_of(const seal::SealedEntry& entry) {
  return entry.header.device.hex().substr(0, 8) + ":" + std::to_string(entry.header.seq);
}

// Folds and chains of the hub's log, and the same of every device.
void judge_logs(World& world, const std::vector<seal::SealedEntry>& held) {
  seal::Members members;
  for (const auto& entry : held) (void)members.apply(entry);
  seal::ChainWalk walk(&members);
  std::set<Hash> at_hub;
  for (const auto& entry : held) {
    if (!at_hub.insert(entry.hash).second) world.complain("twice at the hub: " + place_of(entry));
    if (const Status next = walk.next(entry.header, entry.hash); !next)
      world.complain("the hub's chain breaks at " + place_of(entry));
    const auto* member = members.find(entry.header.device);
    if (!member || !seal::verify(member->key, entry.hash.bytes, entry.signature))
      world.complain("the hub holds an unsigned entry: " + place_of(entry));
    if (!seal::check_payload(entry)) world.complain("another payload: " + place_of(entry));
  }
  const std::string at_hub_text = fold_text(held);
  for (std::size_t i = 0; i < world.devices(); ++i) {
    SimDevice& one = world.device(i);
    const bool compared = world.compared(one);
    if (one.forked) world.complain(one.name + " is still forked");
    if (one.running()) {
      const auto audit = log::EntryLog::audit(one.folder, {}, {}, log::AuditDepth::Whole);
      if (one.log_size() > 0 && (!audit || audit->first_bad)) {
        const Error& error = audit ? *audit->first_bad : audit.error();
        world.complain(one.name + "'s chain: " + std::string(code_name(error.code)) + " " +
                       std::string(error.arg("cause")));
      }
    }
    if (!compared) continue;
    // What the hub keeps apart of a revoked device is in the log of who pulled it before the hub
    // was put back and heard of the cut first: nothing is deleted (fault 15), so it stays there.
    // Nobody obeys it: it is told as refused, and all else has to be shown as by the hub's log.
    const std::set<Hash> apart_here = world.apart_here(one);
    const auto here = one.entries();
    auto as_held = here;
    std::erase_if(as_held, [&](const auto& entry) { return apart_here.count(entry.hash) != 0; });
    if (as_held.size() != held.size() || one.log_size() != as_held.size() + apart_here.size())
      world.complain(one.name + " has " + std::to_string(one.log_size()) + " entries, the hub " +
                     std::to_string(held.size()));
    else if (apart_here.empty() ? fold_text(here) != at_hub_text
                                : fold_text(here, RefusedEntries::LeftOut) !=
                                      fold_text(held, RefusedEntries::LeftOut))
      world.complain(one.name + " shows something else than the hub's log says");
    if (one.end->state().receipted_seq != one.own_seq())
      world.complain(one.name +
                     " has not sent all: " + std::to_string(one.end->state().receipted_seq) +
                     " of " + std::to_string(one.own_seq()));
  }
}

// Entries that a WorkTakenOver of the hub's log says again: the origins' hashes.
std::set<Hash> said_again(World& world, const std::vector<seal::SealedEntry>& held) {
  std::set<Hash> out;
  std::map<std::pair<DeviceId, std::uint64_t>, const seal::SealedEntry*> places;
  for (const auto& entry : held) places[{entry.header.device, entry.header.seq}] = &entry;
  for (const auto& sealed : held) {
    if (sealed.header.kind != entries::WorkTakenOver::kind) continue;
    const auto entry = engine::read_entry(sealed);
    const auto* over = entry.payload.get_if<entries::WorkTakenOver>();
    if (!over) {
      world.complain("a WorkTakenOver that cannot be read");
      continue;
    }
    for (std::size_t i = 0; i < over->origins.size(); ++i) {
      if (!places.count({sealed.header.device, sealed.header.seq + 1 + i}))
        world.complain("said to be taken over, and is not: after " + place_of(sealed));
      if (!out.insert(over->origins[i]).second) world.complain("said again twice");
    }
  }
  return out;
}

// Nothing that was shown as done is lost, nothing is there that nobody said.
void judge_ledger(World& world, const std::vector<seal::SealedEntry>& held) {
  std::set<Hash> at_hub, said_first;
  for (const auto& entry : held) at_hub.insert(entry.hash);
  for (const auto& entry : genesis().entries) said_first.insert(entry.hash);
  for (const auto& entry : held)
    if (!world.ledger().count(entry.hash) && !said_first.count(entry.hash))
      world.complain("nobody said " + place_of(entry));
  for (const auto& entry : said_first)
    if (!at_hub.count(entry)) world.complain("an entry of the first day is lost");

  const auto again = said_again(world, held);
  for (const auto& origin : world.to_be_again())
    if (!again.count(origin) && !at_hub.count(origin)) world.complain("work taken over is lost");
  for (const auto& entry : held)
    if (world.to_be_erased().count(entry.hash) && !entry.erased)
      world.complain("erased in a forked folder, and back again: " + place_of(entry));
  for (const auto& origin : again)
    if (!world.ledger().count(origin)) world.complain("said again what nobody said");

  const std::set<Hash> apart = world.apart();
  for (const auto& [hash, shown] : world.ledger()) {
    if (at_hub.count(hash) || again.count(hash) || world.left_there().count(hash)) continue;
    if (apart.count(hash)) continue;
    world.complain("lost: " + shown.device.hex().substr(0, 8) + ":" + std::to_string(shown.seq));
  }
}

// Of every picture that an entry names: whole at the hub and on every device, or taken by nobody
// who may send it. One that only entries after a cut name is fetched by those who have them.
void judge_pictures(World& world) {
  if (world.hub.has_damaged_blobs()) world.complain("a damaged file is left at the hub");
  std::map<Hash, bool> named;  // whether by what everybody has
  for (const auto& picture : world.pictures())
    if (world.will_come(picture.first)) named[picture.first] = true;
  std::vector<std::pair<SimDevice*, std::set<Hash>>> devices;
  for (std::size_t i = 0; i < world.devices(); ++i) {
    SimDevice& one = world.device(i);
    if (!world.compared(one)) continue;
    auto& names = devices.emplace_back(&one, std::set<Hash>()).second;
    const bool as_the_hub = world.apart_here(one).empty();
    for (const auto& item : one.named()) {
      names.insert(item.blob);
      named[item.blob] |= as_the_hub;
    }
  }
  for (const auto& picture : named) {
    const Hash& blob = picture.first;
    if (!world.hub.has_blob(blob)) {
      const bool somewhere = std::any_of(devices.begin(), devices.end(), [&](const auto& device) {
        return device.second.count(blob) && need(device.first->blobs().has(blob), "has");
      });
      if (world.will_come(blob) || somewhere)
        world.complain("a picture is not at the hub: " + blob.hex());
      world.meet(Met::PictureNever);
      continue;
    }
    for (const auto& [one, names] : devices)
      if ((picture.second || names.count(blob)) && !one->blobs().check(blob))
        world.complain("a picture is not at " + one->name + ": " + blob.hex());
  }
}
}  // namespace

std::string fold_text(const std::vector<seal::SealedEntry>& sealed, RefusedEntries refused) {
  seal::Members members;
  folds::RightsFold rights;
  std::vector<entries::Entry> shop;
  std::map<JobId, std::vector<entries::Entry>> jobs;
  for (const auto& one : sealed) {
    (void)members.apply(one);
    auto entry = engine::read_entry(one);
    if (!entry.subject && entry.kind == entries::PersonAdded::kind) rights.apply(entry);
    (entry.subject ? jobs[entry.subject] : shop).push_back(std::move(entry));
  }
  rights.set_devices(engine::standings_of(members));
  property::Folds folds;
  (void)folds::judge_all(rights, shop);
  for (const auto& entry : shop) folds.apply(entry);
  for (auto& [job, stream] : jobs) {
    (void)folds::judge_all(rights, stream);
    for (const auto& entry : stream) folds.apply(entry);
  }
  if (refused == RefusedEntries::Counted) return folds.text();
  std::erase_if(folds.jobs, [](const auto& job) { return job.second.view().entries == 0; });
  static const std::regex count("\"refused_entries\":[0-9]+");
  return std::regex_replace(folds.text(), count, "");
}

// Whether two wrote one label without knowing of each other, and both values are there.
void look_for_conflicts(World& world) {
  for (const auto& [job, fold] : world.device(1).shadow->device().folds().jobs)
    if (!fold.view().conflicts.empty()) world.meet(Met::BothEdited);
}

void judge(World& world) {
  const auto held = world.hub.entries();
  judge_logs(world, held);
  judge_ledger(world, held);
  judge_pictures(world);
  look_for_conflicts(world);
}

}  // namespace jambline::simulator
