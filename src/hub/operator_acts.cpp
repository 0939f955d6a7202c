#include "hub/operator_acts.h"

#include <algorithm>

#include "base/json.h"
#include "hub/own_entry.h"
#include "hub/shop_audit.h"

namespace jambline::hub {

namespace {
using ShopPointer = std::shared_ptr<ShopPlace>;

Error not_known(std::string operation, const std::string& field) {
  return Error{Code::Unknown, std::move(operation), field, {}}.with("field", field);
}

Result<ShopPointer> one_shop(Hub& hub, const ShopChoice& shop) {
  JAMBLINE_ASSIGN(auto all, chosen_shops(hub, shop));
  if (all.empty()) return fail(not_known("choose", "shop"));
  if (all.size() > 1) return fail(Error{Code::Missing, "choose", "shop", {}}.with("field", "shop"));
  return all.front();
}

bool hub_is_manager(const seal::Members& members, const DeviceId& hub) {
  const seal::Member* own = members.find(hub);
  return own && own->manager && !own->cut;
}

WaitingDevice waiting_device(const Hub& hub, const ShopId& shop, const seal::Members& members,
                             const sync::Pending& pending) {
  return {shop,
          seal::device_of(pending.device_key),
          pending.device_name,
          sync::six_digits(shop, pending.device_key, hub.key().key(), pending.nonce),
          pending.asked_ms,
          pending.brings_shop,
          !pending.brings_shop && hub_is_manager(members, hub.key().device())};
}

std::string only_digits(std::string_view text) {
  std::string out;
  for (const char sign : text)
    if (sign >= '0' && sign <= '9') out.push_back(sign);
  return out;
}

struct FoundWaiting {
  ShopPointer place;
  WaitingDevice device;
};
Result<FoundWaiting> find_waiting(Hub& hub, const ShopChoice& shop, std::string_view digits) {
  const std::string wanted = only_digits(digits);
  JAMBLINE_ASSIGN(const auto places, chosen_shops(hub, shop));
  JAMBLINE_ASSIGN(const auto all, waiting_devices(hub, shop));
  std::vector<FoundWaiting> found;
  for (const auto& one : all)
    for (const auto& place : places)
      if (place->id() == one.shop && only_digits(one.digits) == wanted)
        found.push_back({place, one});
  if (found.empty()) return fail(not_known("compare", "digits"));
  if (found.size() > 1) return fail(Code::Disputed, "compare", "digits");
  return found.front();
}

Error only_a_manager(std::string operation) {
  return Error{Code::NotAllowed, std::move(operation), "hub", {}}.with(
      "what", "a manager's device of this shop has to do it");
}

// What the hub's own key says next in a shop where it is a manager.
Status say_own(Hub& hub, sync::HubShop& shop, const std::string& operation,
               const std::vector<OwnWords>& words) {
  const DeviceId own = hub.key().device();
  if (!hub_is_manager(shop.members(), own)) return fail(only_a_manager(operation));
  OwnPlace place{shop.storage().shop(), 1, {}};
  if (const auto& by = shop.members().find(own)->admitted_by; !by.empty())
    place.prev_hash = by.front();
  JAMBLINE_ASSIGN(const auto heads, shop.storage().heads());
  for (const auto& head : heads)
    if (head.device == own) place = {place.shop, head.seq + 1, head.hash};
  const auto entries = own_entries(hub.key(), place, words, hub.clock().now(), hub.random());
  return shop.append_own(entries);
}
}  // namespace

std::string one_line(const Error& error) {
  std::string out(code_name(error.code));
  out += ": " + error.subject;
  for (const auto& [name, value] : error.args)
    out.append(", ").append(name).append(" ").append(value);
  return out;
}

Result<std::vector<ShopPointer>> chosen_shops(Hub& hub, const ShopChoice& shop) {
  std::vector<ShopPointer> out;
  for (const auto& place : hub.shops())
    if (!shop || place->id() == *shop) out.push_back(place);
  if (shop && out.empty()) {
    const auto shut = hub.shut();
    if (const auto found = shut.find(*shop); found != shut.end()) return fail(found->second);
    return fail(not_known("choose", "shop"));
  }
  return out;
}

Result<ShopId> found_shop(Hub& hub) {
  const std::string name = hub.config().name;
  const auto nonce = hub.random().make<seal::Salt>();
  const ShopId id = seal::shop_id(hub.key().key(), nonce);
  JAMBLINE_ASSIGN(auto place, hub.make_shop(id, std::nullopt));
  const auto entries = own_entries(
      hub.key(), {id, 1, {}},
      {{seal::kind::shop_founded, to_json(seal::ShopFounded{hub.key().key(), nonce, name})},
       {seal::kind::hub_admitted, to_json(seal::HubAdmitted{hub.key().key(), name})}},
      hub.clock().now(), hub.random());
  if (const Status founded = place->shop().append_own(entries); !founded) {
    const auto folder = place->folder();
    place.reset();
    std::error_code ignored;
    std::filesystem::remove_all(folder, ignored);  // nobody has heard of it
    return fail(founded.error());
  }
  hub.welcome(place);
  return id;
}

Result<sync::Invitation> expect_shop(Hub& hub, std::int64_t lives_ms) {
  JAMBLINE_ASSIGN(const auto at, addresses_of(hub.config()));
  Result<sync::InviteCode> code;
  hub.at_lobby([&](Lobby& lobby) {
    code = lobby.expected().invite(hub.clock().now().wall_ms, lives_ms, hub.random());
  });
  if (!code) return fail(code.error());
  return sync::Invitation{hub.key().key(), {}, *code, at};
}

Result<sync::Invitation> invite_device(Hub& hub, const ShopChoice& shop, std::int64_t lives_ms) {
  JAMBLINE_ASSIGN(const auto at, addresses_of(hub.config()));
  JAMBLINE_ASSIGN(const auto place, one_shop(hub, shop));
  JAMBLINE_ASSIGN(const auto code, hub.at_shop(place, [&](sync::HubShop& of) {
    return of.invite(false, lives_ms);
  }));
  return sync::Invitation{hub.key().key(), place->id(), code, at};
}

Result<std::vector<WaitingDevice>> waiting_devices(Hub& hub, const ShopChoice& shop) {
  JAMBLINE_ASSIGN(const auto places, chosen_shops(hub, shop));
  std::vector<WaitingDevice> out;
  for (const auto& place : places) {
    const Status asked = hub.at_shop(place, [&](sync::HubShop& of) -> Status {
      JAMBLINE_ASSIGN(const auto pending, of.pending());
      for (const auto& one : pending)
        out.push_back(waiting_device(hub, place->id(), of.members(), one));
      return {};
    });
    JAMBLINE_TRY(asked);
  }
  return out;
}

Result<WaitingDevice> admit_device(Hub& hub, const ShopChoice& shop, std::string_view digits,
                                   bool manager) {
  JAMBLINE_ASSIGN(const auto found, find_waiting(hub, shop, digits));
  if (found.device.brings_shop) return fail(only_a_manager("admit"));
  const Status said = hub.at_shop(found.place, [&](sync::HubShop& of) -> Status {
    JAMBLINE_ASSIGN(const auto pending, of.pending());
    for (const auto& one : pending)
      if (seal::device_of(one.device_key) == found.device.device)
        return say_own(hub, of, "admit",
                       {{seal::kind::device_admitted,
                         to_json(seal::DeviceAdmitted{one.device_key, one.device_name, manager})}});
    return fail(not_known("admit", "digits"));
  });
  JAMBLINE_TRY(said);
  return found.device;
}

Result<WaitingDevice> turn_away(Hub& hub, const ShopChoice& shop, std::string_view digits) {
  JAMBLINE_ASSIGN(const auto found, find_waiting(hub, shop, digits));
  const Status said =
      hub.at_shop(found.place, [&](sync::HubShop& of) { return of.refuse(found.device.device); });
  JAMBLINE_TRY(said);
  return found.device;
}

Result<RevokedDevice> revoke_device(Hub& hub, const ShopChoice& shop, std::string_view device) {
  JAMBLINE_ASSIGN(const auto place, one_shop(hub, shop));
  return hub.at_shop(place, [&](sync::HubShop& of) -> Result<RevokedDevice> {
    std::vector<DeviceId> fits;
    for (const auto& [id, member] : of.members().devices())
      if (!device.empty() && id.hex().compare(0, device.size(), device) == 0) fits.push_back(id);
    if (fits.size() != 1) return fail(not_known("revoke", "device"));
    if (fits.front() == hub.key().device()) return fail(only_a_manager("revoke"));
    const seal::Member* member = of.members().find(fits.front());
    if (member->cut) return fail(Code::AlreadyDone, "revoke", member->name);
    // What the hub holds stands: it has given its receipt for it.
    seal::DeviceRevoked revoked{fits.front(), 0, {}};
    JAMBLINE_ASSIGN(const auto heads, of.storage().heads());
    for (const auto& head : heads)
      if (head.device == fits.front()) revoked = {head.device, head.seq, head.hash};
    const std::string name = member->name;
    JAMBLINE_TRY(say_own(hub, of, "revoke", {{seal::kind::device_revoked, to_json(revoked)}}));
    return RevokedDevice{place->id(), fits.front(), name, revoked.cut_seq};
  });
}

Result<std::vector<ScrubbedShop>> scrub_shops(Hub& hub, const ShopChoice& shop,
                                              const std::stop_token& stop) {
  JAMBLINE_ASSIGN(const auto places, chosen_shops(hub, shop));
  std::vector<ScrubbedShop> out;
  for (const auto& place : places) {
    JAMBLINE_ASSIGN(const auto found, place->files().set_damaged_aside(stop));
    out.push_back(
        {place->id(), found.blobs, found.bytes, found.damaged, found.unreadable, found.stopped});
    if (found.damaged.empty()) continue;
    const Status told = hub.at_shop(place, [](sync::HubShop& of) { return of.blobs_lost(); });
    JAMBLINE_TRY(told);
  }
  return out;
}

Result<std::vector<AuditedShop>> audit_shops(Hub& hub, const ShopChoice& shop,
                                             const std::stop_token& stop) {
  JAMBLINE_ASSIGN(const auto places, chosen_shops(hub, shop));
  std::vector<AuditedShop> out;
  for (const auto& place : places) {
    ShopAudit audit(place->folder(), place->id(), hub.key().key());
    JAMBLINE_TRY(audit.go_on(stop, true));
    const AuditReport& found = audit.found();
    out.push_back({place->id(), found.entries, found.erased, found.after_cut, found.receipts,
                   found.first_bad ? one_line(*found.first_bad) : std::string(), found.stopped});
  }
  return out;
}

}  // namespace jambline::hub
