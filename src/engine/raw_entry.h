// engine/raw_entry.h: one entry as it lies in the log, whether its signature is good, and the hub's
// word for it.
//
// Opens a reader of its own, so it may run on any thread while the log is written.
// Errors:  those of EntryLog::open(); Unknown (entry).
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "log/entry_log.h"

namespace jambline::engine {

struct RawEntry {
  seal::SealedEntry sealed;
  std::string device_name;  // as it was admitted; empty: no member of the shop
  bool signature_good = false;
  bool payload_good = false;  // is what the header names, or was erased by an entry that says so
  struct Received {
    seal::Receipt receipt;  // of this entry or of a later one of its device
    std::string hub_name;   // empty: no hub of the shop
    bool signature_good = false;
    // The hub's own number of this entry: known where the receipt's request holds it.
    std::optional<std::uint64_t> hub_seq;
  };
  std::vector<Received> received;  // the first one of each hub and epoch that covers it
};

Result<RawEntry> raw_entry(const std::filesystem::path& folder, const Hash& hash);

}  // namespace jambline::engine
