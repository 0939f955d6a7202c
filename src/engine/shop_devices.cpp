#include "engine/shop_devices.h"

#include <algorithm>
#include <tuple>

#include "base/json.h"

namespace jambline::engine {

namespace {
constexpr std::uint16_t membership_schema = 1;
}

std::vector<ShopDevice> shop_devices(const log::EntryLog& log, const folds::ShopView& shop,
                                     const DeviceId& own) {
  std::vector<ShopDevice> out;
  for (const auto& [device, member] : log.members().devices()) {
    ShopDevice row{device, member.name, member.manager, device == own, {}, 0};
    if (member.cut) row.cut_seq = member.cut->seq;
    for (const auto& named : shop.device_names)
      if (named.device == device) row.name = named.name;
    out.push_back(std::move(row));
  }
  for (const auto& head : log.heads())
    for (auto& row : out)
      if (row.device == head.device) row.entries = head.seq;
  std::sort(out.begin(), out.end(), [](const auto& a, const auto& b) {
    return std::tuple(!a.own, a.name, a.device) < std::tuple(!b.own, b.name, b.device);
  });
  return out;
}

std::vector<ShopHub> shop_hubs(const log::EntryLog& log) {
  std::vector<ShopHub> out;
  for (const auto& [key, name] : log.members().hubs()) out.push_back({key, name});
  return out;
}

log::Draft draft_of(const Admission& admission) {
  return {{},
          seal::kind::device_admitted,
          membership_schema,
          to_json(seal::DeviceAdmitted{admission.key, admission.name, admission.manager})};
}

log::Draft draft_of(const ShopHub& hub) {
  return {{},
          seal::kind::hub_admitted,
          membership_schema,
          to_json(seal::HubAdmitted{hub.key, hub.name})};
}

Result<log::Draft> revocation_of(log::EntryLog& log, const DeviceId& device) {
  if (!log.members().find(device)) return fail(Code::Unknown, "revoke", "device");
  seal::DeviceRevoked revoked;
  revoked.device = device;
  for (const auto& head : log.heads())
    if (head.device == device)
      std::tie(revoked.cut_seq, revoked.cut_hash) = std::tie(head.seq, head.hash);
  JAMBLINE_ASSIGN(const auto receipts, log.receipts());
  std::uint64_t receipted = 0;
  Hash receipted_hash;
  for (const auto& receipt : receipts)
    if (receipt.device == device && receipt.seq > receipted && receipt.seq <= revoked.cut_seq) {
      receipted = receipt.seq;
      receipted_hash = receipt.hash;
    }
  if (receipted > 0) {
    revoked.cut_seq = receipted;
    revoked.cut_hash = receipted_hash;
  }
  return log::Draft{{}, seal::kind::device_revoked, membership_schema, to_json(revoked)};
}

}  // namespace jambline::engine
