#include "hub/shop_file.h"

#include <algorithm>

#include "base/json.h"
#include "hub/shop_schema.h"
#include "hub/small_file.h"
#include "seal/digest.h"

namespace jambline::hub {

namespace fs = std::filesystem;
using seal::SealedEntry;
using sqlite::Database;
using sqlite::Statement;

namespace {
constexpr std::uint64_t entries_between_notes = 4096;
constexpr std::size_t many_rows = 10;

std::span<const std::uint8_t> view_of(std::string_view text) {
  return {reinterpret_cast<const std::uint8_t*>(text.data()), text.size()};
}
std::string_view text_of(std::span<const std::uint8_t> bytes) {
  return {reinterpret_cast<const char*>(bytes.data()), bytes.size()};
}
Error damaged_shop(std::string cause) {
  return Error{Code::DatabaseDamaged, "read", shop_file_name, {}}.with("cause", std::move(cause));
}
std::int64_t signed_of(std::uint64_t number) {
  return static_cast<std::int64_t>(number);
}
std::uint64_t unsigned_of(std::int64_t number) {
  return static_cast<std::uint64_t>(number);
}

std::string without_payload(const SealedEntry& entry) {
  SealedEntry out = entry;
  out.salt = {};
  out.payload.clear();
  out.erased = true;
  return seal::encode(out);
}

Status put_about(Database& database, std::string_view name,
                 const std::function<void(Statement&)>& bind_value) {
  JAMBLINE_ASSIGN(Statement put, database.prepare("INSERT INTO about(name, value) VALUES(?1, ?2) "
                                                  "ON CONFLICT(name) DO UPDATE SET value=?2"));
  put.bind_text(1, name);
  bind_value(put);
  return put.finish();
}

// True when there is such a row; `read` then looks at its one column.
Result<bool> about_row(Database& database, std::string_view name,
                       const std::function<bool(Statement&)>& read) {
  JAMBLINE_ASSIGN(Statement find, database.prepare("SELECT value FROM about WHERE name=?"));
  find.bind_text(1, name);
  JAMBLINE_ASSIGN(const bool there, find.step());
  if (there && !read(find)) return fail(damaged_shop("about " + std::string(name)));
  return there;
}

std::string words_of(const std::set<std::uint16_t>& kinds) {
  std::string out;
  for (const std::uint16_t kind : kinds) out += (out.empty() ? "" : ",") + std::to_string(kind);
  return out;
}
}  // namespace

Status SqliteHubStorage::make(const fs::path& folder, const ShopId& shop,
                              const seal::Epoch& epoch) {
  JAMBLINE_TRY(write_epoch(folder, {epoch, 0}));
  const fs::path made = folder / "shop.db.new";
  {
    JAMBLINE_ASSIGN(Database database, Database::open(made, Database::Mode::Create, {}));
    JAMBLINE_TRY(make_shop_schema(database));
    JAMBLINE_TRY(set_shop_durable(database));
    JAMBLINE_TRY(database.run("BEGIN IMMEDIATE"));
    JAMBLINE_TRY(put_about(database, "shop", [&](Statement& put) { put.bind(2, shop.bytes); }));
    JAMBLINE_TRY(put_about(database, "epoch", [&](Statement& put) { put.bind(2, epoch.bytes); }));
    JAMBLINE_TRY(
        put_about(database, "blob_mark", [](Statement& put) { put.bind(2, std::int64_t{1}); }));
    JAMBLINE_TRY(database.run("COMMIT"));
  }
  return rename_durably(made, folder / shop_file_name);
}

Result<std::unique_ptr<SqliteHubStorage>> SqliteHubStorage::open(fs::path folder,
                                                                 const ShopFileOptions& options) {
  std::unique_ptr<SqliteHubStorage> out(new SqliteHubStorage(std::move(folder)));
  out->erasable_.insert(options.erasable_kinds.begin(), options.erasable_kinds.end());
  for (std::uint16_t kind = 0; kind <= seal::kind::payload_erased; ++kind)
    out->erasable_.erase(kind);
  Database& database = out->database_;
  JAMBLINE_ASSIGN(
      database, Database::open(out->folder_ / shop_file_name, Database::Mode::Write, options.vfs));
  if (database.only_reading()) return fail(Code::ReadOnly, "open", shop_file_name);
  JAMBLINE_TRY(check_shop_schema(database));
  JAMBLINE_TRY(set_shop_durable(database));
  JAMBLINE_TRY(upgrade_shop_schema(database));
  if (options.most_pages > 0)
    JAMBLINE_TRY(
        database.run(("PRAGMA max_page_count=" + std::to_string(options.most_pages)).c_str()));
  JAMBLINE_TRY(out->load());
  JAMBLINE_TRY(out->check_epoch_file());
  JAMBLINE_TRY(out->prepare());
  JAMBLINE_TRY(out->find_erasable_kinds());
  return out;
}

SqliteHubStorage::~SqliteHubStorage() {
  note_reached(true);
}

Status SqliteHubStorage::load() {
  const auto bytes = [&](const char* name, auto& out) -> Status {
    JAMBLINE_ASSIGN(const bool there,
                    about_row(database_, name, [&](Statement& row) { return row.read(0, out); }));
    if (!there) return fail(damaged_shop(std::string("about ") + name));
    return {};
  };
  JAMBLINE_TRY(bytes("shop", shop_));
  JAMBLINE_TRY(bytes("epoch", epoch_));
  JAMBLINE_ASSIGN(const bool marked, about_row(database_, "blob_mark", [&](Statement& row) {
                    blob_mark_ = unsigned_of(row.number(0));
                    return true;
                  }));
  if (!marked) return fail(damaged_shop("about blob_mark"));

  JAMBLINE_ASSIGN(const std::int64_t last, database_.number("SELECT max(hub_seq) FROM entries"));
  hub_seq_ = unsigned_of(last);
  // From device to device over the index, without looking at every receipt.
  JAMBLINE_ASSIGN(
      Statement rows,
      database_.prepare("WITH RECURSIVE devices(device) AS ("
                        " SELECT min(device) FROM receipts UNION ALL"
                        " SELECT (SELECT min(device) FROM receipts WHERE device > devices.device)"
                        " FROM devices WHERE device IS NOT NULL) "
                        "SELECT bytes FROM receipts WHERE (device, seq_last) IN ("
                        " SELECT device, (SELECT max(seq_last) FROM receipts AS r WHERE r.device = "
                        "devices.device) FROM devices WHERE device IS NOT NULL)"));
  for (;;) {
    JAMBLINE_ASSIGN(const bool more, rows.step());
    if (!more) return {};
    JAMBLINE_ASSIGN(const seal::Receipt last_one, seal::decode_receipt(rows.bytes(0)));
    heads_[last_one.device] = {last_one.device, last_one.seq, last_one.hash};
  }
}

Status SqliteHubStorage::check_epoch_file() {
  const auto refuse = [&](std::string cause) {
    return fail(Error{Code::NotYet, "open", "shop " + shop_.hex(), {}}
                    .with("what", "restore")
                    .with("cause", std::move(cause)));
  };
  const auto said = read_epoch(folder_);
  if (!said && said.error().code == Code::NoSuchFile)
    return refuse("the file epoch beside the database is missing");
  if (!said) return fail(said.error());
  if (said->epoch != epoch_) return refuse("the database is of another epoch");
  if (said->hub_seq > hub_seq_)
    return refuse("the database has " + std::to_string(hub_seq_) + " entries and had " +
                  std::to_string(said->hub_seq));
  noted_hub_seq_ = said->hub_seq;
  return {};
}

Status SqliteHubStorage::prepare() {
  const auto make = [&](Statement& out, const char* sql) -> Status {
    JAMBLINE_ASSIGN(out, database_.prepare(sql));
    return {};
  };
  std::string rows = "INSERT INTO entries(hub_seq, kind, bytes) VALUES";
  JAMBLINE_TRY(make(insert_, (rows + "(?,?,?)").c_str()));
  for (std::size_t i = 0; i < many_rows; ++i) rows += i == 0 ? "(?,?,?)" : ",(?,?,?)";
  JAMBLINE_TRY(make(insert_many_, rows.c_str()));
  JAMBLINE_TRY(
      make(insert_receipt_,
           "INSERT INTO receipts(hub_seq_last, device, seq_last, bytes) VALUES(?, ?, ?, ?)"));
  JAMBLINE_TRY(
      make(read_after_, "SELECT hub_seq, bytes FROM entries WHERE hub_seq > ? ORDER BY hub_seq"));
  JAMBLINE_TRY(make(receipts_,
                    "SELECT bytes FROM receipts WHERE hub_seq_last > ? AND hub_seq_last <= ? "
                    "ORDER BY hub_seq_last LIMIT ?"));
  JAMBLINE_TRY(make(last_receipt_,
                    "SELECT bytes FROM receipts WHERE device = ? "
                    "ORDER BY seq_last DESC LIMIT 1"));
  // What came together lies together: the receipt of the run says where.
  JAMBLINE_TRY(make(hash_at_,
                    "SELECT bytes FROM entries WHERE hub_seq = ("
                    " SELECT hub_seq_last - (seq_last - ?2) FROM receipts"
                    " WHERE device = ?1 AND seq_last >= ?2 ORDER BY seq_last LIMIT 1)"));
  JAMBLINE_TRY(make(is_erased_, "SELECT 1 FROM erasures WHERE target = ?"));
  return make(note_seen_,
              "INSERT INTO seen(device, seen_ms) VALUES(?1, ?2) "
              "ON CONFLICT(device) DO UPDATE SET seen_ms = ?2");
}

// Which kinds may be erased is said by the program; a newer one may know more of them.
Status SqliteHubStorage::find_erasable_kinds() {
  const std::string now = words_of(erasable_);
  std::string before;
  JAMBLINE_ASSIGN(const bool there, about_row(database_, "erasable_kinds", [&](Statement& row) {
                    before = row.text(0);
                    return true;
                  }));
  if (there && before == now) return {};
  return whole([&]() -> Status {
    JAMBLINE_TRY(database_.run("DELETE FROM erasable"));
    {
      JAMBLINE_ASSIGN(Statement rows,
                      database_.prepare(("SELECT hub_seq, bytes FROM entries WHERE substr(bytes, "
                                         "271, 1) = x'00' AND kind IN (" +
                                         now + ")")
                                            .c_str()));
      for (;;) {
        JAMBLINE_ASSIGN(const bool more, rows.step());
        if (!more) break;
        JAMBLINE_ASSIGN(const auto entry, seal::decode_entry(rows.bytes(1)));
        JAMBLINE_TRY(note_erasable(entry, unsigned_of(rows.number(0))));
      }
    }
    std::vector<Hash> targets;
    {
      JAMBLINE_ASSIGN(Statement rows, database_.prepare("SELECT target FROM erasures"));
      for (;;) {
        JAMBLINE_ASSIGN(const bool more, rows.step());
        if (!more) break;
        if (!rows.read(0, targets.emplace_back())) return fail(damaged_shop("an erasure"));
      }
    }
    for (const Hash& target : targets) JAMBLINE_TRY(erase(target));
    return put_about(database_, "erasable_kinds", [&](Statement& put) { put.bind_text(2, now); });
  });
}

// All of it or nothing.
template <class Work>
Status SqliteHubStorage::whole(Work work) {
  JAMBLINE_TRY(database_.run("BEGIN IMMEDIATE"));
  Status done = work();
  if (done) done = database_.run("COMMIT");
  if (!done && database_.in_transaction()) (void)database_.run("ROLLBACK");
  return done;
}

Result<std::vector<sync::Head>> SqliteHubStorage::heads() {
  std::vector<sync::Head> out;
  for (const auto& [device, head] : heads_) out.push_back(head);
  return out;
}

Result<std::optional<Hash>> SqliteHubStorage::hash_at(const DeviceId& device, std::uint64_t seq) {
  if (seq == 0 || seq > seal::last_seq) return std::optional<Hash>();
  hash_at_.reset();
  hash_at_.bind(1, device.bytes);
  hash_at_.bind(2, signed_of(seq));
  JAMBLINE_ASSIGN(const bool there, hash_at_.step());
  std::optional<Hash> out;
  if (there) {
    JAMBLINE_ASSIGN(const auto entry, seal::decode_entry(hash_at_.bytes(0)));
    if (entry.header.device != device || entry.header.seq != seq)
      return fail(damaged_shop("a receipt and its entries"));
    out = entry.hash;
  }
  hash_at_.reset();
  return out;
}

Result<std::vector<SealedEntry>> SqliteHubStorage::membership() {
  std::vector<SealedEntry> out;
  JAMBLINE_ASSIGN(Statement rows, database_.prepare("SELECT bytes FROM entries WHERE kind BETWEEN "
                                                    "1 AND 4 ORDER BY hub_seq"));
  for (;;) {
    JAMBLINE_ASSIGN(const bool more, rows.step());
    if (!more) return out;
    JAMBLINE_ASSIGN(out.emplace_back(), seal::decode_entry(rows.bytes(0)));
  }
}

Result<bool> SqliteHubStorage::is_erased(const Hash& hash) {
  is_erased_.reset();
  is_erased_.bind(1, hash.bytes);
  JAMBLINE_ASSIGN(const bool there, is_erased_.step());
  is_erased_.reset();
  return there;
}

Result<std::string> SqliteHubStorage::kept_bytes(const SealedEntry& entry) {
  if (!entry.erased && erasable_.contains(entry.header.kind)) {
    JAMBLINE_ASSIGN(const bool gone, is_erased(entry.hash));
    if (gone) return without_payload(entry);
  }
  return seal::encode(entry);
}

// Many at a time cost half of one at a time.
Status SqliteHubStorage::insert(std::span<const SealedEntry> entries, std::uint64_t hub_seq) {
  std::array<std::string, many_rows> bytes;
  while (!entries.empty()) {
    const std::size_t count = entries.size() < many_rows ? 1 : many_rows;
    Statement& put = count == 1 ? insert_ : insert_many_;
    for (std::size_t i = 0; i < count; ++i) {
      const SealedEntry& entry = entries[i];
      JAMBLINE_ASSIGN(bytes[i], kept_bytes(entry));
      const int place = static_cast<int>(i) * 3;
      put.bind(place + 1, signed_of(hub_seq + i));
      put.bind(place + 2, std::int64_t{entry.header.kind});
      put.bind(place + 3, view_of(bytes[i]));
    }
    JAMBLINE_TRY(put.finish());
    for (std::size_t i = 0; i < count; ++i)
      if (bytes[i].size() > seal::entry_fixed_bytes)
        JAMBLINE_TRY(note_erasable(entries[i], hub_seq + i));
    entries = entries.subspan(count);
    hub_seq += count;
  }
  return {};
}

Status SqliteHubStorage::note_erasable(const SealedEntry& entry, std::uint64_t hub_seq) {
  if (!erasable_.contains(entry.header.kind)) return {};
  JAMBLINE_ASSIGN(Statement place,
                  database_.prepare("INSERT OR IGNORE INTO erasable(hash, hub_seq) VALUES(?, ?)"));
  place.bind(1, entry.hash.bytes);
  place.bind(2, signed_of(hub_seq));
  return place.finish();
}

// The payload of what is here, among the entries or apart from them.
Status SqliteHubStorage::erase(const Hash& target) {
  const auto wipe = [&](const char* find_sql, const char* put_sql) -> Status {
    JAMBLINE_ASSIGN(Statement find, database_.prepare(find_sql));
    find.bind(1, target.bytes);
    for (;;) {
      JAMBLINE_ASSIGN(const bool there, find.step());
      if (!there) return {};
      const std::int64_t place = find.number(0);
      JAMBLINE_ASSIGN(const auto entry, seal::decode_entry(find.bytes(1)));
      find.reset();  // the row that is read may not change under it
      if (entry.erased || !erasable_.contains(entry.header.kind)) return {};
      const std::string bytes = without_payload(entry);
      JAMBLINE_ASSIGN(Statement put, database_.prepare(put_sql));
      put.bind(1, view_of(bytes));
      put.bind(2, place);
      JAMBLINE_TRY(put.finish());
    }
  };
  JAMBLINE_TRY(
      wipe("SELECT entries.hub_seq, bytes FROM erasable JOIN entries USING(hub_seq) "
           "WHERE erasable.hash = ? AND substr(bytes, 271, 1) = x'00'",
           "UPDATE entries SET bytes = ? WHERE hub_seq = ?"));
  JAMBLINE_TRY(
      wipe("SELECT arrival, bytes FROM apart WHERE hash = ? AND substr(bytes, 271, 1) = x'00'",
           "UPDATE apart SET bytes = ? WHERE arrival = ?"));
  JAMBLINE_ASSIGN(Statement forget, database_.prepare("DELETE FROM erasable WHERE hash = ?"));
  forget.bind(1, target.bytes);
  return forget.finish();
}

Result<seal::Receipt> SqliteHubStorage::append(std::span<const SealedEntry> entries,
                                               std::span<const Hash> erased,
                                               const sync::SignReceipt& sign) {
  const auto refuse = [](Code code) { return fail(code, "append", shop_file_name); };
  if (entries.empty()) return refuse(Code::Missing);
  const DeviceId device = entries.front().header.device;
  const auto known = heads_.find(device);
  std::uint64_t seq = known == heads_.end() ? 0 : known->second.seq;
  for (const auto& entry : entries) {
    if (entry.header.device != device) return refuse(Code::ChainBroken);
    if (entry.header.seq <= seq) return refuse(Code::Fork);
    if (entry.header.seq != ++seq) return refuse(Code::ChainBroken);
  }
  if (wal_to_empty_) JAMBLINE_TRY(empty_wal());

  const std::uint64_t last = hub_seq_ + entries.size();
  seal::Receipt receipt;
  const Status kept = whole([&]() -> Status {
    for (const Hash& target : erased) {
      JAMBLINE_ASSIGN(Statement put,
                      database_.prepare("INSERT OR IGNORE INTO erasures(target) VALUES(?)"));
      put.bind(1, target.bytes);
      JAMBLINE_TRY(put.finish());
    }
    JAMBLINE_TRY(insert(entries, hub_seq_ + 1));
    for (const Hash& target : erased) JAMBLINE_TRY(erase(target));
    receipt = sign(hub_seq_ + 1, last);
    const std::string bytes = seal::encode(receipt);
    insert_receipt_.bind(1, signed_of(last));
    insert_receipt_.bind(2, device.bytes);
    insert_receipt_.bind(3, signed_of(seq));
    insert_receipt_.bind(4, view_of(bytes));
    return insert_receipt_.finish();
  });
  JAMBLINE_TRY(kept);
  hub_seq_ = last;
  heads_[device] = {device, entries.back().header.seq, entries.back().hash};
  if (!erased.empty()) wal_to_empty_ = true;
  note_reached(false);
  return receipt;
}

// Erased bytes also stood in the write-ahead log. Whoever reads the file meanwhile (a backup) holds
// this up: then it is tried again with the next append.
Status SqliteHubStorage::empty_wal() {
  JAMBLINE_TRY(database_.run("PRAGMA busy_timeout=0"));
  const auto held_up = database_.number("PRAGMA wal_checkpoint(TRUNCATE)");
  JAMBLINE_TRY(database_.run("PRAGMA busy_timeout=5000"));
  if (held_up) wal_to_empty_ = *held_up != 0;
  return {};
}

// Only after the database, and not with every push: a file is written for it.
void SqliteHubStorage::note_reached(bool closing) {
  if (hub_seq_ == noted_hub_seq_) return;
  if (!closing && hub_seq_ < noted_hub_seq_ + entries_between_notes) return;
  if (write_epoch(folder_, {epoch_, hub_seq_})) noted_hub_seq_ = hub_seq_;
}

Result<std::optional<seal::Receipt>> SqliteHubStorage::last_receipt(const DeviceId& device) {
  last_receipt_.reset();
  last_receipt_.bind(1, device.bytes);
  JAMBLINE_ASSIGN(const bool there, last_receipt_.step());
  std::optional<seal::Receipt> out;
  if (there) {
    JAMBLINE_ASSIGN(out, seal::decode_receipt(last_receipt_.bytes(0)));
  }
  last_receipt_.reset();
  return out;
}

Status SqliteHubStorage::read_after(std::uint64_t hub_seq, const Visit& visit) {
  read_after_.reset();
  read_after_.bind(1, signed_of(std::min(hub_seq, seal::last_seq)));
  for (;;) {
    JAMBLINE_ASSIGN(const bool more, read_after_.step());
    if (!more) break;
    const auto bytes = read_after_.bytes(1);
    const auto header =
        seal::decode_header(bytes.first(std::min(bytes.size(), seal::header_bytes)));
    if (!header) {
      read_after_.reset();
      return fail(damaged_shop("an entry's bytes"));
    }
    if (!visit(unsigned_of(read_after_.number(0)), header->device, header->seq, text_of(bytes)))
      break;
  }
  read_after_.reset();
  return {};
}

Result<std::vector<seal::Receipt>> SqliteHubStorage::receipts(std::uint64_t after,
                                                              std::uint64_t through,
                                                              std::size_t most) {
  std::vector<seal::Receipt> out;
  receipts_.reset();
  receipts_.bind(1, signed_of(std::min(after, seal::last_seq)));
  receipts_.bind(2, signed_of(std::min(through, seal::last_seq)));
  receipts_.bind(3, signed_of(std::min<std::uint64_t>(most, seal::last_seq)));
  for (;;) {
    JAMBLINE_ASSIGN(const bool more, receipts_.step());
    if (!more) break;
    JAMBLINE_ASSIGN(out.emplace_back(), seal::decode_receipt(receipts_.bytes(0)));
  }
  receipts_.reset();
  return out;
}

}  // namespace jambline::hub
