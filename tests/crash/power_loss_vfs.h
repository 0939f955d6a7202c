// tests/crash/power_loss_vfs.h: an SQLite VFS that remembers every write, so that a test can build
// the disk as it would be had the power gone at any one of them.
//
// Shape:   passes everything through to the usual VFS and keeps a list of events. An event is a
//          creation, write, truncation, sync or deletion of the database, its write-ahead log or
//          its journal. The shared-memory file is left out: a new start does not need it.
// Model:   what was written since a file's last sync may be there, missing, out of order or torn
//          within a write at a 512 byte sector. A file's creation is safe with its first sync (the
//          usual VFS syncs the folder then); a deletion is safe at once when SQLite asks for a
//          folder sync and may be undone otherwise.
// Full:    chosen writes can be refused with SQLITE_FULL.
// Threads: one.
// Source:  https://sqlite.org/c3ref/vfs.html, https://sqlite.org/atomiccommit.html section 2
#pragma once

#include <cstdint>
#include <filesystem>
#include <functional>
#include <map>
#include <string>
#include <vector>

#include "base/random.h"

namespace jambline::log {

class PowerLossVfs {
 public:
  static constexpr const char* name = "jambline-power-loss";
  PowerLossVfs();
  ~PowerLossVfs();
  PowerLossVfs(const PowerLossVfs&) = delete;
  PowerLossVfs& operator=(const PowerLossVfs&) = delete;

  struct Event {
    enum class What : std::uint8_t { Open, Write, Truncate, Sync, Delete, Said };
    What what{};
    std::string file;       // name without folder
    std::int64_t offset{};  // of a write; new length of a truncation; Said: the test's number
    std::string bytes;      // Open: what the file held
    bool certain = false;   // Open: was there before; Delete: folder synced
  };
  std::vector<Event> events;
  // The test notes what a person was told by now.
  void said(std::int64_t number);

  // What to do with a write: true = no room. Asked for each write with its number, 0, 1, 2 ...
  std::function<bool(std::uint64_t number)> full;
  std::uint64_t writes = 0;

  enum class Loss : std::uint8_t {
    Nothing,   // the program died, the machine went on
    Unsynced,  // nothing that was not synced is there
    Some,      // each unsynced write is there or not
    Torn,      // all are there but the last one ends within itself
  };
  // Puts the files as they would be after the first `count` events into `folder`.
  void build(std::size_t count, Loss loss, SeededRandom& random,
             const std::filesystem::path& folder) const;
};

}  // namespace jambline::log
