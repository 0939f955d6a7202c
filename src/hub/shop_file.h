// hub/shop_file.h: what a hub keeps of one shop, in one SQLite file.
//
// Shape:   shops/<32 hex>/shop.db in WAL with synchronous=FULL, and `epoch` beside it
//          (hub/epoch_file.h). Entries are appended with kept statements, one transaction a push.
//          Only entries of kinds whose payload may be erased are found by their hash.
// Durable: as sync/hub_storage.h promises.
// Errors:  those of sync/hub_storage.h; of open() also NoSuchFile, NewerSchema, and NotYet (args:
//          what = "restore", cause) when the database is not the one that the epoch file tells of.
// Threads: one owner at a time. Other connections to the same file may read meanwhile.
#pragma once

#include <filesystem>
#include <map>
#include <memory>
#include <set>

#include "hub/epoch_file.h"
#include "sqlite/sqlite.h"
#include "sync/hub_storage.h"

namespace jambline::hub {

inline constexpr const char* shop_file_name = "shop.db";

struct ShopFileOptions {
  std::vector<std::uint16_t> erasable_kinds = {};
  std::string vfs = {};         // empty: the system's
  std::int64_t most_pages = 0;  // of 4 KiB; DiskFull beyond. 0: as many as the disk has
};

class SqliteHubStorage final : public sync::HubStorage {
 public:
  // Makes the database and the epoch file in a folder that is there and has none.
  static Status make(const std::filesystem::path& folder, const ShopId& shop,
                     const seal::Epoch& epoch);
  static Result<std::unique_ptr<SqliteHubStorage>> open(std::filesystem::path folder,
                                                        const ShopFileOptions& options);
  ~SqliteHubStorage() override;

  ShopId shop() const override { return shop_; }
  seal::Epoch epoch() const override { return epoch_; }
  std::uint64_t hub_seq() const override { return hub_seq_; }
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
  Result<std::vector<sync::Invited>> invited() override;
  Status drop_invited(const Hash& code) override;
  Status note_seen(const DeviceId& device, std::int64_t now_ms) override;
  Status note_fork(const DeviceId& device, std::uint64_t seq, std::int64_t now_ms) override;
  Result<std::vector<sync::SeenDevice>> seen() override;
  std::uint64_t blob_mark() const override { return blob_mark_; }
  Status blobs_lost() override;

 private:
  explicit SqliteHubStorage(std::filesystem::path folder) : folder_(std::move(folder)) {}
  Status load();
  Status check_epoch_file();
  Status find_erasable_kinds();
  Status prepare();
  template <class Work>
  Status whole(Work work);
  Status insert(std::span<const seal::SealedEntry> entries, std::uint64_t hub_seq);
  Status note_erasable(const seal::SealedEntry& entry, std::uint64_t hub_seq);
  Result<std::string> kept_bytes(const seal::SealedEntry& entry);
  Result<bool> is_erased(const Hash& hash);
  Status erase(const Hash& target);
  Status empty_wal();
  void note_reached(bool closing);

  std::filesystem::path folder_;
  std::set<std::uint16_t> erasable_;
  ShopId shop_;
  seal::Epoch epoch_;
  std::uint64_t hub_seq_ = 0;
  std::uint64_t blob_mark_ = 0;
  std::uint64_t noted_hub_seq_ = 0;  // in the epoch file
  bool wal_to_empty_ = false;        // it may still hold bytes that were erased
  std::map<DeviceId, sync::Head> heads_;
  sqlite::Database database_;  // before its statements: it goes last
  sqlite::Statement insert_;
  sqlite::Statement insert_many_;
  sqlite::Statement insert_receipt_;
  sqlite::Statement read_after_;
  sqlite::Statement receipts_;
  sqlite::Statement last_receipt_;
  sqlite::Statement hash_at_;
  sqlite::Statement is_erased_;
  sqlite::Statement note_seen_;
};

// A database that nobody else has open may be given a new life: a new epoch, its receipts signed in
// it, and the mark that makes devices ask for all files again. For the restore tool.
Status begin_new_epoch(const std::filesystem::path& shop_folder, const seal::Epoch& epoch,
                       std::uint64_t blob_mark_grows_by, const seal::SigningKey& hub);

}  // namespace jambline::hub
