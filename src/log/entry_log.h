// log/entry_log.h: the append-only log; the only truth on this device.
//
// Shape:   entries of this and of other devices in SQLite (log.db), each as frozen bytes, found by
//          (device, seq), by hash, by subject and by arrival number. Receipts and pull cursors live
//          beside them so that a page and its cursor commit together.
// Durable: WAL and synchronous=FULL, set and read back at open. When append() or add() returns, the
//          entries survive power loss; an action is there whole or not at all.
// Guards:  triggers refuse UPDATE and DELETE of entries. Erasing a payload of an erasable kind is
//          the one narrow way, and leaves header, hash and signature as they are.
//          A log open for writing holds the folder's lock (folder_lock.h) as long as it lives, and
//          keeps a ballast file that is given up when the disk is full (disk_low()).
// Threads: one owner (the work lane). Readers on other threads open a log of their own in
//          OpenMode::ReadOnly, which sees what was committed; a read lasts one query.
// Errors:  DiskFull, FolderInUse, ReadOnly, DatabaseDamaged, NewerSchema, ChainBroken,
// BadSignature, Fork,
//          NotAdmitted, Revoked, WrongShop, WrongKey, BadHash, TooLarge, NotErasable,
//          NotAllowed, Malformed, AlreadyDone, NotYet (no shop yet). Never throws.
//          A failed write leaves the log as it was.
// Source:  seal/FORMAT.md; decision D-004 in DEVELOPERS.md.
#pragma once

#include <cstdint>
#include <filesystem>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <span>
#include <stop_token>
#include <string>
#include <string_view>
#include <vector>

#include "base/clock.h"
#include "base/error.h"
#include "base/random.h"
#include "seal/header.h"
#include "seal/membership.h"
#include "seal/receipt.h"
#include "seal/sign.h"

namespace jambline::log {

// What a caller wants written; the log adds everything else of the header.
struct Draft {
  JobId subject;  // zero = the shop's own stream
  std::uint16_t kind{};
  std::uint16_t schema{};
  std::string payload;  // UTF-8 JSON
};

using Renamed = std::map<Hash, Hash>;  // of entries said again: the hash of each, and its new one

using Arrival = std::int64_t;  // 1, 2, 3 ... in the order in which entries came to this device

struct Stored {
  Arrival arrival{};
  seal::SealedEntry entry;
};

// What the folds need of an entry. `payload` is only there until the visit returns.
struct Said {
  Arrival arrival{};
  Hash hash;
  seal::Header header;
  std::string_view payload;
  bool erased = false;
};

struct Head {
  DeviceId device;
  std::uint64_t seq{};
  Hash hash;
};

// What a check found. Each head says how far its device's entries are proven: nothing can be said
// about entries after it, except that a receipt may name a later one (FORMAT.md section 7).
struct Audit {
  std::uint64_t entries = 0;
  std::uint64_t erased = 0;
  std::uint64_t after_cut = 0;  // came before their device's revocation was known; do not count
  std::uint64_t receipts = 0;
  std::vector<Head> heads;         // one a device
  std::optional<Error> first_bad;  // args: device, seq
  ShopId shop;
};

enum class OpenMode : std::uint8_t { Write, ReadOnly };

// Whether a payload of this kind may go. Membership and PayloadErased never do, whatever it says.
using Erasable = std::function<bool(std::uint16_t kind)>;

struct OpenOptions {
  Erasable erasable;                        // for add(); empty = every kind but those above
  std::uint64_t ballast_bytes = 8U << 20U;  // 0 = no ballast
  std::string vfs;                          // SQLite VFS by name; empty = the usual one
};

// How far a pull from a peer has come; a note of the caller's, kept word for word.
struct Cursor {
  std::string peer;
  std::string value;
};

// What one answer of a hub brings; all of it is kept together or nothing is.
struct Page {
  std::span<const seal::SealedEntry> entries;
  std::span<const seal::Receipt> receipts;
  std::optional<Cursor> cursor;
};

// Chain: headers, hashes and links. Whole: signatures, membership, payloads and receipts too.
enum class AuditDepth : std::uint8_t { Chain, Whole };

class EntryLog {
 public:
  // Opens or makes log.db in `folder`. A newer schema opens read-only and says so by
  // newer_schema(). Checks the last 1,000 links of this device before it returns. A damaged log is
  // refused and nothing on the disk is changed.
  static Result<std::unique_ptr<EntryLog>> open(const std::filesystem::path& folder, OpenMode mode,
                                                const OpenOptions& options = {});
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

  virtual Result<std::vector<Stored>> add_page(const Page& page) = 0;

  // Appends PayloadErased and wipes the target's payload and salt in the same transaction.
  // `erasable` is the caller's list of kinds whose payload may go.
  virtual Result<Stored> erase_payload(const seal::SigningKey& key, const PersonId& person,
                                       const Hash& target, const std::string& reason,
                                       std::span<const std::uint16_t> erasable,
                                       const Moment& moment, Random& random) = 0;

  // Says again what entries of another device say: `first` is appended, which names them, then each
  // of `origins` with its person, subject, times, action, kind and payload, in this device's chain
  // and signed by it. Where a payload names one of `origins`, or one of `renamed`, by its hash it
  // names the new entry instead; `renamed` grows by what was said. Membership, erasures and erased
  // entries are left out (Unknown when nothing is left). All or nothing.
  virtual Result<std::vector<Stored>> say_again(const seal::SigningKey& key, const PersonId& person,
                                                const Draft& first,
                                                std::span<const seal::SealedEntry> origins,
                                                Renamed& renamed, const Moment& moment,
                                                Random& random) = 0;

  virtual bool newer_schema() const = 0;
  virtual bool writable() const = 0;
  virtual bool disk_low() const = 0;    // the ballast was given up: entries only, no pictures
  virtual ShopId shop() const = 0;      // zero while empty
  virtual DeviceId device() const = 0;  // who appends here; zero before the first append
  virtual const seal::Members& members() const = 0;
  virtual std::vector<Head> heads() const = 0;
  virtual Arrival last_arrival() const = 0;

  // In arrival order; `visit` returns false to stop early.
  using Visit = std::function<bool(const Stored&)>;
  virtual Status read_after(Arrival arrival, const Visit& visit) = 0;
  using VisitSaid = std::function<bool(const Said&)>;
  virtual Status said_after(Arrival arrival, const VisitSaid& visit) = 0;
  virtual Status said_of(const JobId& subject, const VisitSaid& visit) = 0;
  virtual Status read_device(const DeviceId& device, std::uint64_t from_seq,
                             const Visit& visit) = 0;
  virtual Result<std::optional<Stored>> find(const Hash& hash) = 0;

  virtual Result<std::vector<seal::Receipt>> receipts() = 0;
  // The receipt of this hub and epoch that reaches furthest for the device.
  virtual Result<std::optional<seal::Receipt>> last_receipt(const DeviceId& device,
                                                            const seal::Key& hub,
                                                            const seal::Epoch& epoch) = 0;
  virtual Result<std::optional<std::string>> cursor(const std::string& peer) = 0;

  // The whole check: chain, hashes, signatures, gaps, membership, payloads. Opens its own reader,
  // so it may run on another thread than the owner's. An error is returned only when nothing could
  // be checked at all; what the check finds is in Audit::first_bad.
  static Result<Audit> audit(const std::filesystem::path& folder, const std::stop_token& stop,
                             const std::function<void(double part_done)>& progress,
                             AuditDepth depth = AuditDepth::Whole);
};

}  // namespace jambline::log
