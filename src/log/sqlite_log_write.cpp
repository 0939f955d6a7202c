#include <algorithm>
#include <cmath>
#include <tuple>

#include "base/json.h"
#include "log/sqlite_log.h"
#include "seal/digest.h"
#include "seal/hlc.h"

namespace jambline::log {

namespace {
constexpr std::int64_t start_of_2025_ms = 1735689600000;
constexpr std::int64_t most_clock_gap_ms = 120'000;
constexpr std::uint32_t appends_between_ballast_looks = 64;
constexpr std::uint16_t shop_schema = 1;

Error refusal(Code code, std::string operation, const DeviceId& device, std::uint64_t seq) {
  return Error{code, std::move(operation), "log.db", {}}
      .with("device", device.hex())
      .with("seq", std::to_string(seq));
}

// Everything of an entry that follows from its header's other fields and its payload.
void seal_into(seal::SealedEntry& entry, std::string payload, const seal::SigningKey& key,
               Random& random) {
  entry.payload = std::move(payload);
  entry.salt = random.make<seal::Salt>();
  entry.header.payload_bytes = static_cast<std::uint32_t>(entry.payload.size());
  entry.header.payload_hash = seal::payload_hash(entry.salt, entry.payload);
  entry.hash = seal::entry_hash(seal::encode(entry.header));
  entry.signature = key.sign(entry.hash);
}

// A hash is 64 hex signs wherever it stands, and so is the one that takes its place.
std::string with_new_names(std::string payload, const std::map<std::string, std::string>& names) {
  constexpr std::size_t signs = 2 * Hash::size;
  for (std::size_t at = 0; at + signs <= payload.size();) {
    const auto found = names.find(payload.substr(at, signs));
    if (found != names.end()) payload.replace(at, signs, found->second);
    at += found != names.end() ? signs : 1;
  }
  return payload;
}

Error malformed(std::string operation, std::string field) {
  return Error{Code::Malformed, std::move(operation), "log.db", {}}.with("field", std::move(field));
}
}  // namespace

// What one transaction will write, and what the log will know once it is committed.
struct SqliteLog::Writing {
  std::vector<Stored> entries;
  std::vector<seal::SealedEntry> refilled;  // payloads that had been left out and came now
  Page page{};
  Tails tails;
  seal::Members members;
  ShopId shop;
  DeviceId device;
};

Status SqliteLog::may_write() const {
  if (file_.newer_schema) return fail(Code::NewerSchema, "write", "log.db");
  if (!writable()) return fail(Code::ReadOnly, "write", "log.db");
  return {};
}

bool SqliteLog::erasable(std::uint16_t kind) const {
  if (seal::is_membership(kind) || kind == seal::kind::payload_erased) return false;
  return !options_.erasable || options_.erasable(kind);
}

// An entry's clock goes past every entry of the log that is not far ahead of the wall clock.
std::uint64_t SqliteLog::next_hlc(const DeviceId& device, std::int64_t wall_ms) const {
  seal::Hlc latest;
  for (const auto& [of, tail] : tails_) {
    const seal::Hlc hlc = seal::Hlc::unpack(tail.hlc);
    if (of == device || seal::hlc_believable(hlc, wall_ms)) latest = std::max(latest, hlc);
  }
  return seal::hlc_local(latest, wall_ms).packed();
}

Status SqliteLog::own_key(const seal::SigningKey& key) const {
  if (device_ && key.device() != device_)
    return fail(Error{Code::WrongKey, "append", "log.db", {}}.with("device", key.device().hex()));
  return {};
}

Result<std::vector<Stored>> SqliteLog::seal_and_store(
    const seal::SigningKey& key, const PersonId& person, std::span<const Draft> drafts,
    const Moment& moment, Random& random, const ShopId& shop,
    std::span<const seal::SealedEntry> again, Renamed* renamed) {
  if (drafts.empty() || drafts.size() > UINT8_MAX) return fail(malformed("append", "drafts"));
  const DeviceId device = key.device();
  Writing writing{{}, {}, {}, tails_, members_, shop, device};
  const auto known = writing.tails.find(device);
  const bool first = known == writing.tails.end();
  Tail tail = first ? Tail{} : known->second;
  if (first && shop_) {
    const seal::Member* member = members_.find(device);
    if (!member || member->admitted_by.empty())
      return fail(refusal(Code::NotAdmitted, "append", device, 1));
    tail.hash = member->admitted_by.front();
  }

  seal::Header header;
  header.shop = shop;
  header.device = device;
  header.wall_ms = moment.wall_ms;
  header.offset_min = moment.offset_min;
  header.boot = moment.boot;
  header.boottime_ms = moment.since_boot_ms;
  header.person = person;
  header.action = random.make<ActionId>();
  header.parts = static_cast<std::uint8_t>(drafts.size());
  header.hlc = next_hlc(device, moment.wall_ms);
  if (moment.wall_ms < start_of_2025_ms) header.clock_flags |= seal::clock_flag::before_2025;
  if (!first) {
    if (moment.wall_ms < tail.wall_ms) header.clock_flags |= seal::clock_flag::stepped_back;
    const auto by_wall = static_cast<double>(moment.wall_ms) - static_cast<double>(tail.wall_ms);
    const auto by_boot =
        static_cast<double>(moment.since_boot_ms) - static_cast<double>(tail.boottime_ms);
    if (moment.boot == tail.boot && std::abs(by_wall - by_boot) > most_clock_gap_ms)
      header.clock_flags |= seal::clock_flag::jumped;
  }

  for (const Draft& draft : drafts) {
    if (draft.payload.size() > seal::most_payload_bytes)
      return fail(Error{Code::TooLarge, "append", "log.db", {}}.with(
          "limit", std::to_string(seal::most_payload_bytes)));
    Stored stored;
    auto& entry = stored.entry;
    header.seq = tail.seq + 1;
    header.prev_hash = tail.hash;
    if (header.part > 0)
      header.hlc = seal::hlc_local(seal::Hlc::unpack(header.hlc), moment.wall_ms).packed();
    ++header.part;
    header.subject = draft.subject;
    header.kind = draft.kind;
    header.schema = draft.schema;
    entry.header = header;
    seal_into(entry, draft.payload, key, random);
    JAMBLINE_TRY(writing.members.apply(entry));
    JAMBLINE_TRY(writing.members.may(device, header.seq, entry.hash));
    if (seal::is_membership(draft.kind)) {
      const seal::Member* member = writing.members.find(device);
      if (!member || !member->manager)
        return fail(refusal(Code::NotAllowed, "append", device, header.seq));
    }
    tail = {header.seq, entry.hash, header.hlc, header.wall_ms, header.boot, header.boottime_ms};
    writing.entries.push_back(std::move(stored));
  }
  std::map<std::string, std::string> names;  // of what is said again, as they stand in payloads
  if (renamed)
    for (const auto& [old_hash, new_hash] : *renamed) names[old_hash.hex()] = new_hash.hex();
  for (const auto& origin : again) {
    Stored stored;
    auto& entry = stored.entry;
    entry.header = origin.header;
    entry.header.device = device;
    entry.header.seq = tail.seq + 1;
    entry.header.prev_hash = tail.hash;
    seal_into(entry, with_new_names(origin.payload, names), key, random);
    names[origin.hash.hex()] = entry.hash.hex();
    JAMBLINE_TRY(writing.members.may(device, entry.header.seq, entry.hash));
    tail.seq = entry.header.seq;  // its clock stays that of the entry before
    tail.hash = entry.hash;
    writing.entries.push_back(std::move(stored));
  }
  writing.tails[device] = tail;
  JAMBLINE_TRY(store(writing));
  return std::move(writing.entries);
}

Result<Stored> SqliteLog::found_shop(const seal::SigningKey& key, const std::string& device_name,
                                     const Moment& moment, Random& random) {
  JAMBLINE_TRY(may_write());
  if (last_ > 0) return fail(Code::AlreadyDone, "found shop", "log.db");
  const auto nonce = random.make<seal::Salt>();
  const Draft draft{{},
                    seal::kind::shop_founded,
                    shop_schema,
                    to_json(seal::ShopFounded{key.key(), nonce, device_name})};
  JAMBLINE_ASSIGN(auto stored, seal_and_store(key, {}, {&draft, 1}, moment, random,
                                              seal::shop_id(key.key(), nonce)));
  return std::move(stored.front());
}

Result<std::vector<Stored>> SqliteLog::append(const seal::SigningKey& key, const PersonId& person,
                                              std::span<const Draft> drafts, const Moment& moment,
                                              Random& random) {
  JAMBLINE_TRY(may_write());
  if (!shop_) return fail(Code::NotYet, "append", "log.db");
  JAMBLINE_TRY(own_key(key));
  for (const Draft& draft : drafts)
    if (draft.kind == seal::kind::shop_founded || draft.kind == seal::kind::payload_erased)
      return fail(Error{Code::NotAllowed, "append", "log.db", {}}.with("field", "kind"));
  return seal_and_store(key, person, drafts, moment, random, shop_);
}

Result<std::vector<Stored>> SqliteLog::say_again(const seal::SigningKey& key,
                                                 const PersonId& person, const Draft& first,
                                                 std::span<const seal::SealedEntry> origins,
                                                 Renamed& renamed, const Moment& moment,
                                                 Random& random) {
  JAMBLINE_TRY(may_write());
  if (!shop_) return fail(Code::NotYet, "say again", "log.db");
  JAMBLINE_TRY(own_key(key));
  std::vector<seal::SealedEntry> again;
  for (const auto& origin : origins) {
    if (origin.header.shop != shop_) return fail(Code::WrongShop, "say again", "log.db");
    JAMBLINE_TRY(seal::check_payload(origin));
    if (origin.erased || seal::is_membership(origin.header.kind) ||
        origin.header.kind == seal::kind::payload_erased)
      continue;
    again.push_back(origin);
  }
  if (again.empty()) return fail(Code::Unknown, "say again", "log.db");
  JAMBLINE_ASSIGN(auto stored,
                  seal_and_store(key, person, {&first, 1}, moment, random, shop_, again, &renamed));
  for (std::size_t i = 0; i < again.size(); ++i) renamed[again[i].hash] = stored[i + 1].entry.hash;
  return stored;
}

Result<Stored> SqliteLog::erase_payload(const seal::SigningKey& key, const PersonId& person,
                                        const Hash& target, const std::string& reason,
                                        std::span<const std::uint16_t> erasable_kinds,
                                        const Moment& moment, Random& random) {
  JAMBLINE_TRY(may_write());
  if (!shop_) return fail(Code::NotYet, "erase", "log.db");
  JAMBLINE_TRY(own_key(key));
  JAMBLINE_ASSIGN(const auto found, find(target));
  if (!found) return fail(Error{Code::Unknown, "erase", "log.db", {}}.with("field", "target"));
  const auto& entry = found->entry;
  const bool listed = std::find(erasable_kinds.begin(), erasable_kinds.end(), entry.header.kind) !=
                      erasable_kinds.end();
  if (!listed || !erasable(entry.header.kind))
    return fail(refusal(Code::NotErasable, "erase", entry.header.device, entry.header.seq));
  if (entry.erased)
    return fail(refusal(Code::AlreadyDone, "erase", entry.header.device, entry.header.seq));
  const Draft draft{entry.header.subject, seal::kind::payload_erased, shop_schema,
                    to_json(seal::PayloadErased{target, reason})};
  JAMBLINE_ASSIGN(auto stored, seal_and_store(key, person, {&draft, 1}, moment, random, shop_));
  // The old bytes also stood in the write-ahead log; a reader may hold this up, not stop it.
  (void)file_.database.run("PRAGMA wal_checkpoint(TRUNCATE)");
  return std::move(stored.front());
}

// True when the entry is new and was taken into `writing`, false when it is already there.
Result<bool> SqliteLog::check_new(Writing& writing, const seal::SealedEntry& given) {
  const seal::Header& header = given.header;
  const auto refuse = [&](Code code) {
    return fail(refusal(code, "add", header.device, header.seq));
  };
  if (header.seq < 1 || header.seq > seal::last_seq || header.part < 1 ||
      header.part > header.parts)
    return refuse(Code::Malformed);
  if (header.payload_bytes > seal::most_payload_bytes) return refuse(Code::TooLarge);
  if (given.hash != seal::entry_hash(seal::encode(header))) return refuse(Code::BadHash);
  if (writing.shop && header.shop != writing.shop) return refuse(Code::WrongShop);
  if (given.erased && !erasable(header.kind)) return refuse(Code::NotErasable);
  if (given.erased && (given.salt || !given.payload.empty())) return refuse(Code::Malformed);
  JAMBLINE_TRY(seal::check_payload(given));

  const auto known = writing.tails.find(header.device);
  const std::uint64_t last = known == writing.tails.end() ? 0 : known->second.seq;
  if (header.seq <= last) {
    std::optional<seal::SealedEntry> there;
    for (const Stored& stored : writing.entries)
      if (stored.entry.header.device == header.device && stored.entry.header.seq == header.seq)
        there = stored.entry;
    if (!there)
      JAMBLINE_TRY(read_device(header.device, header.seq, [&there](const Stored& stored) {
        there = stored.entry;
        return false;
      }));
    if (!there || there->hash != given.hash) return refuse(Code::Fork);
    if (there->erased && !given.erased) writing.refilled.push_back(given);
    return false;
  }

  seal::Members members = writing.members;
  const bool joins = seal::is_membership(header.kind);
  if (joins) (void)members.apply(given);  // badly made or not a manager's: kept, admits nobody
  const seal::Member* member = members.find(header.device);
  if (!member) return refuse(Code::NotAdmitted);
  if (!seal::verify(member->key, given.hash.bytes, given.signature))
    return refuse(Code::BadSignature);
  // Who was not revoked before this entry may write it, also when it is a revocation of itself.
  const Status may = (joins && writing.members.find(header.device) ? writing.members : members)
                         .may(header.device, header.seq, given.hash);
  // A hub may have taken it before it knew of the cut. Then it is in everybody's log, and obeyed by
  // nobody; who refused it would never get what comes after it.
  const bool after_cut = !may && may.error().code == Code::Revoked;
  if (!may && !(after_cut && !members.hubs().empty())) return fail(may.error());
  seal::ChainWalk walk(&members);
  if (last > 0) walk.start_at(header.device, {last, known->second.hash});
  JAMBLINE_TRY(walk.next(header, given.hash));

  if (!writing.shop) writing.shop = members.shop();
  if (joins) writing.members = std::move(members);
  writing.tails[header.device] = {header.seq,     given.hash,  header.hlc,
                                  header.wall_ms, header.boot, header.boottime_ms};
  writing.entries.push_back({0, given});
  return true;
}

Result<std::vector<Stored>> SqliteLog::add(std::span<const seal::SealedEntry> entries) {
  return add_page({entries, {}, std::nullopt});
}

Result<std::vector<Stored>> SqliteLog::add_page(const Page& page) {
  JAMBLINE_TRY(may_write());
  Writing writing{{}, {}, page, tails_, members_, shop_, device_};
  // In the order given; what waits for another entry of the page comes in later rounds.
  std::vector<const seal::SealedEntry*> waiting;
  for (const auto& entry : page.entries) waiting.push_back(&entry);
  bool sorted = false;
  while (!waiting.empty()) {
    std::vector<const seal::SealedEntry*> still;
    std::optional<Error> first_refusal;
    for (const auto* entry : waiting) {
      auto taken = check_new(writing, *entry);
      if (taken) continue;
      const Code code = taken.error().code;
      if (code != Code::NotAdmitted && code != Code::ChainBroken)
        return fail(std::move(taken.error()));
      if (!first_refusal) first_refusal = std::move(taken.error());
      still.push_back(entry);
    }
    if (sorted && still.size() == waiting.size()) return fail(std::move(*first_refusal));
    if (!sorted) {
      sorted = true;
      std::stable_sort(still.begin(), still.end(), [](const auto* a, const auto* b) {
        return std::tie(a->header.device, a->header.seq) <
               std::tie(b->header.device, b->header.seq);
      });
    }
    waiting = std::move(still);
  }
  for (const auto& receipt : page.receipts) {
    if (!seal::verify(receipt)) return fail(Code::BadSignature, "add", "receipt");
    if (receipt.shop != writing.shop) return fail(Code::WrongShop, "add", "receipt");
    if (!writing.members.hubs().contains(receipt.hub))
      return fail(Code::NotAdmitted, "add", "receipt");
  }
  JAMBLINE_TRY(store(writing));
  return std::move(writing.entries);
}

Status SqliteLog::insert(Writing& writing, Stored& stored) {
  auto& entry = stored.entry;
  const auto bytes = seal::encode(entry.header);
  if (!entry.erased && erasable(entry.header.kind)) {
    JAMBLINE_ASSIGN(Statement * gone, kept("SELECT 1 FROM erasures WHERE target=?"));
    gone->bind(1, entry.hash.bytes);
    JAMBLINE_ASSIGN(const bool erased, gone->step());
    gone->reset();
    if (erased) {
      entry.erased = true;
      entry.salt = {};
      entry.payload.clear();
    }
  }
  JAMBLINE_ASSIGN(Statement * row,
                  kept("INSERT INTO entries(arrival, device, seq, hash, subject, kind, header, "
                       "signature, salt, payload, erased) VALUES(?,?,?,?,?,?,?,?,?,?,?)"));
  row->bind(1, stored.arrival);
  row->bind(2, entry.header.device.bytes);
  row->bind(3, static_cast<std::int64_t>(entry.header.seq));
  row->bind(4, entry.hash.bytes);
  row->bind(5, entry.header.subject.bytes);
  row->bind(6, entry.header.kind);
  row->bind(7, bytes);
  row->bind(8, entry.signature.bytes);
  row->bind(9, entry.salt.bytes);
  row->bind(10, seal::bytes_of(entry.payload));
  row->bind(11, entry.erased ? 1 : 0);
  JAMBLINE_TRY(row->finish());
  if (entry.header.kind != seal::kind::payload_erased) return {};
  const auto erased = from_json<seal::PayloadErased>(entry.payload);
  if (!erased) return {};  // badly made: kept, erases nothing
  for (Stored& other : writing.entries)
    if (other.entry.hash == erased->target && erasable(other.entry.header.kind)) {
      other.entry.erased = true;
      other.entry.salt = {};
      other.entry.payload.clear();
    }
  return erase_target(erased->target, entry.hash);
}

Status SqliteLog::erase_target(const Hash& target, const Hash& by) {
  JAMBLINE_ASSIGN(Statement * note,
                  kept("INSERT OR IGNORE INTO erasures(target, by_entry) VALUES(?,?)"));
  note->bind(1, target.bytes);
  note->bind(2, by.bytes);
  JAMBLINE_TRY(note->finish());
  JAMBLINE_ASSIGN(const auto found, find(target));
  if (!found || found->entry.erased || !erasable(found->entry.header.kind)) return {};
  JAMBLINE_ASSIGN(Statement * wipe, kept("UPDATE entries SET erased=1, salt=zeroblob(16), "
                                         "payload=x'' WHERE hash=?"));
  wipe->bind(1, target.bytes);
  return wipe->finish();
}

Status SqliteLog::store_once(Writing& writing) {
  JAMBLINE_ASSIGN(Statement * begin, kept("BEGIN IMMEDIATE"));
  JAMBLINE_TRY(begin->finish());
  Arrival arrival = last_;
  for (Stored& stored : writing.entries) {
    stored.arrival = ++arrival;
    JAMBLINE_TRY(insert(writing, stored));
  }
  for (const auto& entry : writing.refilled) {
    JAMBLINE_ASSIGN(Statement * fill,
                    kept("UPDATE entries SET erased=0, salt=?, payload=? WHERE hash=? AND erased=1 "
                         "AND NOT EXISTS (SELECT 1 FROM erasures WHERE target=hash)"));
    fill->bind(1, entry.salt.bytes);
    fill->bind(2, seal::bytes_of(entry.payload));
    fill->bind(3, entry.hash.bytes);
    JAMBLINE_TRY(fill->finish());
  }
  for (const auto& receipt : writing.page.receipts) {
    const std::string bytes = seal::encode(receipt);
    JAMBLINE_ASSIGN(Statement * row,
                    kept("INSERT OR REPLACE INTO receipts(device, seq, hub, epoch, bytes) "
                         "VALUES(?,?,?,?,?)"));
    row->bind(1, receipt.device.bytes);
    row->bind(2, static_cast<std::int64_t>(receipt.seq));
    row->bind(3, receipt.hub.bytes);
    row->bind(4, receipt.epoch.bytes);
    row->bind(5, seal::bytes_of(bytes));
    JAMBLINE_TRY(row->finish());
  }
  if (writing.page.cursor) {
    JAMBLINE_ASSIGN(Statement * row,
                    kept("INSERT OR REPLACE INTO cursors(peer, value) VALUES(?,?)"));
    row->bind_text(1, writing.page.cursor->peer);
    row->bind_text(2, writing.page.cursor->value);
    JAMBLINE_TRY(row->finish());
  }
  const auto note = [this](const char* name, const auto& id) -> Status {
    JAMBLINE_ASSIGN(Statement * row, kept("INSERT INTO about(name, value) VALUES(?,?)"));
    row->bind_text(1, name);
    row->bind(2, id.bytes);
    return row->finish();
  };
  if (writing.shop != shop_) JAMBLINE_TRY(note("shop", writing.shop));
  if (writing.device != device_) JAMBLINE_TRY(note("device", writing.device));
  JAMBLINE_ASSIGN(Statement * commit, kept("COMMIT"));
  return commit->finish();
}

Status SqliteLog::store(Writing& writing) {
  if (writing.entries.empty() && writing.refilled.empty() && writing.page.receipts.empty() &&
      !writing.page.cursor)
    return {};
  const auto attempt = [&]() -> Status {
    Status done = store_once(writing);
    if (done) return done;
    if (file_.database.in_transaction()) (void)file_.database.run("ROLLBACK");
    return done;
  };
  Status done = attempt();
  if (!done && done.error().code == Code::DiskFull && ballast_.spend()) done = attempt();
  JAMBLINE_TRY(std::move(done));
  last_ += static_cast<Arrival>(writing.entries.size());
  tails_ = std::move(writing.tails);
  members_ = std::move(writing.members);
  shop_ = writing.shop;
  device_ = writing.device;
  if (++since_ballast_look_ % appends_between_ballast_looks == 0) ballast_.keep();
  return {};
}

}  // namespace jambline::log
