// seal/chain.h: walks headers and says which one does not follow from the one before.
//
// Shape:   feed entries in any mixture of devices, each device's own in rising seq. From the first
//          bad entry on, that device's chain is unproven; the walk keeps the state before it.
// Rule:    seq 1 hangs on the device's admission (or on nothing, for the founder), every later
// entry
//          on the hash of the one before. FORMAT.md section 5.
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
  };
  // `members` must outlive the walk. Without it the first link of a device is taken as it is.
  explicit ChainWalk(const Members* members = nullptr) : members_(members) {}
  // Goes on after a link that was proven before.
  void start_at(const DeviceId& device, Link link) { heads_[device] = link; }
  Status next(const Header& header, const Hash& hash);
  const std::unordered_map<DeviceId, Link>& heads() const { return heads_; }

 private:
  const Members* members_;
  ShopId shop_;
  std::unordered_map<DeviceId, Link> heads_;
};

}  // namespace jambline::seal
