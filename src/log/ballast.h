// log/ballast.h: a file that keeps room on the disk, so that "the disk is full" can still be
// logged.
//
// Shape:   `ballast` in the data folder, really allocated. spend() frees it when a write found no
//          room; keep() makes it again once there is four times its size.
// Threads: one owner.
#pragma once

#include <cstdint>
#include <filesystem>

namespace jambline::log {

class Ballast {
 public:
  Ballast(const std::filesystem::path& folder, std::uint64_t bytes);
  // True when there was something to free.
  bool spend();
  // Looks at the disk, and makes the file where it is missing and there is room.
  void keep();
  bool missing() const { return bytes_ > 0 && !there_; }

 private:
  std::filesystem::path file_;
  std::uint64_t bytes_;
  bool there_ = false;
};

}  // namespace jambline::log
