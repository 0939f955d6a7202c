// hub/own_entry.h: membership entries that a hub's own key writes, where it is a device of the
// shop.
//
// Shape:   FORMAT.md sections 2 to 5; no person says them, and the hub decodes no other payload.
// Threads: any; pure but for the salt.
#pragma once

#include <string>

#include "base/clock.h"
#include "base/random.h"
#include "seal/membership.h"
#include "seal/sign.h"

namespace jambline::hub {

// Where in the hub's own chain the next entry stands.
struct OwnPlace {
  ShopId shop;
  std::uint64_t seq = 1;
  Hash prev_hash;
};
struct OwnWords {
  std::uint16_t kind{};
  std::string payload;
};

// All of one act: they share an action id.
std::vector<seal::SealedEntry> own_entries(const seal::SigningKey& hub, OwnPlace place,
                                           const std::vector<OwnWords>& words, const Moment& moment,
                                           Random& random);

}  // namespace jambline::hub
