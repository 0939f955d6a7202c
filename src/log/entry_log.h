// log/entry_log.h: the append-only log; the only truth on this device.
//
// Shape:   entries of this and of other devices in SQLite (log.db), each as frozen bytes, found by
//          (device, seq), by hash, by subject and by arrival number. Receipts and pull cursors live
//          beside them so that a page and its cursor commit together.
// Durable: WAL and synchronous=FULL, set and read back at open. When append() or add() returns, the
//          entries survive power loss; an action is there whole or not at all.
// Guards:  triggers refuse UPDATE and DELETE of entries. Erasing a payload of an erasable kind is
//          the one narrow way, and leaves header, hash and signature as they are.
// Threads: one owner (the work lane). Readers open their own Reader; a read lasts one query.
// Errors:  DiskFull, ReadOnly, DatabaseDamaged, NewerSchema, ChainBroken, BadSignature, Fork,
//          NotAdmitted, WrongShop, WrongKey, TooLarge, NotErasable. Never throws.
// Source:  seal/FORMAT.md; decision D-004 in DEVELOPERS.md.
#pragma once

#include <cstdint>
#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <span>
#include <stop_token>
#include <string>
#include <vector>

#include "base/clock.h"
#include "base/error.h"
#include "base/random.h"
#include "seal/header.h"
#include "seal/membership.h"
#include "seal/sign.h"

namespace jambline::log {

// What a caller wants written; the log adds everything else of the header.
struct Draft {
  JobId subject;         // zero = the shop's own stream
  std::uint16_t kind{};
  std::uint16_t schema{};
  std::string payload;   // UTF-8 JSON
};

using Arrival = std::int64_t;  // 1, 2, 3 ... in the order in which entries came to this device

struct Stored {
  Arrival arrival{};
  seal::SealedEntry entry;
};

struct Head {
  DeviceId device;
  std::uint64_t seq{};
  Hash hash;
};

// What a check found; `proven_to` says how far anything is proven (FORMAT.md section 7).
struct Audit {
  std::uint64_t entries = 0;
  std::uint64_t erased = 0;
  std::vector<Head> heads;            // one a device
  std::optional<Error> first_bad;     // args: device, seq
  ShopId shop;
};

enum class OpenMode : std::uint8_t { Write, ReadOnly };

class EntryLog {
 public:
  // Opens or makes log.db in `folder`. A newer schema opens read-only and says so by newer_schema().
  // Checks the last 1,000 links of this device before it returns.
  static Result<std::unique_ptr<EntryLog>> open(const std::filesystem::path& folder, OpenMode mode);
  virtual ~EntryLog() = default;

  // Writes ShopFounded as seq 1 of an empty log and returns its entry.
  virtual Result<Stored> found_shop(const seal::SigningKey& key, const std::string& device_name,
                                    const Moment& moment, Random& random) = 0;

  // One action: k drafts become k entries with one action id in one transaction, or none does.
  virtual Result<std::vector<Stored>> append(const seal::SigningKey& key, const PersonId& person,
                                             std::span<const Draft> drafts, const Moment& moment,
                                             Random& random) = 0;

  // Entries of other devices (or of this one, coming back): checks chain, membership, signature and
  // limits; what is already there with the same hash is skipped and not returned. All or nothing.
  virtual Result<std::vector<Stored>> add(std::span<const seal::SealedEntry> entries) = 0;

  // Appends PayloadErased and wipes the target's payload and salt in the same transaction.
  // `erasable` is the caller's list of kinds whose payload may go.
  virtual Result<Stored> erase_payload(const seal::SigningKey& key, const PersonId& person,
                                       const Hash& target, const std::string& reason,
                                       std::span<const std::uint16_t> erasable,
                                       const Moment& moment, Random& random) = 0;

  virtual bool newer_schema() const = 0;
  virtual bool writable() const = 0;
  virtual ShopId shop() const = 0;  // zero while empty
  virtual std::vector<Head> heads() const = 0;
  virtual Arrival last_arrival() const = 0;

  // In arrival order; `visit` returns false to stop early.
  using Visit = std::function<bool(const Stored&)>;
  virtual Status read_after(Arrival arrival, const Visit& visit) = 0;
  virtual Status read_job(const JobId& subject, const Visit& visit) = 0;
  virtual Status read_device(const DeviceId& device, std::uint64_t from_seq, const Visit& visit) = 0;
  virtual Result<std::optional<Stored>> find(const Hash& hash) = 0;

  // The whole check: chain, hashes, signatures, gaps, membership, payloads. Opens its own reader,
  // so it may run on another thread than the owner's.
  static Result<Audit> audit(const std::filesystem::path& folder, std::stop_token stop,
                             const std::function<void(double part_done)>& progress);
};

}  // namespace jambline::log
