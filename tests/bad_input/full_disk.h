// tests/bad_input/full_disk.h: while it lives, every database that is opened lies on a disk that
// can be full. Files opened before are not touched by it.
#pragma once

#include <atomic>
#include <sqlite3.h>

#include "tests/crash/power_loss_vfs.h"

namespace jambline::bad_input {

class FullDisk {
 public:
  FullDisk() : usual_(sqlite3_vfs_find(nullptr)) {
    disk_.full = [this](std::uint64_t) {
      return full_ && (while_there_.empty() || std::filesystem::exists(while_there_));
    };
    sqlite3_vfs_register(sqlite3_vfs_find(log::PowerLossVfs::name), 1);
  }
  ~FullDisk() { sqlite3_vfs_register(usual_, 1); }
  FullDisk(const FullDisk&) = delete;
  FullDisk& operator=(const FullDisk&) = delete;

  void full(bool now) { full_ = now; }
  void full_while_there(const std::filesystem::path& file) {
    while_there_ = file;
    full_ = true;
  }

 private:
  sqlite3_vfs* usual_;
  std::filesystem::path while_there_;
  std::atomic<bool> full_ = false;
  log::PowerLossVfs disk_;
};

}  // namespace jambline::bad_input
