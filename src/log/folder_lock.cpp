#include "log/folder_lock.h"

#include <cerrno>
#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>
#include <utility>

#include "log/files.h"

namespace jambline::log {

Result<FolderLock> FolderLock::take(const std::filesystem::path& folder) {
  const auto file = folder / "lock";
  const int descriptor = open(file.c_str(), O_RDWR | O_CREAT | O_CLOEXEC | O_NOFOLLOW, 0600);
  if (descriptor < 0) return fail(file_error("lock", file, errno));
  FolderLock lock(descriptor);
  if (flock(descriptor, LOCK_EX | LOCK_NB) != 0) {
    if (errno == EWOULDBLOCK) return fail(Code::FolderInUse, "lock", folder.string());
    return fail(file_error("lock", file, errno));
  }
  return lock;
}

FolderLock::FolderLock(FolderLock&& other) noexcept
    : descriptor_(std::exchange(other.descriptor_, -1)) {}
FolderLock& FolderLock::operator=(FolderLock&& other) noexcept {
  std::swap(descriptor_, other.descriptor_);
  return *this;
}
FolderLock::~FolderLock() {
  if (descriptor_ >= 0) close(descriptor_);
}

}  // namespace jambline::log
