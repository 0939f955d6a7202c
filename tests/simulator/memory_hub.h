// tests/simulator/memory_hub.h: a hub's shop in memory, held to the same pages as the one on disk.
//
// Shape:   MemoryShop is the disk: it lives on when a hub "restarts", can be copied (a backup) and
//          copied back. MemoryHubStorage and MemoryHubFiles work on one; each call is whole.
// Faults:  `full` gives DiskFull to whatever would write; damage() and lose() are the disk's.
// Tests:   tests/hub/storage_conformance.h, tests/hub/files_conformance.h.
#pragma once

#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <unordered_map>
#include <vector>

#include "seal/sign.h"
#include "sync/hub_files.h"
#include "sync/hub_storage.h"

namespace jambline::test {

struct MemoryShop {
  struct Kept {
    DeviceId device;
    std::uint64_t seq{};
    std::uint16_t kind{};
    Hash hash;
    std::string bytes;
  };
  struct Apart {
    DeviceId device;
    std::uint64_t seq{};
    std::uint16_t kind{};
    Hash hash;
    std::string bytes;
    std::int64_t received_ms{};
  };
  using BlobBytes = std::shared_ptr<const std::string>;

  ShopId shop;
  seal::Epoch epoch;
  std::vector<Kept> entries;  // hub_seq is the place + 1
  std::map<DeviceId, std::vector<std::size_t>> places;
  std::unordered_map<Hash, std::size_t> by_hash;
  std::set<Hash> erased;
  std::vector<seal::Receipt> receipts;
  std::vector<Apart> apart;
  std::map<DeviceId, std::uint64_t> settled;
  std::vector<sync::Invited> invited;
  std::map<DeviceId, sync::SeenDevice> seen;
  std::uint64_t blob_mark = 0;
  std::map<Hash, BlobBytes> blobs;
  std::map<std::string, std::string> parts;
  bool full = false;
  std::size_t most_read = 0;  // entries in one go of read_after(); 0: all

  void damage(const Hash& blob);  // flips a bit
  void lose(const Hash& blob);
  std::vector<Hash> damaged() const;  // as a scrub finds them
};

// What the restore tool does with a backup: a new epoch, receipts signed in it, and the mark that
// makes devices ask for all files again.
MemoryShop restored(const MemoryShop& backup, const seal::Epoch& epoch, std::uint64_t blob_mark,
                    const seal::SigningKey& hub);

class MemoryHubStorage final : public sync::HubStorage {
 public:
  using Erasable = std::function<bool(std::uint16_t kind)>;
  MemoryHubStorage(std::shared_ptr<MemoryShop> shop, Erasable erasable)
      : at_(std::move(shop)), erasable_(std::move(erasable)) {}

  ShopId shop() const override { return at_->shop; }
  seal::Epoch epoch() const override { return at_->epoch; }
  std::uint64_t hub_seq() const override { return at_->entries.size(); }
  Result<std::vector<sync::Head>> heads() override;
  Result<std::optional<Hash>> hash_at(const DeviceId& device, std::uint64_t seq) override;
  Result<std::vector<seal::SealedEntry>> membership() override;
  Result<seal::Receipt> append(std::span<const seal::SealedEntry> entries,
                               std::span<const Hash> erased,
                               const sync::SignReceipt& sign) override;
  Result<std::optional<seal::Receipt>> last_receipt(const DeviceId& device) override;
  Status read_after(std::uint64_t hub_seq, const Visit& visit) override;
  Result<std::vector<seal::Receipt>> receipts(std::uint64_t after, std::uint64_t through,
                                              std::size_t most) override;
  Status keep_apart(std::span<const seal::SealedEntry> entries, std::int64_t now_ms) override;
  Result<std::vector<sync::Quarantined>> quarantine() override;
  Status read_apart(const DeviceId& device, std::uint64_t from_seq,
                    const std::function<bool(std::string_view bytes)>& visit) override;
  Status settle(const DeviceId& device, std::uint64_t through) override;
  Status put_invited(const sync::Invited& invited) override;
  Result<std::vector<sync::Invited>> invited() override { return at_->invited; }
  Status drop_invited(const Hash& code) override;
  Status note_seen(const DeviceId& device, std::int64_t now_ms) override;
  Status note_fork(const DeviceId& device, std::uint64_t seq, std::int64_t now_ms) override;
  Result<std::vector<sync::SeenDevice>> seen() override;
  std::uint64_t blob_mark() const override { return at_->blob_mark; }
  Status blobs_lost() override;

 private:
  Status room() const;
  std::string kept_bytes(const seal::SealedEntry& entry) const;

  std::shared_ptr<MemoryShop> at_;
  Erasable erasable_;
};

class MemoryHubFiles final : public sync::HubFiles {
 public:
  explicit MemoryHubFiles(std::shared_ptr<MemoryShop> shop) : at_(std::move(shop)) {}

  Result<bool> has(const Hash& blob) override;
  Result<std::uint64_t> size_bytes(const Hash& blob) override;
  Result<std::unique_ptr<sync::FileSource>> read(const Hash& blob, std::uint64_t offset) override;
  Status begin(const sync::UploadId& upload) override;
  Result<std::uint64_t> offset(const sync::UploadId& upload) override;
  Result<std::unique_ptr<sync::FileSink>> append(const sync::UploadId& upload,
                                                 std::uint64_t offset) override;
  Status finish(const sync::UploadId& upload) override;
  Status drop(const sync::UploadId& upload) override;

 private:
  std::shared_ptr<MemoryShop> at_;
  std::shared_ptr<std::set<std::string>> writing_ = std::make_shared<std::set<std::string>>();
};

}  // namespace jambline::test
