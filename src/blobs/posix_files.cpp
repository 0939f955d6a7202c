#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <dirent.h>
#include <fcntl.h>
#include <sys/stat.h>
#include <sys/statvfs.h>
#include <unistd.h>

#include "blobs/file_layer.h"

namespace jambline::blobs {
namespace {

using Path = std::filesystem::path;

tl::unexpected<Error> failed(const char* operation, const Path& subject, int number = errno) {
  return fail(system_error(operation, subject, number));
}

class Descriptor {
 public:
  explicit Descriptor(int number) : number_(number) {}
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  ~Descriptor() {
    if (number_ >= 0) ::close(number_);
  }
  int get() const { return number_; }
  int close() {  // Linux frees the number even when close fails: never a second time
    const int number = number_;
    number_ = -1;
    return ::close(number);
  }

 private:
  int number_;
};

class PosixWriter final : public FileWriter {
 public:
  PosixWriter(Path path, int number) : path_(std::move(path)), file_(number) {}

  Status write(std::span<const std::uint8_t> bytes) override {
    while (!bytes.empty()) {
      const ssize_t written = ::write(file_.get(), bytes.data(), bytes.size());
      if (written < 0 && errno == EINTR) continue;
      if (written < 0) return failed("write", path_);
      if (written == 0) return failed("write", path_, EIO);
      bytes = bytes.subspan(static_cast<std::size_t>(written));
    }
    return {};
  }

  Status sync() override {
    if (::fdatasync(file_.get()) != 0) return failed("sync", path_);
    return {};
  }

  Status close() override {
    if (file_.close() != 0) return failed("close", path_);
    return {};
  }

 private:
  Path path_;
  Descriptor file_;
};

class PosixReader final : public FileReader {
 public:
  PosixReader(Path path, int number) : path_(std::move(path)), file_(number) {}

  Result<std::size_t> read(std::span<std::uint8_t> bytes) override {
    for (;;) {
      const ssize_t got = ::read(file_.get(), bytes.data(), bytes.size());
      if (got >= 0) return static_cast<std::size_t>(got);
      if (errno != EINTR) return failed("read", path_);
    }
  }

  Status seek(std::uint64_t offset) override {
    if (::lseek(file_.get(), static_cast<off_t>(offset), SEEK_SET) < 0)
      return failed("read", path_);
    return {};
  }

 private:
  Path path_;
  Descriptor file_;
};

}  // namespace

Error system_error(const char* operation, const Path& subject, int number) {
  Code code = Code::FileFailed;
  if (number == ENOSPC || number == EDQUOT) code = Code::DiskFull;
  if (number == EROFS || number == EACCES || number == EPERM) code = Code::ReadOnly;
  if (number == ENOENT) code = Code::NoSuchFile;
  const char* name = ::strerrorname_np(number);
  return Error{code, operation, subject.string(), {{"cause", name ? name : "unknown"}}};
}

Result<std::unique_ptr<FileWriter>> PosixFiles::create(const Path& file) {
  const int number = ::open(file.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0600);
  if (number < 0) return failed("create", file);
  return std::make_unique<PosixWriter>(file, number);
}

Result<std::unique_ptr<FileWriter>> PosixFiles::append(const Path& file) {
  const int number = ::open(file.c_str(), O_WRONLY | O_APPEND | O_NOFOLLOW | O_CLOEXEC);
  if (number < 0) return failed("append", file);
  return std::make_unique<PosixWriter>(file, number);
}

Result<std::unique_ptr<FileReader>> PosixFiles::open(const Path& file) {
  const int number = ::open(file.c_str(), O_RDONLY | O_NOFOLLOW | O_NONBLOCK | O_CLOEXEC);
  if (number < 0) return failed("open", file);
  auto reader = std::make_unique<PosixReader>(file, number);
  struct stat info {};
  if (::fstat(number, &info) != 0) return failed("open", file);
  if (!S_ISREG(info.st_mode)) return failed("open", file, EISDIR);
  return reader;
}

Status PosixFiles::rename(const Path& from, const Path& to) {
  if (::rename(from.c_str(), to.c_str()) != 0) return failed("rename", from);
  return {};
}

Status PosixFiles::remove(const Path& file) {
  if (::unlink(file.c_str()) != 0) return failed("remove", file);
  return {};
}

Status PosixFiles::make_folder(const Path& folder) {
  if (::mkdir(folder.c_str(), 0700) == 0) return {};
  const int number = errno;
  struct stat info {};
  if (number == EEXIST && ::stat(folder.c_str(), &info) == 0 && S_ISDIR(info.st_mode)) return {};
  return failed("make_folder", folder, number);
}

Status PosixFiles::sync_folder(const Path& folder) {
  Descriptor file(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (file.get() < 0) return failed("sync_folder", folder);
  if (::fsync(file.get()) != 0) return failed("sync_folder", folder);
  if (file.close() != 0) return failed("sync_folder", folder);
  return {};
}

Result<std::vector<FolderItem>> PosixFiles::list(const Path& folder) {
  const std::unique_ptr<DIR, int (*)(DIR*)> stream(::opendir(folder.c_str()), ::closedir);
  if (!stream) return failed("list", folder);
  std::vector<FolderItem> items;
  for (;;) {
    errno = 0;
    const dirent* entry = ::readdir(stream.get());
    if (!entry && errno != 0) return failed("list", folder);
    if (!entry) break;
    const std::string name = entry->d_name;
    if (name == "." || name == "..") continue;
    struct stat info {};
    if (::fstatat(::dirfd(stream.get()), name.c_str(), &info, AT_SYMLINK_NOFOLLOW) != 0) {
      if (errno == ENOENT) continue;  // removed or renamed since it was listed
      return failed("list", folder / name);
    }
    FolderItem item{name, FolderItem::Kind::Other, 0};
    if (S_ISDIR(info.st_mode)) item.kind = FolderItem::Kind::Folder;
    if (S_ISREG(info.st_mode)) {
      item.kind = FolderItem::Kind::File;
      item.size_bytes = static_cast<std::uint64_t>(info.st_size);
    }
    items.push_back(std::move(item));
  }
  std::sort(items.begin(), items.end(),
            [](const FolderItem& a, const FolderItem& b) { return a.name < b.name; });
  return items;
}

Result<std::uint64_t> PosixFiles::size_bytes(const Path& file) {
  struct stat info {};
  if (::lstat(file.c_str(), &info) != 0) return failed("size", file);
  if (!S_ISREG(info.st_mode)) return failed("size", file, EISDIR);
  return static_cast<std::uint64_t>(info.st_size);
}

Result<std::uint64_t> PosixFiles::free_bytes(const Path& folder) {
  struct statvfs info {};
  if (::statvfs(folder.c_str(), &info) != 0) return failed("free_bytes", folder);
  return static_cast<std::uint64_t>(info.f_bavail) * info.f_frsize;
}

}  // namespace jambline::blobs
