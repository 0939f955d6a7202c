// tests/blobs/faulty_files.h: a disk in memory that can lose power, fill up and refuse.
//
// Shape:  bytes written are live at once and durable after sync(); names made, renamed or removed
//         are live at once and durable after sync_folder. Every call that changes or syncs
//         something is one operation, counted from 1.
// Faults: power_off_at(n): operation n and all later ones do not happen. refuse_at(n, code): only
//         operation n fails, having done nothing. full_at_write(n): the n-th write takes half its
//         bytes and gives DiskFull, as do all later ones until room_again().
// Loss:   after_power_loss(loss, seed) is the disk as the next start finds it.
#pragma once

#include <cstdint>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/random.h"
#include "blobs/file_layer.h"

namespace jambline::test {

enum class Loss : std::uint8_t {
  Dropped,    // nothing unsynced is left: neither bytes nor names
  NamesKept,  // unsynced names are there, unsynced bytes are not
  BytesKept,  // unsynced bytes are there, unsynced names are not
  Torn,       // of both a random part; blocks of a torn file are old, new, zero or cut off
};

class FaultyFiles final : public blobs::Files {
 public:
  FaultyFiles();

  Result<std::unique_ptr<blobs::FileWriter>> create(const Path& file) override;
  Result<std::unique_ptr<blobs::FileWriter>> append(const Path& file) override;
  Result<std::unique_ptr<blobs::FileReader>> open(const Path& file) override;
  Status rename(const Path& from, const Path& to) override;
  Status remove(const Path& file) override;
  Status make_folder(const Path& folder) override;
  Status sync_folder(const Path& folder) override;
  Result<std::vector<blobs::FolderItem>> list(const Path& folder) override;
  Result<std::uint64_t> size_bytes(const Path& file) override;
  Result<std::uint64_t> free_bytes(const Path& folder) override;

  std::uint64_t operations() const { return operations_; }
  std::uint64_t writes() const { return writes_; }
  void power_off_at(std::uint64_t operation) { off_at_ = operation; }
  void refuse_at(std::uint64_t operation, Code code) { refuse_at_ = operation, refusal_ = code; }
  void full_at_write(std::uint64_t write) { full_at_ = write; }
  void room_again() { full_at_.reset(); }
  bool is_off() const { return off_at_ && operations_ >= *off_at_; }

  std::unique_ptr<FaultyFiles> after_power_loss(Loss loss, std::uint64_t seed) const;
  void damage(const Path& file);  // flips one bit of a file, live and durable

 private:
  friend class FaultyWriter;
  struct Node;
  using Names = std::map<std::string, std::shared_ptr<Node>>;
  struct Node {
    bool is_folder = false;
    std::vector<std::uint8_t> bytes, durable_bytes;
    Names names, durable_names;
  };
  using Copies = std::map<const Node*, std::shared_ptr<Node>>;

  Status count(const char* operation, const Path& subject);
  std::shared_ptr<Node> find(const Path& path) const;
  Result<std::shared_ptr<Node>> folder_of(const char* operation, const Path& path) const;
  static std::shared_ptr<Node> lost(const Node& node, Loss loss, SeededRandom& random,
                                    Copies& copies);
  static std::vector<std::uint8_t> lost_bytes(const Node& node, Loss loss, SeededRandom& random);

  std::shared_ptr<Node> root_;
  std::uint64_t operations_ = 0;
  std::uint64_t writes_ = 0;
  std::optional<std::uint64_t> off_at_;
  std::optional<std::uint64_t> refuse_at_;
  std::optional<std::uint64_t> full_at_;
  Code refusal_ = Code::FileFailed;
};

}  // namespace jambline::test
