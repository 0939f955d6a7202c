#include "hub/shop_schema.h"

#include <algorithm>
#include <array>
#include <string_view>

namespace jambline::hub {

namespace {
struct SchemaPart {
  const char* name;
  const char* sql;
  std::int64_t until = shop_schema_version;  // the last version that has it so
  std::int64_t since = 1;
};

// 270 = header and signature; what follows in an entry whose payload is gone is a 1 and no salt.
constexpr auto schema_parts = std::to_array<SchemaPart>({
    {"about", R"(CREATE TABLE about(
  name TEXT PRIMARY KEY,
  value ANY NOT NULL
) STRICT, WITHOUT ROWID)"},
    {"entries", R"(CREATE TABLE entries(
  hub_seq INTEGER PRIMARY KEY,
  device BLOB NOT NULL,
  seq INTEGER NOT NULL,
  kind INTEGER NOT NULL,
  hash BLOB NOT NULL,
  bytes BLOB NOT NULL
) STRICT)",
     1},
    {"entries", R"(CREATE TABLE entries(
  hub_seq INTEGER PRIMARY KEY,
  kind INTEGER NOT NULL,
  bytes BLOB NOT NULL
) STRICT)",
     2, 2},
    {"entries_by_device", "CREATE UNIQUE INDEX entries_by_device ON entries(device, seq)", 1},
    {"membership", "CREATE INDEX membership ON entries(kind) WHERE kind BETWEEN 1 AND 4"},
    {"erasable", R"(CREATE TABLE erasable(
  hash BLOB PRIMARY KEY,
  hub_seq INTEGER NOT NULL
) STRICT, WITHOUT ROWID)"},
    {"erasures", R"(CREATE TABLE erasures(
  target BLOB PRIMARY KEY
) STRICT, WITHOUT ROWID)"},
    {"receipts", R"(CREATE TABLE receipts(
  hub_seq_last INTEGER PRIMARY KEY,
  device BLOB NOT NULL,
  bytes BLOB NOT NULL
) STRICT)",
     1},
    {"receipts", R"(CREATE TABLE receipts(
  hub_seq_last INTEGER PRIMARY KEY,
  device BLOB NOT NULL,
  seq_last INTEGER NOT NULL,
  bytes BLOB NOT NULL
) STRICT)",
     2, 2},
    {"receipts_by_device", "CREATE INDEX receipts_by_device ON receipts(device, hub_seq_last)", 1},
    {"receipts_by_device", "CREATE UNIQUE INDEX receipts_by_device ON receipts(device, seq_last)",
     2, 2},
    {"apart", R"(CREATE TABLE apart(
  arrival INTEGER PRIMARY KEY,
  device BLOB NOT NULL,
  seq INTEGER NOT NULL,
  kind INTEGER NOT NULL,
  hash BLOB NOT NULL,
  bytes BLOB NOT NULL,
  received_ms INTEGER NOT NULL
) STRICT)"},
    {"apart_by_device", "CREATE UNIQUE INDEX apart_by_device ON apart(device, seq, hash)"},
    {"apart_by_hash", "CREATE INDEX apart_by_hash ON apart(hash)"},
    {"settled", R"(CREATE TABLE settled(
  device BLOB PRIMARY KEY,
  through INTEGER NOT NULL
) STRICT, WITHOUT ROWID)"},
    {"invited", R"(CREATE TABLE invited(
  place INTEGER PRIMARY KEY,
  code BLOB NOT NULL UNIQUE,
  until_ms INTEGER NOT NULL,
  for_a_shop INTEGER NOT NULL,
  refused INTEGER NOT NULL,
  used_by TEXT
) STRICT)"},
    {"seen", R"(CREATE TABLE seen(
  device BLOB PRIMARY KEY,
  seen_ms INTEGER NOT NULL,
  fork_seq INTEGER,
  fork_ms INTEGER
) STRICT, WITHOUT ROWID)"},
    {"entries_stay", R"(CREATE TRIGGER entries_stay BEFORE DELETE ON entries BEGIN
  SELECT RAISE(ABORT, 'entries are never deleted');
END)"},
    {"entries_never_change", R"(CREATE TRIGGER entries_never_change BEFORE UPDATE ON entries
WHEN NOT (
  NEW.hub_seq IS OLD.hub_seq AND NEW.device IS OLD.device AND NEW.seq IS OLD.seq AND
  NEW.kind IS OLD.kind AND NEW.hash IS OLD.hash AND
  substr(NEW.bytes, 1, 270) IS substr(OLD.bytes, 1, 270) AND
  substr(NEW.bytes, 271) IS x'0100000000000000000000000000000000' AND
  EXISTS (SELECT 1 FROM erasures WHERE target = OLD.hash))
BEGIN
  SELECT RAISE(ABORT, 'entries are never changed');
END)",
     1},
    {"entries_never_change", R"(CREATE TRIGGER entries_never_change BEFORE UPDATE ON entries
WHEN NOT (
  NEW.hub_seq IS OLD.hub_seq AND NEW.kind IS OLD.kind AND
  substr(NEW.bytes, 1, 270) IS substr(OLD.bytes, 1, 270) AND
  substr(NEW.bytes, 271) IS x'0100000000000000000000000000000000' AND
  EXISTS (SELECT 1 FROM erasures JOIN erasable ON hash = target WHERE hub_seq = OLD.hub_seq))
BEGIN
  SELECT RAISE(ABORT, 'entries are never changed');
END)",
     2, 2},
    {"erasures_stay", R"(CREATE TRIGGER erasures_stay BEFORE DELETE ON erasures BEGIN
  SELECT RAISE(ABORT, 'erasures are never deleted');
END)"},
});

