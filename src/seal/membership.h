// seal/membership.h: who belongs to a shop, said by entries and by nothing else.
//
// Kinds:   ShopFounded is seq 1 of the first device: the shop's id is the first 16 bytes of
//          SHA-256("jambline shop 1" || founder key || nonce). DeviceAdmitted and HubAdmitted let a
//          key in, DeviceRevoked ends one at {cut_seq, cut_hash}. Only entries of a device whose
//          membership says `manager` admit or revoke; the founder is one.
// Promise: folding the same set of entries in any order gives the same members.
// Errors:  NotAdmitted, Revoked, WrongShop, BadSignature.
// Source:  FORMAT.md section 5.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "base/describe.h"
#include "seal/header.h"

namespace jambline::seal {

namespace kind {
inline constexpr std::uint16_t shop_founded = 1;
inline constexpr std::uint16_t device_admitted = 2;
inline constexpr std::uint16_t device_revoked = 3;
inline constexpr std::uint16_t hub_admitted = 4;
inline constexpr std::uint16_t payload_erased = 5;
}  // namespace kind

struct ShopFounded {
  Key founder_key;
  Salt nonce;
  std::string device_name;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "founder_key", .doc = "Ed25519 public key of the founding device"}, self.founder_key);
    visit(Field{.name = "nonce", .doc = "random; makes the shop's id"}, self.nonce);
    visit(Field{.name = "device_name", .doc = "what people call the device"}, self.device_name);
  }
};

struct DeviceAdmitted {
  Key device_key;
  std::string device_name;
  bool manager{};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "device_key", .doc = "Ed25519 public key"}, self.device_key);
    visit(Field{.name = "device_name", .doc = "what people call the device"}, self.device_name);
    visit(Field{.name = "manager", .doc = "may admit and revoke"}, self.manager);
  }
};

struct DeviceRevoked {
  DeviceId device;
  std::uint64_t cut_seq{};
  Hash cut_hash;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "device"}, self.device);
    visit(Field{.name = "cut_seq", .doc = "entries up to here stand"}, self.cut_seq);
    visit(Field{.name = "cut_hash", .doc = "entry hash at cut_seq"}, self.cut_hash);
  }
};

struct HubAdmitted {
  Key hub_key;
  std::string hub_name;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "hub_key", .doc = "Ed25519 identity key of the hub"}, self.hub_key);
    visit(Field{.name = "hub_name"}, self.hub_name);
  }
};

// The payload of the named entry is gone for good; its header, hash and signature stay.
struct PayloadErased {
  Hash target;
  std::string reason;
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "target", .doc = "entry hash whose payload was erased"}, self.target);
    visit(Field{.name = "reason"}, self.reason);
  }
};

ShopId shop_id(const Key& founder_key, const Salt& nonce);

}  // namespace jambline::seal
