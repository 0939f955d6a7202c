// blobs/part_store.h: files on their way in, kept in part over cut connections and restarts.
//
// Shape:   a part's name is chosen by the caller (letters, digits, '.' and '-', at most 160 signs);
//          its file is the folder's <name>, its length how far it has come. A whole one is hashed
//          and moved into the blob store (the same disk).
// Durable: nothing before finish(): after power loss a part may be shorter, or hold other bytes,
//          which finish() finds. What finish() gave into the blob store survives.
// Threads: any; a part has one writer at a time.
// Errors:  NoSuchFile (no such part), Busy (somebody writes it), OutOfRange (offset; args: value =
//          how far it is), BadHash (the part is gone then), Malformed (name), DiskFull, FileFailed.
#pragma once

#include <map>
#include <mutex>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "blobs/blob_store.h"

namespace jambline::blobs {

class PartStore {
 public:
  // Appends to one part; what was written stays when it is dropped.
  class Writer {
   public:
    Writer(Writer&& other) noexcept;
    Writer& operator=(Writer&&) = delete;
    ~Writer();
    Status write(std::span<const std::uint8_t> bytes);
    std::uint64_t size_bytes() const { return size_bytes_; }

   private:
    friend class PartStore;
    Writer(PartStore& store, std::string name, std::unique_ptr<FileWriter> file,
           std::uint64_t size_bytes);
    PartStore* store_;
    std::string name_;
    std::unique_ptr<FileWriter> file_;
    std::uint64_t size_bytes_;
  };

  // `whole` and `files` outlive the store. Makes the folder (its parent must be there).
  static Result<std::unique_ptr<PartStore>> open(Files& files, std::filesystem::path folder,
                                                 BlobStore& whole);

  Status begin(const std::string& name);  // empty; AlreadyDone when it is there
  Result<std::uint64_t> size_bytes(const std::string& name) const;
  Result<Writer> append(const std::string& name, std::uint64_t offset);
  Status finish(const std::string& name, const BlobName& expected);
  Status remove(const std::string& name);
  Result<std::vector<FolderItem>> list() const;

 private:
  // The hash of what was written since the part was empty, so that finish() need not read it.
  struct Known {
    Hasher hasher;
    std::uint64_t size_bytes = 0;
    bool writing = false;
    bool from_start = false;
  };
  PartStore(Files& files, std::filesystem::path folder, BlobStore& whole);
  Result<std::filesystem::path> path_of(const std::string& name) const;
  Result<Hash> hash_of(const std::string& name, const std::filesystem::path& file);

  Files& files_;
  std::filesystem::path folder_;
  BlobStore& whole_;
  std::mutex mutex_;  // guards the one below
  std::map<std::string, Known> known_;
};

}  // namespace jambline::blobs
