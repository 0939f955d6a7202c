// hub/epoch_file.h: the copy of a shop's epoch that lies beside its database.
//
// Shape:   shops/<shop>/epoch, JSON: the epoch, and an entry's place in the hub's count that the
//          database has reached for certain. It is written after the database. A database with
//          another epoch, or with fewer entries, is not the one that stood here last: somebody put
//          an older one in its place.
// Errors:  those of hub/small_file.h; Malformed.
#pragma once

#include <filesystem>

#include "base/describe.h"
#include "base/error.h"
#include "seal/receipt.h"

namespace jambline::hub {

struct EpochFile {
  seal::Epoch epoch;
  std::uint64_t hub_seq{};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "epoch"}, self.epoch);
    visit(Field{.name = "hub_seq", .doc = "reached for certain", .min = 0, .max = 9.2e18},
          self.hub_seq);
  }
};

inline constexpr const char* epoch_file_name = "epoch";

Result<EpochFile> read_epoch(const std::filesystem::path& shop_folder);
Status write_epoch(const std::filesystem::path& shop_folder, const EpochFile& said);

}  // namespace jambline::hub
