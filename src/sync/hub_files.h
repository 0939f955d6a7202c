// sync/hub_files.h: a shop's files at the hub: whole ones under their hash, and those on their way.
//
// Errors:  NoSuchFile, OutOfRange (args: value = the offset that it is at), Busy (somebody writes
//          it), BadHash (other bytes than the name says: the part is gone), DiskFull, FileFailed.
// Threads: the shop's, one at a time; a reader or writer is used there too.
#pragma once

#include <memory>
#include <span>

#include "base/error.h"
#include "sync/target.h"

namespace jambline::sync {

class FileSource {
 public:
  virtual ~FileSource() = default;
  virtual Result<std::size_t> read(std::span<std::uint8_t> bytes) = 0;  // 0 = end
};

class FileSink {
 public:
  virtual ~FileSink() = default;  // what was written stays
  virtual Status write(std::span<const std::uint8_t> bytes) = 0;
  virtual std::uint64_t size_bytes() const = 0;
};

class HubFiles {
 public:
  virtual ~HubFiles() = default;
  virtual Result<bool> has(const Hash& blob) = 0;
  virtual Result<std::uint64_t> size_bytes(const Hash& blob) = 0;
  virtual Result<std::unique_ptr<FileSource>> read(const Hash& blob, std::uint64_t offset) = 0;

  virtual Status begin(const UploadId& upload) = 0;
  virtual Result<std::uint64_t> offset(const UploadId& upload) = 0;
  virtual Result<std::unique_ptr<FileSink>> append(const UploadId& upload,
                                                   std::uint64_t offset) = 0;
  virtual Status finish(const UploadId& upload) = 0;  // hashed, then published
  virtual Status drop(const UploadId& upload) = 0;
};

}  // namespace jambline::sync
