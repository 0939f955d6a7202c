// blobs/file_layer.h: the few file calls a blob store needs, so that tests can break each of them.
//
// Shape:   Files is the disk; FileWriter one new file, or the end of one that is there; FileReader
// one open file. Paths are used as
//          given. New files are 0600, new folders 0700.
// Durable: bytes survive power loss after FileWriter::sync; a name made, renamed or removed does
//          after sync_folder of the folder that holds it. Nothing else is promised.
// Threads: Files may be called from any thread; a writer or reader has one owner.
// Errors:  DiskFull, ReadOnly, NoSuchFile, FileFailed; args: cause (the errno's name). Every return
//          of the system is checked, close included. Never throws.
// Source:  POSIX.1-2017 fsync, fdatasync, rename, close.
#pragma once

#include <cstdint>
#include <filesystem>
#include <memory>
#include <span>
#include <string>
#include <vector>

#include "base/error.h"

namespace jambline::blobs {

class FileWriter {
 public:
  virtual ~FileWriter() = default;  // an unclosed file is closed without a word
  virtual Status write(std::span<const std::uint8_t> bytes) = 0;  // all of them, or an error
  virtual Status sync() = 0;                                      // fdatasync
  virtual Status close() = 0;
};

class FileReader {
 public:
  virtual ~FileReader() = default;
  virtual Result<std::size_t> read(std::span<std::uint8_t> bytes) = 0;  // 0 = end of the file
  virtual Status seek(std::uint64_t offset) = 0;  // from the beginning; past the end reads nothing
};

struct FolderItem {
  enum class Kind : std::uint8_t { File, Folder, Other };  // a link is Other and never followed
  std::string name;
  Kind kind{};
  std::uint64_t size_bytes{};
  friend bool operator==(const FolderItem&, const FolderItem&) = default;
};

class Files {
 public:
  using Path = std::filesystem::path;

  virtual ~Files() = default;
  virtual Result<std::unique_ptr<FileWriter>> create(const Path& file) = 0;  // must not exist
  virtual Result<std::unique_ptr<FileWriter>> append(const Path& file) = 0;  // must exist
  virtual Result<std::unique_ptr<FileReader>> open(const Path& file) = 0;
  virtual Status rename(const Path& from, const Path& to) = 0;  // replaces `to` in one step
  virtual Status remove(const Path& file) = 0;
  virtual Status make_folder(const Path& folder) = 0;  // already there is not an error
  virtual Status sync_folder(const Path& folder) = 0;
  virtual Result<std::vector<FolderItem>> list(const Path& folder) = 0;  // sorted by name
  virtual Result<std::uint64_t> size_bytes(const Path& file) = 0;
  virtual Result<std::uint64_t> free_bytes(const Path& folder) = 0;
};

// The real disk.
class PosixFiles final : public Files {
 public:
  Result<std::unique_ptr<FileWriter>> create(const Path& file) override;
  Result<std::unique_ptr<FileWriter>> append(const Path& file) override;
  Result<std::unique_ptr<FileReader>> open(const Path& file) override;
  Status rename(const Path& from, const Path& to) override;
  Status remove(const Path& file) override;
  Status make_folder(const Path& folder) override;
  Status sync_folder(const Path& folder) override;
  Result<std::vector<FolderItem>> list(const Path& folder) override;
  Result<std::uint64_t> size_bytes(const Path& file) override;
  Result<std::uint64_t> free_bytes(const Path& folder) override;
};

// The error for an errno: ENOSPC and EDQUOT are DiskFull, EROFS, EACCES and EPERM ReadOnly,
// ENOENT NoSuchFile, all others FileFailed.
Error system_error(const char* operation, const std::filesystem::path& subject, int number);

}  // namespace jambline::blobs
