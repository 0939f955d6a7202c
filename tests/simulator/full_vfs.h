// tests/simulator/full_vfs.h: an SQLite VFS whose disk is full for chosen folders, or takes no more
// after so many writes (its program is killed there), and that does not sync: a simulator never
// loses power below SQLite (tests/crash does).
//
// Threads: one.
#pragma once

#include <cstdint>
#include <filesystem>
#include <map>
#include <set>

namespace jambline::simulator {

class FullVfs {
 public:
  static constexpr const char* name = "jambline-full";
  static FullVfs& registered();  // for the life of the process
  void set_full(const std::filesystem::path& folder, bool full);
  bool is_full(const std::filesystem::path& folder) const { return full_.count(folder) != 0; }
  // Only so many more writes reach the folder, until revive().
  void kill_after(const std::filesystem::path& folder, std::uint64_t writes);
  void revive(const std::filesystem::path& folder) { writes_left_.erase(folder); }
  bool takes_write(const std::filesystem::path& folder);

 private:
  FullVfs();
  std::set<std::filesystem::path> full_;
  std::map<std::filesystem::path, std::uint64_t> writes_left_;
};

}  // namespace jambline::simulator
