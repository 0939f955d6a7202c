// hub/folder_lock.h: one hub at a time works in a folder.
//
// Shape:   flock(2) on the file `lock`; held while the value lives, gone with the process. The file
//          stays behind and means nothing by itself.
// Errors:  FolderInUse; ReadOnly, NoSuchFile, DiskFull, FileFailed when the file cannot be made.
#pragma once

#include <filesystem>

#include "base/error.h"

namespace jambline::hub {

class FolderLock {
 public:
  static Result<FolderLock> take(const std::filesystem::path& folder);
  FolderLock(FolderLock&& other) noexcept;
  FolderLock& operator=(FolderLock&& other) noexcept;
  ~FolderLock();

 private:
  explicit FolderLock(int descriptor) : descriptor_(descriptor) {}
  int descriptor_ = -1;
};

}  // namespace jambline::hub
