// Who was invited and seen, what is kept apart, and the new life of a restored database.
#include "base/json.h"
#include "hub/shop_file.h"
#include "hub/shop_schema.h"

namespace jambline::hub {

using seal::SealedEntry;
using sqlite::Database;
using sqlite::Statement;

namespace {
std::span<const std::uint8_t> blob_of(std::string_view text) {
  return {reinterpret_cast<const std::uint8_t*>(text.data()), text.size()};
}
Error strange_row(const char* table) {
  return Error{Code::DatabaseDamaged, "read", shop_file_name, {}}.with("cause", table);
}
}  // namespace

Status SqliteHubStorage::keep_apart(std::span<const SealedEntry> entries, std::int64_t now_ms) {
  JAMBLINE_TRY(database_.run("BEGIN IMMEDIATE"));
  const auto put_all = [&]() -> Status {
    JAMBLINE_ASSIGN(Statement put,
                    database_.prepare("INSERT INTO apart(device, seq, kind, hash, bytes, "
                                      "received_ms) VALUES(?, ?, ?, ?, ?, ?) "
                                      "ON CONFLICT(device, seq, hash) DO NOTHING"));
    for (const auto& entry : entries) {
      JAMBLINE_ASSIGN(const std::string bytes, kept_bytes(entry));
      put.bind(1, entry.header.device.bytes);
      put.bind(2, static_cast<std::int64_t>(entry.header.seq));
      put.bind(3, std::int64_t{entry.header.kind});
      put.bind(4, entry.hash.bytes);
      put.bind(5, blob_of(bytes));
      put.bind(6, now_ms);
      JAMBLINE_TRY(put.finish());
    }
    return database_.run("COMMIT");
  };
  Status done = put_all();
  if (!done && database_.in_transaction()) (void)database_.run("ROLLBACK");
  return done;
}

Result<std::vector<sync::Quarantined>> SqliteHubStorage::quarantine() {
  std::vector<sync::Quarantined> out;
  JAMBLINE_ASSIGN(Statement rows,
                  database_.prepare("SELECT device, min(seq), max(seq), max(received_ms), "
                                    "ifnull((SELECT through FROM settled "
                                    "WHERE settled.device = apart.device), 0) "
                                    "FROM apart GROUP BY device ORDER BY device"));
  for (;;) {
    JAMBLINE_ASSIGN(const bool more, rows.step());
    if (!more) return out;
    sync::Quarantined row;
    if (!rows.read(0, row.device)) return fail(strange_row("apart"));
    row.first_seq = static_cast<std::uint64_t>(rows.number(1));
    row.last_seq = static_cast<std::uint64_t>(rows.number(2));
    row.received_ms = rows.number(3);
    row.settled_through = static_cast<std::uint64_t>(rows.number(4));
    out.push_back(row);
  }
}

Status SqliteHubStorage::read_apart(const DeviceId& device, std::uint64_t from_seq,
                                    const std::function<bool(std::string_view)>& visit) {
  JAMBLINE_ASSIGN(Statement rows,
                  database_.prepare("SELECT bytes FROM apart WHERE device = ? AND seq >= ? "
                                    "ORDER BY seq, arrival"));
  rows.bind(1, device.bytes);
  rows.bind(2, static_cast<std::int64_t>(std::min(from_seq, seal::last_seq)));
  for (;;) {
    JAMBLINE_ASSIGN(const bool more, rows.step());
    if (!more) return {};
    const auto bytes = rows.bytes(0);
    if (!visit({reinterpret_cast<const char*>(bytes.data()), bytes.size()})) return {};
  }
}

Status SqliteHubStorage::settle(const DeviceId& device, std::uint64_t through) {
  JAMBLINE_ASSIGN(Statement put,
                  database_.prepare("INSERT INTO settled(device, through) VALUES(?1, ?2) ON "
                                    "CONFLICT(device) DO UPDATE SET through = max(through, ?2)"));
  put.bind(1, device.bytes);
  put.bind(2, static_cast<std::int64_t>(std::min(through, seal::last_seq)));
  return put.finish();
}

Status SqliteHubStorage::put_invited(const sync::Invited& invited) {
  JAMBLINE_ASSIGN(
      Statement put,
      database_.prepare("INSERT INTO invited(code, until_ms, for_a_shop, refused, used_by) "
                        "VALUES(?1, ?2, ?3, ?4, ?5) ON CONFLICT(code) DO UPDATE SET "
                        "until_ms = ?2, for_a_shop = ?3, refused = ?4, used_by = ?5"));
  const std::string used_by = invited.used_by ? to_json(*invited.used_by) : std::string();
  put.bind(1, invited.code.bytes);
  put.bind(2, invited.until_ms);
  put.bind(3, std::int64_t{invited.for_a_shop});
  put.bind(4, std::int64_t{invited.refused});
  if (invited.used_by)
    put.bind_text(5, used_by);
  else
    put.bind_nothing(5);
  return put.finish();
}

Result<std::vector<sync::Invited>> SqliteHubStorage::invited() {
  std::vector<sync::Invited> out;
  JAMBLINE_ASSIGN(Statement rows,
                  database_.prepare("SELECT code, until_ms, for_a_shop, refused, used_by "
                                    "FROM invited ORDER BY place"));
  for (;;) {
    JAMBLINE_ASSIGN(const bool more, rows.step());
    if (!more) return out;
    sync::Invited row;
    if (!rows.read(0, row.code)) return fail(strange_row("invited"));
    row.until_ms = rows.number(1);
    row.for_a_shop = rows.number(2) != 0;
    row.refused = rows.number(3) != 0;
    if (const auto used_by = rows.text(4); !used_by.empty()) {
      JAMBLINE_ASSIGN(row.used_by, from_json<sync::Pending>(used_by));
    }
    out.push_back(std::move(row));
  }
}

Status SqliteHubStorage::drop_invited(const Hash& code) {
  JAMBLINE_ASSIGN(Statement drop, database_.prepare("DELETE FROM invited WHERE code = ?"));
  drop.bind(1, code.bytes);
  return drop.finish();
}

Status SqliteHubStorage::note_seen(const DeviceId& device, std::int64_t now_ms) {
  note_seen_.bind(1, device.bytes);
  note_seen_.bind(2, now_ms);
  return note_seen_.finish();
}

Status SqliteHubStorage::note_fork(const DeviceId& device, std::uint64_t seq, std::int64_t now_ms) {
  JAMBLINE_ASSIGN(
      Statement put,
      database_.prepare("INSERT INTO seen(device, seen_ms, fork_seq, fork_ms) "
                        "VALUES(?1, ?3, ?2, ?3) ON CONFLICT(device) DO UPDATE SET "
                        "seen_ms = max(seen_ms, ?3), fork_seq = min(ifnull(fork_seq, ?2), ?2), "
                        "fork_ms = ?3"));
  put.bind(1, device.bytes);
  put.bind(2, static_cast<std::int64_t>(std::min(seq, seal::last_seq)));
  put.bind(3, now_ms);
  return put.finish();
}

Result<std::vector<sync::SeenDevice>> SqliteHubStorage::seen() {
  std::vector<sync::SeenDevice> out;
  JAMBLINE_ASSIGN(Statement rows,
                  database_.prepare("SELECT device, seen_ms, ifnull(fork_seq, -1), "
                                    "ifnull(fork_ms, 0) FROM seen ORDER BY device"));
  for (;;) {
    JAMBLINE_ASSIGN(const bool more, rows.step());
    if (!more) return out;
    sync::SeenDevice row;
    if (!rows.read(0, row.device)) return fail(strange_row("seen"));
    row.seen_ms = rows.number(1);
    if (rows.number(2) >= 0) {
      row.fork_seq = static_cast<std::uint64_t>(rows.number(2));
      row.fork_ms = rows.number(3);
    }
    out.push_back(row);
  }
}

Status SqliteHubStorage::blobs_lost() {
  JAMBLINE_TRY(database_.run("UPDATE about SET value = value + 1 WHERE name = 'blob_mark'"));
  ++blob_mark_;
  return {};
}

Status begin_new_epoch(const std::filesystem::path& shop_folder, const seal::Epoch& epoch,
                       std::uint64_t blob_mark_grows_by, const seal::SigningKey& hub) {
  JAMBLINE_ASSIGN(Database database,
                  Database::open(shop_folder / shop_file_name, Database::Mode::Write, {}));
  JAMBLINE_TRY(check_shop_schema(database));
  JAMBLINE_TRY(set_shop_durable(database));
  JAMBLINE_TRY(database.run("BEGIN IMMEDIATE"));
  {
    JAMBLINE_ASSIGN(Statement put,
                    database.prepare("UPDATE about SET value = ? WHERE name = 'epoch'"));
    put.bind(1, epoch.bytes);
    JAMBLINE_TRY(put.finish());
    JAMBLINE_ASSIGN(Statement mark, database.prepare("UPDATE about SET value = value + ? "
                                                     "WHERE name = 'blob_mark'"));
    mark.bind(1, static_cast<std::int64_t>(blob_mark_grows_by));
    JAMBLINE_TRY(mark.finish());
    JAMBLINE_ASSIGN(Statement rows, database.prepare("SELECT hub_seq_last, bytes FROM receipts "
                                                     "WHERE hub_seq_last > ? ORDER BY "
                                                     "hub_seq_last LIMIT 1"));
    JAMBLINE_ASSIGN(Statement again, database.prepare("UPDATE receipts SET bytes = ? "
                                                      "WHERE hub_seq_last = ?"));
    for (std::int64_t place = -1;;) {
      rows.bind(1, place);
      JAMBLINE_ASSIGN(const bool more, rows.step());
      if (!more) break;
      place = rows.number(0);
      JAMBLINE_ASSIGN(seal::Receipt receipt, seal::decode_receipt(rows.bytes(1)));
      rows.reset();
      receipt.epoch = epoch;
      seal::sign(receipt, hub);
      const std::string bytes = seal::encode(receipt);
      again.bind(1, blob_of(bytes));
      again.bind(2, place);
      JAMBLINE_TRY(again.finish());
    }
  }
  JAMBLINE_TRY(database.run("COMMIT"));
  JAMBLINE_ASSIGN(const std::int64_t last, database.number("SELECT max(hub_seq) FROM entries"));
  return write_epoch(shop_folder, {epoch, static_cast<std::uint64_t>(last)});
}

}  // namespace jambline::hub
