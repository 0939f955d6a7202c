// What has to hold at the end of every schedule. Source: FAULTS.md, its head.
#include <algorithm>

#include "engine/read_entry.h"
#include "engine/rights_of_log.h"
#include "seal/chain.h"
#include "seal/digest.h"
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
    if (one.running()) {
      // A forked folder may hold receipts for the other copy's entries.
      const auto depth = compared ? log::AuditDepth::Whole : log::AuditDepth::Chain;
      const auto audit = log::EntryLog::audit(one.folder, {}, {}, depth);
      if (one.log_size() > 0 && (!audit || audit->first_bad)) {
        const Error& error = audit ? *audit->first_bad : audit.error();
        world.complain(one.name + "'s chain: " + std::string(code_name(error.code)) + " " +
                       std::string(error.arg("cause")));
      }
    }
    if (!compared) continue;
    if (one.log_size() != held.size())
      world.complain(one.name + " has " + std::to_string(one.log_size()) + " entries, the hub " +
                     std::to_string(held.size()));
    else if (fold_text(one.entries()) != at_hub_text)
      world.complain(one.name + " shows something else than the hub's log says");
    if (one.end->state().receipted_seq != one.own_seq())
      world.complain(one.name +
                     " has not sent all: " + std::to_string(one.end->state().receipted_seq) +
                     " of " + std::to_string(one.own_seq()));
  }
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

  std::set<Hash> apart, in_forked;
  std::map<DeviceId, bool> revoked;
  for (std::size_t i = 0; i < world.devices(); ++i) {
    const SimDevice& one = world.device(i);
    if (one.cut_seq) {
      revoked[one.key.device()] = true;
      for (const auto& entry : world.hub.apart(one.key.device())) apart.insert(entry.hash);
    }
    if (one.forked)
      for (const auto& entry : one.entries()) in_forked.insert(entry.hash);
  }
  for (const auto& [hash, shown] : world.ledger()) {
    if (at_hub.count(hash) || in_forked.count(hash)) continue;
    if (revoked.count(shown.device) && apart.count(hash)) continue;
    world.complain("lost: " + shown.device.hex().substr(0, 8) + ":" + std::to_string(shown.seq));
  }
}

void judge_pictures(World& world) {
  const auto& disk = world.hub.disk();
  if (!disk.damaged().empty()) world.complain("a damaged file is left at the hub");
  for (const auto& [blob, taker] : world.pictures()) {
    SimDevice& took = world.device(taker);
    if (took.cut_seq || took.forked) continue;  // stays where it was taken
    if (!disk.blobs.count(blob)) world.complain("a picture of " + took.name + " is not at the hub");
    for (std::size_t i = 0; i < world.devices(); ++i) {
      SimDevice& one = world.device(i);
      if (world.compared(one) && !one.blobs().check(blob))
        world.complain("a picture of " + took.name + " is not at " + one.name);
    }
  }
}

// A fork is told at the last entry that both have.
void judge_forks(World& world) {
  for (std::size_t i = 0; i < world.devices(); ++i) {
    SimDevice& one = world.device(i);
    if (!one.forked || !one.running() || !one.end->state().fork_common_seq) continue;
    const std::uint64_t common = *one.end->state().fork_common_seq;
    const DeviceId device = one.key.device();
    auto& storage = world.hub.shop->storage();
    if (common > 0 &&
        need(one.hash_at(device, common), "own") != need(storage.hash_at(device, common), "hub's"))
      world.complain(one.name + " takes " + std::to_string(common) +
                     " for common, and the hub has another");
  }
}
}  // namespace

std::string fold_text(const std::vector<seal::SealedEntry>& sealed) {
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
  return folds.text();
}

void judge(World& world) {
  const auto held = world.hub.entries();
  judge_logs(world, held);
  judge_ledger(world, held);
  judge_pictures(world);
  judge_forks(world);
}

}  // namespace jambline::simulator