bool is_in(const SchemaPart& part, std::int64_t version) {
  return version >= part.since && version <= part.until;
}

Error other_file(std::string cause) {
  return Error{Code::DatabaseDamaged, "open", "shop.db", {}}.with("cause", std::move(cause));
}

Status has_setting(sqlite::Database& database, const char* pragma, std::string_view value) {
  JAMBLINE_ASSIGN(const std::string found, database.text(pragma));
  if (found == value) return {};
  return fail(Error{Code::FileFailed, "open", "shop.db", {}}.with(
      "cause", std::string(pragma) + " is " + found + " instead of " + std::string(value)));
}

Status make_parts(sqlite::Database& database, std::initializer_list<std::string_view> names) {
  for (const SchemaPart& part : schema_parts)
    if (is_in(part, shop_schema_version) && std::ranges::find(names, part.name) != names.end())
      JAMBLINE_TRY(database.run(part.sql));
  return {};
}
}  // namespace

Status make_shop_schema(sqlite::Database& database) {
  JAMBLINE_TRY(database.run("PRAGMA page_size=4096; PRAGMA synchronous=FULL; BEGIN IMMEDIATE"));
  for (const SchemaPart& part : schema_parts)
    if (is_in(part, shop_schema_version)) JAMBLINE_TRY(database.run(part.sql));
  const std::string numbers = "PRAGMA application_id=" + std::to_string(shop_application_id) +
                              "; PRAGMA user_version=" + std::to_string(shop_schema_version) +
                              "; COMMIT; PRAGMA journal_mode=WAL";
  return database.run(numbers.c_str());
}

Status check_shop_schema(sqlite::Database& database) {
  JAMBLINE_ASSIGN(const std::int64_t application, database.number("PRAGMA application_id"));
  if (application != shop_application_id) return fail(other_file("a file of another program"));
  JAMBLINE_ASSIGN(const std::int64_t version, database.number("PRAGMA user_version"));
  if (version < 1) return fail(other_file("no version number"));
  if (version > shop_schema_version) return fail(Code::NewerSchema, "open", "shop.db");
  JAMBLINE_ASSIGN(auto find, database.prepare("SELECT sql FROM sqlite_schema WHERE name=?"));
  for (const SchemaPart& part : schema_parts) {
    if (!is_in(part, version)) continue;
    find.bind_text(1, part.name);
    JAMBLINE_ASSIGN(const bool there, find.step());
    if (!there || find.text(0) != part.sql)
      return fail(other_file(std::string(part.name) + " is missing or was changed"));
    find.reset();
  }
  return {};
}

// An entry's own bytes say its device, place and hash; and a run of entries that came together is
// found by its receipt, so that no entry needs a row of an index.
Status upgrade_shop_schema(sqlite::Database& database) {
  JAMBLINE_ASSIGN(const std::int64_t version, database.number("PRAGMA user_version"));
  if (version == shop_schema_version) return {};
  JAMBLINE_TRY(database.run("BEGIN IMMEDIATE"));
  const auto grow = [&]() -> Status {
    JAMBLINE_TRY(
        database.run("DROP TRIGGER entries_stay; DROP TRIGGER entries_never_change;"
                     "DROP INDEX entries_by_device; DROP INDEX membership;"
                     "DROP INDEX receipts_by_device;"
                     "ALTER TABLE entries RENAME TO entries_1;"
                     "ALTER TABLE receipts RENAME TO receipts_1"));
    JAMBLINE_TRY(make_parts(database, {"entries", "membership", "receipts"}));
    JAMBLINE_TRY(
        database.run("INSERT INTO entries SELECT hub_seq, kind, bytes FROM entries_1 ORDER BY "
                     "hub_seq;"
                     "INSERT INTO receipts SELECT hub_seq_last, receipts_1.device, seq, "
                     "receipts_1.bytes FROM receipts_1 JOIN entries_1 ON hub_seq = hub_seq_last "
                     "ORDER BY hub_seq_last;"));
    JAMBLINE_ASSIGN(const std::int64_t lost,
                    database.number("SELECT (SELECT count(*) FROM receipts_1) - "
                                    "(SELECT count(*) FROM receipts)"));
    if (lost != 0) return fail(other_file("a receipt names an entry that is not there"));
    JAMBLINE_TRY(database.run("DROP TABLE entries_1; DROP TABLE receipts_1"));
    JAMBLINE_TRY(
        make_parts(database, {"receipts_by_device", "entries_stay", "entries_never_change"}));
    return database.run("PRAGMA user_version=2; COMMIT");
  };
  Status done = grow();
  if (!done && database.in_transaction()) (void)database.run("ROLLBACK");
  return done;
}

Status set_shop_durable(sqlite::Database& database) {
  database.defend();
  JAMBLINE_TRY(database.run("PRAGMA journal_mode=WAL"));
  JAMBLINE_TRY(database.run("PRAGMA synchronous=FULL"));
  JAMBLINE_TRY(database.run("PRAGMA recursive_triggers=ON"));  // REPLACE meets the guards as well
  JAMBLINE_TRY(database.run("PRAGMA secure_delete=ON"));       // an erased payload is overwritten
  JAMBLINE_TRY(database.run("PRAGMA temp_store=MEMORY"));
  JAMBLINE_TRY(has_setting(database, "PRAGMA journal_mode", "wal"));
  JAMBLINE_TRY(has_setting(database, "PRAGMA synchronous", "2"));
  JAMBLINE_TRY(has_setting(database, "PRAGMA recursive_triggers", "1"));
  return has_setting(database, "PRAGMA secure_delete", "1");
}

}  // namespace jambline::hub
