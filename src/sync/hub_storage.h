// sync/hub_storage.h: what a hub keeps of one shop, behind one interface.
//
// Rule:    hub_seq counts a shop's entries 1, 2, 3 ... in the order of commit, without gaps, in one
//          epoch. An entry's bytes are kept as they came; only the payload of one that an erasure
//          names is wiped.
// Durable: what a call has returned survives power loss; a call happens whole or not at all.
// Threads: one owner at a time (the shop's).
// Errors:  DiskFull, DatabaseDamaged, FileFailed, ReadOnly; Fork from append() when (device, seq)
//          is there already: then nothing was written.
// Tests:   tests/hub/storage_conformance.h holds every implementation to this page.
#pragma once

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "seal/membership.h"
#include "sync/messages.h"

namespace jambline::sync {

using SignReceipt =
    std::function<seal::Receipt(std::uint64_t hub_seq_first, std::uint64_t hub_seq_last)>;

// A code that was given out, and who used it.
struct Invited {
  Hash code;  // code_words()
  std::int64_t until_ms{};
  bool for_a_shop = false;  // a shop may come with it
  std::optional<Pending> used_by = {};
  bool refused = false;
};

class HubStorage {
 public:
  virtual ~HubStorage() = default;
  virtual ShopId shop() const = 0;
  virtual seal::Epoch epoch() const = 0;
  virtual std::uint64_t hub_seq() const = 0;  // of the last entry; 0: none

  virtual Result<std::vector<Head>> heads() = 0;
  virtual Result<std::optional<Hash>> hash_at(const DeviceId& device, std::uint64_t seq) = 0;
  // Whole membership entries in the order in which they came.
  virtual Result<std::vector<seal::SealedEntry>> membership() = 0;

  // Entries of one device, following what is there, and the receipt that `sign` makes for them.
  // `erased` are entries whose payload goes with it, wherever they are or come later.
  virtual Result<seal::Receipt> append(std::span<const seal::SealedEntry> entries,
                                       std::span<const Hash> erased, const SignReceipt& sign) = 0;
  virtual Result<std::optional<seal::Receipt>> last_receipt(const DeviceId& device) = 0;

  // In the order of hub_seq, frozen bytes (seal::encode); `visit` returns false to stop.
  using Visit = std::function<bool(std::uint64_t hub_seq, const DeviceId& device, std::uint64_t seq,
                                   std::string_view bytes)>;
  virtual Status read_after(std::uint64_t hub_seq, const Visit& visit) = 0;
  // Those with hub_seq_last in (after, through], in that order, at most `most`.
  virtual Result<std::vector<seal::Receipt>> receipts(std::uint64_t after, std::uint64_t through,
                                                      std::size_t most) = 0;

  // Entries after a cut: kept apart, each (device, seq, hash) once.
  virtual Status keep_apart(std::span<const seal::SealedEntry> entries, std::int64_t now_ms) = 0;
  virtual Result<std::vector<Quarantined>> quarantine() = 0;
  virtual Status read_apart(const DeviceId& device, std::uint64_t from_seq,
                            const std::function<bool(std::string_view bytes)>& visit) = 0;
  virtual Status settle(const DeviceId& device, std::uint64_t through) = 0;

  virtual Status put_invited(const Invited& invited) = 0;  // by its code: new or changed
  virtual Result<std::vector<Invited>> invited() = 0;      // newest last
  virtual Status drop_invited(const Hash& code) = 0;

  virtual Status note_seen(const DeviceId& device, std::int64_t now_ms) = 0;
  virtual Status note_fork(const DeviceId& device, std::uint64_t seq, std::int64_t now_ms) = 0;
  virtual Result<std::vector<SeenDevice>> seen() = 0;

  virtual std::uint64_t blob_mark() const = 0;
  virtual Status blobs_lost() = 0;  // the mark grows
};

}  // namespace jambline::sync
