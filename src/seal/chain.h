// seal/chain.h: walks headers and says which one does not follow from the one before.
//
// Shape:   feed entries in any mixture of devices, each device's own in rising seq. From the first
//          bad entry on, that device's chain is unproven; the walk keeps the state before it.
// Rule:    seq 1 hangs on the device's admission (or on nothing, for the founder), every later
//          entry on the hash of the one before. FORMAT.md section 5.
// Errors:  ChainBroken (args: device, seq, cause), WrongShop. Membership beyond the first link is
//          Members::may(), which the caller asks.
// Threads: one owner.
#pragma once

#include <unordered_map>

#include "seal/membership.h"

namespace jambline::seal {

class ChainWalk {
 public:
  struct Link {
    std::uint64_t seq{};
    Hash hash;
    friend bool operator==(const Link&, const Link&) = default;
  };
  using Links = std::unordered_map<DeviceId, Link>;
  // `members` must outlive the walk. Without it the first link of a device is taken as it is.
  explicit ChainWalk(const Members* members = nullptr) : members_(members) {}
  ChainWalk(const ChainWalk&) = delete;
  ChainWalk& operator=(const ChainWalk&) = delete;
  // Of entries in the middle of a log: what the first of each device hangs on is not judged but
  // kept in begins(), for whoever has seen those before.
  struct OfStretch {};
  explicit ChainWalk(OfStretch) : members_(nullptr), stretch_(true) {}
  // Goes on after a link that was proven before.
  void start_at(const DeviceId& device, Link link) { heads_[device] = link; }
  Status next(const Header& header, const Hash& hash);
  const Links& heads() const { return heads_; }
  const Links& begins() const { return begins_; }

 private:
  Link* head_of(const DeviceId& device);

  const Members* members_;
  bool stretch_ = false;
  ShopId shop_;
  Links heads_;
  Links begins_;
  // Entries of one device mostly come one after another.
  DeviceId latest_;
  Link* latest_head_ = nullptr;
};

}  // namespace jambline::seal
