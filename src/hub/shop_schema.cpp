#include "hub/shop_schema.h"

#include <array>

namespace jambline::hub {

namespace {
struct SchemaPart {
  const char* name;
  const char* sql;
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
) STRICT)"},
    {"entries_by_device", "CREATE UNIQUE INDEX entries_by_device ON entries(device, seq)"},
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
) STRICT)"},
    {"receipts_by_device", "CREATE INDEX receipts_by_device ON receipts(device, hub_seq_last)"},
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
END)"},
    {"erasures_stay", R"(CREATE TRIGGER erasures_stay BEFORE DELETE ON erasures BEGIN
  SELECT RAISE(ABORT, 'erasures are never deleted');
END)"},
});

Error other_file(std::string cause) {
  return Error{Code::DatabaseDamaged, "open", "shop.db", {}}.with("cause", std::move(cause));
}

Status has_setting(sqlite::Database& database, const char* pragma, std::string_view value) {
  JAMBLINE_ASSIGN(const std::string found, database.text(pragma));
  if (found == value) return {};
  return fail(Error{Code::FileFailed, "open", "shop.db", {}}.with(
      "cause", std::string(pragma) + " is " + found + " instead of " + std::string(value)));
}
}  // namespace

Status make_shop_schema(sqlite::Database& database) {
  JAMBLINE_TRY(database.run("PRAGMA page_size=4096; PRAGMA synchronous=FULL; BEGIN IMMEDIATE"));
  for (const SchemaPart& part : schema_parts) JAMBLINE_TRY(database.run(part.sql));
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
    find.bind_text(1, part.name);
    JAMBLINE_ASSIGN(const bool there, find.step());
    if (!there || find.text(0) != part.sql)
      return fail(other_file(std::string(part.name) + " is missing or was changed"));
    find.reset();
  }
  return {};
}

Status upgrade_shop_schema(sqlite::Database& database) {
  // Version 1 is the first: nothing is older. A version 2 puts its ALTER TABLE ... ADD here.
  JAMBLINE_ASSIGN(const std::int64_t version, database.number("PRAGMA user_version"));
  if (version == shop_schema_version) return {};
  return fail(other_file("version " + std::to_string(version)));
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
