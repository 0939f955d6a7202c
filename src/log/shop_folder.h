// log/shop_folder.h: a whole shop as plain files, and back into a log by the same checks.
//
// Shape:   entries/<device>-<first seq>-<last seq>.jle (packs, seal/pack.h), receipts (each 209
//          bytes, one after the other) and README.txt, written last, with the shop's fingerprint.
//          Blobs travel beside them and are not this file's business.
// Durable: every file is synced before README.txt is there. Import commits slices of 50 entries;
//          what passed the checks stays when a later file is refused.
// Trust:   an imported folder is foreign input: names mean nothing, every byte is checked, limits
//          hold, and a bad file stops only what depends on it.
// Threads: the log's owner. `progress` is called between slices and may let other work through.
// Errors:  AlreadyDone (something is there already), NoSuchFile, DiskFull, ReadOnly, FileFailed,
//          Stopped. What single files were refused for stands in Imported::refused.
// Source:  seal/FORMAT.md section 8.
#pragma once

#include "log/entry_log.h"

namespace jambline::log {

struct Exported {
  std::uint64_t entries = 0;
  std::uint64_t receipts = 0;
  std::uint64_t files = 0;
};

struct Imported {
  std::uint64_t files = 0;
  std::uint64_t entries = 0;  // new to this log
  std::uint64_t receipts = 0;
  std::vector<std::pair<std::string, Error>> refused;  // file name, why
};

using Progress = std::function<void(double part_done)>;

Result<Exported> export_shop(EntryLog& log, const std::filesystem::path& folder,
                             const std::stop_token& stop, const Progress& progress);

// `wanted` is the fingerprint that a person typed; none = whatever shop the log or the folder has.
Result<Imported> import_shop(EntryLog& log, const std::filesystem::path& folder,
                             const std::stop_token& stop, const Progress& progress,
                             const ShopId& wanted = {});

}  // namespace jambline::log
