#include "hub/hub_status.h"

#include <algorithm>

#include "hub/operator_acts.h"

namespace jambline::hub {

namespace {
std::uint64_t size_or_none(const std::filesystem::path& file) {
  std::error_code refused;
  const auto size = std::filesystem::file_size(file, refused);
  return refused ? 0 : size;
}

Status count_members(Hub& hub, sync::HubShop& of, ShopStatus& out) {
  sync::HubStorage& storage = of.storage();
  out.epoch = storage.epoch();
  out.entries = storage.hub_seq();
  out.blob_mark = storage.blob_mark();
  for (const auto& [device, member] : of.members().devices()) {
    DeviceStatus row{device, member.name, member.manager, 0, {}, {}};
    if (member.cut) row.cut_seq = member.cut->seq;
    out.revoked += member.cut.has_value();
    out.devices.push_back(std::move(row));
  }
  JAMBLINE_ASSIGN(const auto heads, storage.heads());
  for (const auto& head : heads)
    for (auto& row : out.devices)
      if (row.device == head.device) row.entries = head.seq;
  const seal::Member* own = of.members().find(hub.key().device());
  out.hub_manages = own && own->manager && !own->cut;
  JAMBLINE_ASSIGN(const auto pending, of.pending());
  out.waiting = pending.size();
  JAMBLINE_ASSIGN(const auto apart, storage.quarantine());
  for (const auto& one : apart) out.quarantined += one.settled_through < one.last_seq;
  JAMBLINE_ASSIGN(const auto seen, storage.seen());
  for (const auto& one : seen) {
    out.forked += one.fork_seq.has_value();
    for (auto& row : out.devices)
      if (row.device == one.device) row.seen_ms = one.seen_ms;
    out.last_seen_ms = std::max(out.last_seen_ms.value_or(one.seen_ms), one.seen_ms);
  }
  return {};
}

Status count_files(ShopPlace& place, ShopStatus& out) {
  out.database_bytes =
      size_or_none(place.folder() / shop_file_name) + size_or_none(place.folder() / "shop.db-wal");
  JAMBLINE_ASSIGN(const auto files, place.files().blobs().list());
  out.files = files.size();
  for (const Hash& file : files)
    out.file_bytes += place.files().blobs().size_bytes(file).value_or(0);
  JAMBLINE_ASSIGN(out.parts, place.files().parts());
  return {};
}
}  // namespace

Result<HubStatus> status_of(Hub& hub, const Upkeep* upkeep) {
  HubStatus out;
  const HubConfig config = hub.config();
  out.name = config.name;
  out.hub = hub.key().key();
  out.serving = hub.served();
  JAMBLINE_ASSIGN(const auto at, addresses_of(config));
  for (const auto& address : at) out.addresses.push_back(address.text());
  hub.at_lobby([&](Lobby& lobby) { out.expected = lobby.expected().count(); });
  const auto shops = hub.shops();
  JAMBLINE_ASSIGN(out.free_bytes, blobs::PosixFiles().free_bytes(hub.folder()));
  std::map<ShopId, AuditReport> audits;
  if (upkeep) audits = upkeep->found();
  for (const auto& place : shops) {
    ShopStatus row;
    row.shop = place->id();
    const Status counted =
        hub.at_shop(place, [&](sync::HubShop& of) { return count_members(hub, of, row); });
    JAMBLINE_TRY(counted);
    JAMBLINE_TRY(count_files(*place, row));
    if (const auto found = audits.find(place->id()); found != audits.end()) {
      row.audited = found->second.entries;
      if (found->second.first_bad) row.first_bad = one_line(*found->second.first_bad);
    }
    out.shops.push_back(std::move(row));
  }
  for (const auto& [shop, why] : hub.shut()) {
    ShopStatus row;
    row.shop = shop;
    row.shut = one_line(why);
    out.shops.push_back(std::move(row));
  }
  return out;
}

}  // namespace jambline::hub
