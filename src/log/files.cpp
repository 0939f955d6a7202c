#include "log/files.h"

#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

namespace jambline::log {

namespace {
struct Descriptor {
  int fd;
  ~Descriptor() {
    if (fd >= 0) close(fd);
  }
};
}  // namespace

Error file_error(std::string operation, const std::filesystem::path& file, int reason) {
  Code code = Code::FileFailed;
  if (reason == ENOENT || reason == ENOTDIR) code = Code::NoSuchFile;
  if (reason == ENOSPC || reason == EDQUOT) code = Code::DiskFull;
  if (reason == EROFS || reason == EACCES || reason == EPERM) code = Code::ReadOnly;
  return Error{code, std::move(operation), file.filename().string(), {}}.with("cause",
                                                                              strerror(reason));
}

Status sync_folder(const std::filesystem::path& folder) {
  const Descriptor opened{open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC)};
  if (opened.fd < 0 || fsync(opened.fd) != 0) return fail(file_error("sync folder", folder, errno));
  return {};
}

Status write_file(const std::filesystem::path& file, std::string_view bytes) {
  const Descriptor out{open(file.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0644)};
  if (out.fd < 0) return fail(file_error("write", file, errno));
  while (!bytes.empty()) {
    const ssize_t done = write(out.fd, bytes.data(), bytes.size());
    if (done < 0 && errno == EINTR) continue;
    if (done <= 0) return fail(file_error("write", file, done == 0 ? ENOSPC : errno));
    bytes.remove_prefix(static_cast<std::size_t>(done));
  }
  if (fsync(out.fd) != 0) return fail(file_error("write", file, errno));
  return {};
}

Result<std::string> read_file(const std::filesystem::path& file, std::size_t most_bytes) {
  const Descriptor in{open(file.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK)};
  struct stat about {};
  if (in.fd < 0 || fstat(in.fd, &about) != 0) return fail(file_error("read", file, errno));
  if (!S_ISREG(about.st_mode)) return fail(file_error("read", file, EINVAL));
  if (about.st_size < 0 || static_cast<std::size_t>(about.st_size) > most_bytes)
    return fail(Error{Code::TooLarge, "read", file.filename().string(), {}}.with(
        "limit", std::to_string(most_bytes)));
  std::string bytes(static_cast<std::size_t>(about.st_size), '\0');
  std::size_t done = 0;
  while (done < bytes.size()) {
    const ssize_t got = read(in.fd, bytes.data() + done, bytes.size() - done);
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) return fail(file_error("read", file, errno));
    if (got == 0) break;
    done += static_cast<std::size_t>(got);
  }
  bytes.resize(done);
  return bytes;
}

}  // namespace jambline::log
