#include "seal/membership.h"

#include <algorithm>

#include "base/json.h"
#include "seal/digest.h"
#include "seal/sign.h"

namespace jambline::seal {

namespace {
Error refusal(Code code, const DeviceId& device, std::uint64_t seq) {
  return Error{code, "check", "membership", {}}
      .with("device", device.hex())
      .with("seq", std::to_string(seq));
}
}  // namespace

ShopId shop_id(const Key& founder_key, const Salt& nonce) {
  const Hash hash = Sha256().add(tag::shop).add(founder_key.bytes).add(nonce.bytes).finish();
  ShopId shop;
  std::memcpy(shop.bytes.data(), hash.bytes.data(), ShopId::size);
  return shop;
}

bool is_membership(std::uint16_t entry_kind) {
  return entry_kind >= kind::shop_founded && entry_kind <= kind::hub_admitted;
}

Status Members::apply(const SealedEntry& entry) {
  const Header& header = entry.header;
  if (!is_membership(header.kind) || founders_.contains(entry.hash) || claims_.contains(entry.hash))
    return {};
  if (shop_ && header.shop != shop_)
    return fail(refusal(Code::WrongShop, header.device, header.seq));
  if (entry.erased) return fail(refusal(Code::Missing, header.device, header.seq));
  JAMBLINE_TRY(check_payload(entry));

  if (header.kind == kind::shop_founded) {
    JAMBLINE_ASSIGN(const auto founded, from_json<ShopFounded>(entry.payload));
    if (header.seq != 1 || header.prev_hash || header.device != device_of(founded.founder_key))
      return fail(refusal(Code::Malformed, header.device, header.seq));
    if (header.shop != shop_id(founded.founder_key, founded.nonce))
      return fail(refusal(Code::WrongShop, header.device, header.seq));
    if (!verify(founded.founder_key, entry.hash.bytes, entry.signature))
      return fail(refusal(Code::BadSignature, header.device, header.seq));
    founders_.emplace(entry.hash, std::pair(founded.founder_key, founded.device_name));
  } else {
    Claim claim;
    claim.kind = header.kind;
    claim.author = header.device;
    claim.seq = header.seq;
    claim.signature = entry.signature;
    if (header.kind == kind::device_admitted) {
      JAMBLINE_ASSIGN(auto admitted, from_json<DeviceAdmitted>(entry.payload));
      claim.key = admitted.device_key;
      claim.name = std::move(admitted.device_name);
      claim.manager = admitted.manager;
    } else if (header.kind == kind::hub_admitted) {
      JAMBLINE_ASSIGN(auto admitted, from_json<HubAdmitted>(entry.payload));
      claim.key = admitted.hub_key;
      claim.name = std::move(admitted.hub_name);
    } else {
      JAMBLINE_ASSIGN(const auto revoked, from_json<DeviceRevoked>(entry.payload));
      claim.revoked = revoked.device;
      claim.cut = {revoked.cut_seq, revoked.cut_hash};
    }
    claims_.emplace(entry.hash, std::move(claim));
  }
  shop_ = header.shop;
  resolve();
  return {};
}

Status Members::may(const DeviceId& device, std::uint64_t seq, const Hash& hash) const {
  const Member* member = find(device);
  if (!member) return fail(refusal(Code::NotAdmitted, device, seq));
  if (!member->cut) return {};
  if (seq > member->cut->seq) return fail(refusal(Code::Revoked, device, seq));
  if (seq == member->cut->seq && hash != member->cut->hash)
    return fail(refusal(Code::Fork, device, seq));
  return {};
}

bool Members::first_link(const DeviceId& device, const Hash& prev_hash) const {
  const Member* member = find(device);
  if (!member) return false;
  if (!prev_hash)
    return std::any_of(founders_.begin(), founders_.end(), [&](const auto& founder) {
      return device_of(founder.second.first) == device;
    });
  const auto& by = member->admitted_by;
  return std::find(by.begin(), by.end(), prev_hash) != by.end();
}

const Member* Members::find(const DeviceId& device) const {
  const auto found = devices_.find(device);
  return found == devices_.end() ? nullptr : &found->second;
}

bool Members::cuts(const Claim& revocation, const Hash& hash, const Claim& claim) const {
  return revocation.kind == kind::device_revoked && revocation.revoked == claim.author &&
         (claim.seq > revocation.cut.seq ||
          (claim.seq == revocation.cut.seq && hash != revocation.cut.hash));
}

// Devices that the founder reaches over standing (or also over open) admissions, and whether as a
// manager.
std::map<DeviceId, bool> Members::reachable(bool over_open) const {
  std::map<DeviceId, bool> reached;
  for (const auto& [hash, founder] : founders_) reached[device_of(founder.first)] = true;
  for (bool grows = true; grows;) {
    grows = false;
    for (const auto& [hash, claim] : claims_) {
      if (claim.kind != kind::device_admitted || claim.standing == Standing::Falls) continue;
      if (claim.standing == Standing::Open && !over_open) continue;
      const auto author = reached.find(claim.author);
      if (author == reached.end() || !author->second) continue;
      const auto [device, added] = reached.try_emplace(device_of(claim.key), claim.manager);
      grows = grows || added || (claim.manager && !device->second);
      device->second = device->second || claim.manager;
    }
  }
  return reached;
}

// The well-founded judgement: a claim falls when its author is no manager by what has not fallen or
// when a standing revocation cuts it; it stands when all revocations that would cut it have fallen.
// What stays open (managers revoking each other) counts as standing.
void Members::judge() {
  std::map<DeviceId, Key> keys;
  for (const auto& [hash, founder] : founders_)
    keys.emplace(device_of(founder.first), founder.first);
  for (const auto& [hash, claim] : claims_)
    if (claim.kind == kind::device_admitted) keys.emplace(device_of(claim.key), claim.key);
  for (auto& [hash, claim] : claims_) {
    const auto key = keys.find(claim.author);
    if (key != keys.end() && !claim.signed_well)
      claim.signed_well = verify(key->second, hash.bytes, claim.signature);
    claim.standing = claim.signed_well.value_or(false) ? Standing::Open : Standing::Falls;
  }
  for (bool moved = true; moved;) {
    moved = false;
    const auto possible = reachable(true);
    const auto certain = reachable(false);
    const auto manages = [](const std::map<DeviceId, bool>& reached, const DeviceId& device) {
      const auto found = reached.find(device);
      return found != reached.end() && found->second;
    };
    for (auto& [hash, claim] : claims_) {
      if (claim.standing == Standing::Falls) continue;
      bool falls = !manages(possible, claim.author);
      bool stands = manages(certain, claim.author);
      for (const auto& [by_hash, by] : claims_) {
        if (by.standing == Standing::Falls || !cuts(by, hash, claim)) continue;
        stands = false;
        falls = falls || by.standing == Standing::Stands;
      }
      const Standing now = falls ? Standing::Falls : stands ? Standing::Stands : Standing::Open;
      if (now == claim.standing || now == Standing::Open) continue;
      claim.standing = now;
      moved = true;
    }
  }
}

void Members::resolve() {
  judge();
  devices_.clear();
  hubs_.clear();
  for (const auto& [hash, founder] : founders_) {
    Member& member = devices_[device_of(founder.first)];
    member.key = founder.first;
    if (member.name.empty()) member.name = founder.second;
    member.manager = true;
  }
  for (const auto& [hash, claim] : claims_) {  // by hash: the same order everywhere
    if (claim.standing == Standing::Falls) continue;
    if (claim.kind == kind::device_admitted) {
      Member& member = devices_[device_of(claim.key)];
      member.key = claim.key;
      if (member.name.empty()) member.name = claim.name;
      member.manager = member.manager || claim.manager;
      member.admitted_by.push_back(hash);
    } else if (claim.kind == kind::hub_admitted) {
      hubs_.try_emplace(claim.key, claim.name);
    }
  }
  for (const auto& [hash, claim] : claims_) {
    if (claim.standing == Standing::Falls || claim.kind != kind::device_revoked) continue;
    const auto member = devices_.find(claim.revoked);
    if (member == devices_.end()) continue;
    auto& cut = member->second.cut;
    if (!cut || claim.cut < *cut) cut = claim.cut;
  }
}

}  // namespace jambline::seal
