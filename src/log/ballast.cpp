#include "log/ballast.h"

#include <fcntl.h>
#include <system_error>
#include <unistd.h>

namespace jambline::log {

namespace fs = std::filesystem;

Ballast::Ballast(const fs::path& folder, std::uint64_t bytes)
    : file_(folder / "ballast"), bytes_(bytes) {
  std::error_code ignored;
  there_ = fs::file_size(file_, ignored) == bytes_ && !ignored;
}

bool Ballast::spend() {
  std::error_code refused;
  const bool was_there = fs::remove(file_, refused) && !refused;
  there_ = false;
  return was_there;
}

void Ballast::keep() {
  if (!missing()) return;
  std::error_code refused;
  const auto room = fs::space(file_.parent_path(), refused);
  if (refused || room.available < 4 * bytes_) return;
  const int out = open(file_.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0644);
  if (out < 0) return;
  there_ = posix_fallocate(out, 0, static_cast<off_t>(bytes_)) == 0;
  close(out);
  if (!there_) fs::remove(file_, refused);
}

}  // namespace jambline::log
