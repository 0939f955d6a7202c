// blobs/blob_store.h: pictures and other files, whole on disk under their SHA-256.
//
// Shape:   a blob's name is the plain SHA-256 of its bytes; its file is aa/bb/<64 hex> below the
//          store's folder, where aa and bb are the first two bytes. Files in the making are in
//          incoming/ and are removed at the next open.
// Durable: when put() or Writer::finish() gives a name, the blob survives power loss: bytes synced,
//          then renamed, then the folder synced. Any file under a blob's name was whole before it
//          got that name; one that no longer fits its name was damaged by the disk.
// Damage:  get(), check() and scrub() hash again what they read. A damaged file is named (BadHash)
//          and left where it is; storing the right bytes again replaces it.
// Threads: any; a Writer has one owner. One process a folder (its lock is not taken here).
// Errors:  DiskFull, ReadOnly, NoSuchFile, BadHash (args: found), TooLarge (args: limit_bytes),
//          FileFailed (args: cause). After an error nothing half-written has a blob's name.
// Source:  decision D-005 in DEVELOPERS.md; FIPS 180-4.
#pragma once

#include <cstdint>
#include <filesystem>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <set>
#include <span>
#include <stop_token>
#include <string>
#include <vector>

#include "base/error.h"
#include "base/ids.h"
#include "blobs/file_layer.h"
#include "blobs/hasher.h"

namespace jambline::blobs {

using BlobName = Hash;
using Progress = std::function<void(double part_done)>;

struct ScrubReport {
  std::uint64_t blobs = 0;
  std::uint64_t bytes = 0;
  std::vector<BlobName> damaged;
  std::vector<Error> unreadable;
  std::vector<std::string> strange;  // files and folders that are no blob, below the store's folder
  bool stopped = false;              // not everything was looked at
};

struct CopyReport {
  std::uint64_t copied = 0;
  std::uint64_t already_there = 0;
  std::vector<BlobName> damaged;  // in `from`, or unreadable there; not copied
  std::vector<BlobName> missing;  // in `from`
  bool stopped = false;
};

class BlobStore {
 public:
  // A blob that arrives in pieces. Dropped unfinished, it leaves nothing behind.
  class Writer {
   public:
    Writer(Writer&& other) noexcept = default;
    Writer& operator=(Writer&&) = delete;
    ~Writer();
    // The first error ends the writer: all further calls give it again.
    Status write(std::span<const std::uint8_t> bytes);
    // With `expected`, other bytes than those are BadHash and are not kept.
    Result<BlobName> finish(const std::optional<BlobName>& expected = std::nullopt);

   private:
    friend class BlobStore;
    Writer(BlobStore& store, std::filesystem::path temp, std::unique_ptr<FileWriter> file);
    Status note(Status status);
    void drop();

    BlobStore* store_;
    std::filesystem::path temp_;
    std::unique_ptr<FileWriter> file_;
    Hasher hasher_;
    std::optional<Error> ended_;
  };

  // Makes the folder (its parent must be there) and removes what a crash left in incoming/.
  static Result<std::unique_ptr<BlobStore>> open(Files& files, std::filesystem::path folder);
  // Changes nothing on disk; begin() and put() give ReadOnly.
  static Result<std::unique_ptr<BlobStore>> open_read_only(Files& files,
                                                           std::filesystem::path folder);

  Result<BlobName> put(std::span<const std::uint8_t> bytes);
  // Takes in a file of the same disk that has these bytes and is synced: its caller says so.
  Status adopt(const std::filesystem::path& file, const BlobName& name);
  Result<Writer> begin();

  Result<std::vector<std::uint8_t>> get(const BlobName& name,
                                        std::uint64_t limit_bytes = 64U << 20U) const;
  Status check(const BlobName& name) const;
  // The file as it is, from `offset` on; nothing is hashed again.
  Result<std::unique_ptr<FileReader>> open_at(const BlobName& name, std::uint64_t offset) const;
  // Gone for good, also after power loss; one that is not there is NoSuchFile.
  Status remove(const BlobName& name);
  Result<bool> has(const BlobName& name) const;  // by its file's name; check() reads it
  Result<std::uint64_t> size_bytes(const BlobName& name) const;
  Result<std::vector<BlobName>> list() const;  // sorted
  Result<ScrubReport> scrub(const std::stop_token& stop, const Progress& progress) const;
  Result<std::uint64_t> free_bytes() const;
  std::filesystem::path path_of(const BlobName& name) const;

 private:
  struct Found {
    BlobName name;
    std::uint64_t size_bytes;
  };
  BlobStore(Files& files, std::filesystem::path folder, bool writable);
  Status prepare();
  Status publish(const std::filesystem::path& temp, const BlobName& name);
  Status make_durable_folder(const std::filesystem::path& folder);
  using Piece = std::function<Status(std::span<const std::uint8_t>)>;
  Status read(const BlobName& name, const Piece& piece) const;
  Status walk(std::vector<Found>& found, std::vector<std::string>* strange) const;
  friend Result<CopyReport> copy_blobs(const BlobStore&, BlobStore&, std::span<const BlobName>,
                                       const std::stop_token&, const Progress&);

  Files& files_;
  std::filesystem::path folder_;
  bool writable_;
  std::mutex mutex_;  // guards the two below
  std::set<std::filesystem::path> durable_folders_;
  std::uint64_t last_temp_ = 0;
};

// Export and import: copies the named blobs from one store into another, each hashed on its way. A
// damaged or missing one is named and the others go on; an error of `to` ends it.
Result<CopyReport> copy_blobs(const BlobStore& from, BlobStore& to, std::span<const BlobName> names,
                              const std::stop_token& stop, const Progress& progress);

}  // namespace jambline::blobs
