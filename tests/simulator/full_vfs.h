// tests/simulator/full_vfs.h: an SQLite VFS whose disk is full for chosen folders, and that does
// not sync: a simulator never loses power below SQLite (tests/crash does).
//
// Threads: one.
#pragma once

#include <filesystem>
#include <set>

namespace jambline::simulator {

class FullVfs {
 public:
  static constexpr const char* name = "jambline-full";
  static FullVfs& registered();  // for the life of the process
  void set_full(const std::filesystem::path& folder, bool full);
  bool is_full(const std::filesystem::path& folder) const { return full_.count(folder) != 0; }

 private:
  FullVfs();
  std::set<std::filesystem::path> full_;
};

}  // namespace jambline::simulator
