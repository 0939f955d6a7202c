// engine/shop_devices.h: devices and hubs of the shop, as its membership entries say, and the acts
// that let them in and out.
//
// Rule:    only a manager's device admits and revokes (NotAllowed); seal/membership.h says which
//          claims stand. Errors otherwise: those of EntryLog::append(); Unknown (device).
// Threads: the log's owner.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "folds/shop_view.h"
#include "log/entry_log.h"

namespace jambline::engine {

struct ShopDevice {
  DeviceId device;
  std::string name;  // as it is called now
  bool manager = false;
  bool own = false;
  std::optional<std::uint64_t> cut_seq;  // set: revoked; what it wrote after it is not obeyed
  std::uint64_t entries = 0;             // of it that are here
};

struct ShopHub {
  seal::Key key;
  std::string name;
};

// Own device first, then by name.
std::vector<ShopDevice> shop_devices(const log::EntryLog& log, const folds::ShopView& shop,
                                     const DeviceId& own);
std::vector<ShopHub> shop_hubs(const log::EntryLog& log);

struct Admission {
  seal::Key key;
  std::string name;
  bool manager = false;
};
log::Draft draft_of(const Admission& admission);
log::Draft draft_of(const ShopHub& hub);
// The cut is at the last entry that a receipt names, or else at the last that is here.
Result<log::Draft> revocation_of(log::EntryLog& log, const DeviceId& device);

}  // namespace jambline::engine
