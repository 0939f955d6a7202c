// hub/operator_acts.h: what the hub's operator does, while it serves or not.
//
// Shape:   a shop is named by its id or by nothing when the hub has just one.
// Errors:  Unknown (field: shop, digits, device), Missing (field: shop: there are several),
//          NotAllowed (what: a manager's device has to do it), Disputed (two wait with the same
//          digits), NotYet (what: restore; the shop is shut), and those of the storage.
// Threads: any; each waits for its turn in the shop.
#pragma once

#include "hub/hub.h"

namespace jambline::hub {

using ShopChoice = std::optional<ShopId>;

// A shop that begins here: the hub's key is its first device and a manager.
Result<ShopId> found_shop(Hub& hub);
// For a shop that exists on a device and is to come here.
Result<sync::Invitation> expect_shop(Hub& hub, std::int64_t lives_ms);
// For a device that is to join a shop.
Result<sync::Invitation> invite_device(Hub& hub, const ShopChoice& shop, std::int64_t lives_ms);

struct WaitingDevice {
  ShopId shop;
  DeviceId device;
  std::string name;
  std::string digits;  // "042 917"
  std::int64_t asked_ms{};
  bool brings_shop{};  // its own manager takes the hub in
  bool hub_may_admit{};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "shop"}, self.shop);
    visit(Field{.name = "device"}, self.device);
    visit(Field{.name = "name"}, self.name);
    visit(Field{.name = "digits"}, self.digits);
    visit(Field{.name = "asked_ms", .unit = "ms"}, self.asked_ms);
    visit(Field{.name = "brings_shop"}, self.brings_shop);
    visit(Field{.name = "hub_may_admit"}, self.hub_may_admit);
  }
};
Result<std::vector<WaitingDevice>> waiting_devices(Hub& hub, const ShopChoice& shop);

// Whoever compared the digits types them: six digits, blanks as they come.
Result<WaitingDevice> admit_device(Hub& hub, const ShopChoice& shop, std::string_view digits,
                                   bool manager);
Result<WaitingDevice> turn_away(Hub& hub, const ShopChoice& shop, std::string_view digits);

struct RevokedDevice {
  ShopId shop;
  DeviceId device;
  std::string name;
  std::uint64_t cut_seq{};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "shop"}, self.shop);
    visit(Field{.name = "device"}, self.device);
    visit(Field{.name = "name"}, self.name);
    visit(Field{.name = "cut_seq", .doc = "entries up to here stand"}, self.cut_seq);
  }
};
// By the device's id, or the beginning of it that fits one only.
Result<RevokedDevice> revoke_device(Hub& hub, const ShopChoice& shop, std::string_view device);

struct ScrubbedShop {
  ShopId shop;
  std::uint64_t files{};
  std::uint64_t bytes{};
  std::vector<Hash> damaged;
  std::uint64_t unreadable{};
  bool stopped{};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "shop"}, self.shop);
    visit(Field{.name = "files"}, self.files);
    visit(Field{.name = "bytes", .unit = "byte"}, self.bytes);
    visit(Field{.name = "damaged", .doc = "set aside; devices are asked for them"}, self.damaged);
    visit(Field{.name = "unreadable"}, self.unreadable);
    visit(Field{.name = "stopped"}, self.stopped);
  }
};
// Every file hashed again, in all shops or one.
Result<std::vector<ScrubbedShop>> scrub_shops(Hub& hub, const ShopChoice& shop,
                                              const std::stop_token& stop);

struct AuditedShop {
  ShopId shop;
  std::uint64_t entries{};
  std::uint64_t erased{};
  std::uint64_t after_cut{};
  std::uint64_t receipts{};
  std::string first_bad;  // the code and what it says, or empty
  bool stopped{};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "shop"}, self.shop);
    visit(Field{.name = "entries"}, self.entries);
    visit(Field{.name = "erased"}, self.erased);
    visit(Field{.name = "after_cut"}, self.after_cut);
    visit(Field{.name = "receipts"}, self.receipts);
    visit(Field{.name = "first_bad"}, self.first_bad);
    visit(Field{.name = "stopped"}, self.stopped);
  }
};
Result<std::vector<AuditedShop>> audit_shops(Hub& hub, const ShopChoice& shop,
                                             const std::stop_token& stop);

// "BadSignature: hub_seq 7, cause signature"
std::string one_line(const Error& error);

// The shops that a choice means.
Result<std::vector<std::shared_ptr<ShopPlace>>> chosen_shops(Hub& hub, const ShopChoice& shop);

}  // namespace jambline::hub
