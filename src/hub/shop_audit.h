// hub/shop_audit.h: every entry of a shop looked at again: chain, signature, payload, membership,
// and every receipt. A push is taken by the signature of its last entry; the others are checked
// here, in the background.
//
// Shape:   go_on() looks at what came since the last time, over a reading connection of its own.
//          What is found wrong is named once and for all in `first_bad`.
// Threads: one owner; whoever has the database open meanwhile goes on writing.
// Errors:  of the disk, DatabaseDamaged. A bad entry is no error of the audit.
#pragma once

#include <filesystem>
#include <optional>
#include <stop_token>

#include "seal/chain.h"
#include "seal/receipt.h"

namespace jambline::hub {

struct AuditReport {
  std::uint64_t through = 0;  // of the hub's count
  std::uint64_t entries = 0;
  std::uint64_t erased = 0;
  std::uint64_t after_cut = 0;  // came before their device's revocation was known
  std::uint64_t receipts = 0;
  std::optional<Error> first_bad = {};
  bool stopped = false;
};

class ShopAudit {
 public:
  ShopAudit(std::filesystem::path shop_folder, const ShopId& shop, const seal::Key& hub)
      : folder_(std::move(shop_folder)), shop_(shop), hub_(hub) {}
  ShopAudit(const ShopAudit&) = delete;
  ShopAudit& operator=(const ShopAudit&) = delete;

  // With `pages` SQLite's own check of the file as well.
  Status go_on(const std::stop_token& stop, bool pages = false);
  const AuditReport& found() const { return found_; }

 private:
  struct Row;
  std::optional<Error> look_at(const Row& row);

  std::filesystem::path folder_;
  ShopId shop_;
  seal::Key hub_;
  seal::Members members_;
  seal::ChainWalk walk_{&members_};
  AuditReport found_;
  std::int64_t receipts_through_ = 0;
};

}  // namespace jambline::hub
