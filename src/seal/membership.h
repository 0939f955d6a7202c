// seal/membership.h: who belongs to a shop, said by entries and by nothing else.
//
// Kinds:   ShopFounded is seq 1 of the first device: the shop's id is the first 16 bytes of
//          SHA-256("jambline shop 1" || founder key || nonce). DeviceAdmitted and HubAdmitted let a
//          key in, DeviceRevoked ends one at {cut_seq, cut_hash}. Only entries of a device whose
//          membership says `manager` admit or revoke; the founder is one.
// Promise: folding the same set of entries in any order gives the same members.
// Threads: a plain value; one owner at a time.
// Errors:  NotAdmitted, Revoked, Fork (the entry at the cut is another one), WrongShop, BadHash,
//          BadSignature, Malformed.
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
    visit(Field{.name = "founder_key", .doc = "Ed25519 public key of the founding device"},
          self.founder_key);
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
bool is_membership(std::uint16_t entry_kind);  // founded, admitted, revoked, hub admitted

struct Cut {
  std::uint64_t seq{};
  Hash hash;
  friend auto operator<=>(const Cut&, const Cut&) = default;
};

struct Member {
  Key key;
  std::string name;
  bool manager = false;
  std::vector<Hash> admitted_by;  // the DeviceAdmitted entries that stand; empty for the founder
  std::optional<Cut> cut;         // set when revoked: entries after it do not stand
  friend bool operator==(const Member&, const Member&) = default;
};

// Who belongs, from the membership entries seen so far; entries of other kinds change nothing.
// Which claims stand when managers revoke each other: FORMAT.md section 5.
class Members {
 public:
  // Takes one entry in; the same one twice changes nothing. A refused entry changes nothing.
  Status apply(const SealedEntry& entry);

  // Whether an entry of this device at this seq counts.
  Status may(const DeviceId& device, std::uint64_t seq, const Hash& hash) const;
  // Whether prev_hash is right for seq 1 of this device.
  bool first_link(const DeviceId& device, const Hash& prev_hash) const;

  ShopId shop() const { return founders_.empty() ? ShopId{} : shop_; }
  const Member* find(const DeviceId& device) const;
  const std::map<DeviceId, Member>& devices() const { return devices_; }
  const std::map<Key, std::string>& hubs() const { return hubs_; }
  friend bool operator==(const Members& a, const Members& b) {
    return a.shop() == b.shop() && a.devices_ == b.devices_ && a.hubs_ == b.hubs_;
  }

 private:
  enum class Standing : std::uint8_t { Open, Stands, Falls };
  struct Claim {
    std::uint16_t kind{};
    DeviceId author;
    std::uint64_t seq{};
    Signature signature;
    Key key;  // admitted device or hub
    std::string name;
    bool manager = false;
    DeviceId revoked;  // and where
    Cut cut;
    std::optional<bool> signed_well;  // known once the author's key is
    Standing standing = Standing::Open;
  };
  using Claims = std::map<Hash, Claim>;

  bool cuts(const Claim& revocation, const Hash& hash, const Claim& claim) const;
  std::map<DeviceId, bool> reachable(bool over_open) const;
  void judge();
  void resolve();

  ShopId shop_;
  std::map<Hash, std::pair<Key, std::string>> founders_;
  Claims claims_;
  std::map<DeviceId, Member> devices_;
  std::map<Key, std::string> hubs_;
};

}  // namespace jambline::seal
