// log/sqlite_log.h: EntryLog over SQLite; for log/*.cpp only.
#pragma once

#include <map>
#include <optional>

#include "log/ballast.h"
#include "log/entry_log.h"
#include "log/open_file.h"
#include "seal/chain.h"

namespace jambline::log {

// The columns of an entry, in the order in which read_row() takes them.
#define JAMBLINE_ENTRY_COLUMNS "arrival, hash, header, signature, salt, payload, erased"
// Fills `out` from the row on which the statement stands; false when the row cannot be one of ours.
bool read_row(const Statement& row, Stored& out);
Error damaged_row(Arrival arrival);

class SqliteLog final : public EntryLog {
 public:
  static Result<std::unique_ptr<SqliteLog>> make(const std::filesystem::path& folder,
                                                 const OpenOptions& options, OpenFile file);

  Result<Stored> found_shop(const seal::SigningKey& key, const std::string& device_name,
                            const Moment& moment, Random& random) override;
  Result<std::vector<Stored>> append(const seal::SigningKey& key, const PersonId& person,
                                     std::span<const Draft> drafts, const Moment& moment,
                                     Random& random) override;
  Result<std::vector<Stored>> add(std::span<const seal::SealedEntry> entries) override;
  Result<std::vector<Stored>> add_page(const Page& page) override;
  Result<Stored> erase_payload(const seal::SigningKey& key, const PersonId& person,
                               const Hash& target, const std::string& reason,
                               std::span<const std::uint16_t> erasable, const Moment& moment,
                               Random& random) override;

  Result<std::vector<Stored>> say_again(const seal::SigningKey& key, const PersonId& person,
                                        const Draft& first,
                                        std::span<const seal::SealedEntry> origins,
                                        Renamed& renamed, const Moment& moment,
                                        Random& random) override;

  bool newer_schema() const override { return file_.newer_schema; }
  bool writable() const override { return file_.lock.has_value(); }
  bool disk_low() const override { return ballast_.missing(); }
  ShopId shop() const override { return shop_; }
  DeviceId device() const override { return device_; }
  const seal::Members& members() const override { return members_; }
  std::vector<Head> heads() const override;
  Arrival last_arrival() const override;

  Status read_after(Arrival arrival, const Visit& visit) override;
  Status said_after(Arrival arrival, const VisitSaid& visit) override;
  Status said_of(const JobId& subject, const VisitSaid& visit) override;
  Status read_device(const DeviceId& device, std::uint64_t from_seq, const Visit& visit) override;
  Result<std::optional<Stored>> find(const Hash& hash) override;
  Result<std::vector<seal::Receipt>> receipts() override;
  Result<std::optional<seal::Receipt>> last_receipt(const DeviceId& device, const seal::Key& hub,
                                                    const seal::Epoch& epoch) override;
  Result<std::optional<std::string>> cursor(const std::string& peer) override;

 private:
  struct Tail {  // the last entry of a device
    std::uint64_t seq{};
    Hash hash;
    std::uint64_t hlc{};
    std::int64_t wall_ms{};
    BootId boot;
    std::uint64_t boottime_ms{};
  };
  using Tails = std::map<DeviceId, Tail>;
  struct Writing;  // one transaction being put together

  SqliteLog(const std::filesystem::path& folder, const OpenOptions& options, OpenFile file);
  Status load();
  Status load_tails();
  Status check_own_links();
  void refresh() const;  // a reading log: what was committed since

  Status may_write() const;
  Status own_key(const seal::SigningKey& key) const;
  Result<std::vector<Stored>> seal_and_store(const seal::SigningKey& key, const PersonId& person,
                                             std::span<const Draft> drafts, const Moment& moment,
                                             Random& random, const ShopId& shop,
                                             std::span<const seal::SealedEntry> again = {},
                                             Renamed* renamed = nullptr);
  std::uint64_t next_hlc(const DeviceId& device, std::int64_t wall_ms) const;
  Result<bool> check_new(Writing& writing, const seal::SealedEntry& entry);
  Status store(Writing& writing);
  Status store_once(Writing& writing);
  Status insert(Writing& writing, Stored& stored);
  Status erase_target(const Hash& target, const Hash& by);
  bool erasable(std::uint16_t kind) const;
  Result<Statement*> kept(const char* sql);
  Status read(Statement& rows, const Visit& visit);
  Status read_with(const char* sql, const std::function<void(Statement&)>& bind,
                   const Visit& visit);

  OpenOptions options_;
  OpenFile file_;
  Ballast ballast_;
  std::map<const char*, Statement> statements_;  // by the address of their text
  ShopId shop_;
  DeviceId device_;
  seal::Members members_;
  Tails tails_;
  Arrival last_ = 0;
  std::int64_t data_version_ = -1;
  std::uint32_t since_ballast_look_ = 0;
};

}  // namespace jambline::log
