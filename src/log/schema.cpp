#include "log/schema.h"

#include <array>

namespace jambline::log {

namespace {
struct Part {
  const char* name;
  const char* sql;
};

constexpr auto parts = std::to_array<Part>({
    {"entries", R"(CREATE TABLE entries(
  arrival INTEGER PRIMARY KEY,
  device BLOB NOT NULL,
  seq INTEGER NOT NULL,
  hash BLOB NOT NULL,
  subject BLOB NOT NULL,
  kind INTEGER NOT NULL,
  header BLOB NOT NULL CHECK(length(header) = 206),
  signature BLOB NOT NULL CHECK(length(signature) = 64),
  salt BLOB NOT NULL CHECK(length(salt) = 16),
  payload BLOB NOT NULL,
  erased INTEGER NOT NULL CHECK(erased IN (0, 1))
) STRICT)"},
    {"entries_by_device", "CREATE UNIQUE INDEX entries_by_device ON entries(device, seq)"},
    {"entries_by_hash", "CREATE UNIQUE INDEX entries_by_hash ON entries(hash)"},
    {"entries_by_subject", "CREATE INDEX entries_by_subject ON entries(subject)"},
    {"membership", "CREATE INDEX membership ON entries(kind) WHERE kind BETWEEN 1 AND 4"},
    {"erasures", R"(CREATE TABLE erasures(
  target BLOB PRIMARY KEY,
  by_entry BLOB NOT NULL
) STRICT, WITHOUT ROWID)"},
    {"receipts", R"(CREATE TABLE receipts(
  device BLOB NOT NULL,
  seq INTEGER NOT NULL,
  hub BLOB NOT NULL,
  epoch BLOB NOT NULL,
  bytes BLOB NOT NULL,
  PRIMARY KEY(device, seq, hub, epoch)
) STRICT, WITHOUT ROWID)"},
    {"cursors", R"(CREATE TABLE cursors(
  peer TEXT PRIMARY KEY,
  value TEXT NOT NULL
) STRICT, WITHOUT ROWID)"},
    {"about", R"(CREATE TABLE about(
  name TEXT PRIMARY KEY,
  value BLOB NOT NULL
) STRICT, WITHOUT ROWID)"},
    {"entries_stay", R"(CREATE TRIGGER entries_stay BEFORE DELETE ON entries BEGIN
  SELECT RAISE(ABORT, 'entries are never deleted');
END)"},
    {"entries_never_change", R"(CREATE TRIGGER entries_never_change BEFORE UPDATE ON entries
WHEN NOT (
  NEW.arrival IS OLD.arrival AND NEW.device IS OLD.device AND NEW.seq IS OLD.seq AND
  NEW.hash IS OLD.hash AND NEW.subject IS OLD.subject AND NEW.kind IS OLD.kind AND
  NEW.header IS OLD.header AND NEW.signature IS OLD.signature AND (
    (OLD.erased = 0 AND NEW.erased = 1 AND NEW.salt = zeroblob(16) AND NEW.payload = x'' AND
     EXISTS (SELECT 1 FROM erasures WHERE target = OLD.hash)) OR
    (OLD.erased = 1 AND NEW.erased = 0 AND
     NOT EXISTS (SELECT 1 FROM erasures WHERE target = OLD.hash))))
BEGIN
  SELECT RAISE(ABORT, 'entries are never changed');
END)"},
    {"erasures_are_entries", R"(CREATE TRIGGER erasures_are_entries BEFORE INSERT ON erasures
WHEN NOT EXISTS (SELECT 1 FROM entries WHERE hash = NEW.by_entry AND kind = 5) BEGIN
  SELECT RAISE(ABORT, 'an erasure needs its entry');
END)"},
    {"erasures_stay", R"(CREATE TRIGGER erasures_stay BEFORE DELETE ON erasures BEGIN
  SELECT RAISE(ABORT, 'erasures are never deleted');
END)"},
    {"erasures_never_change",
     R"(CREATE TRIGGER erasures_never_change BEFORE UPDATE ON erasures BEGIN
  SELECT RAISE(ABORT, 'erasures are never changed');
END)"},
});

Error damaged_schema(std::string cause) {
  return Error{Code::DatabaseDamaged, "open", "log.db", {}}.with("cause", std::move(cause));
}

Status wants(Database& database, const char* pragma, std::string_view value) {
  JAMBLINE_ASSIGN(const std::string found, database.text(pragma));
  if (found == value) return {};
  return fail(Error{Code::FileFailed, "open", "log.db", {}}.with(
      "cause", std::string(pragma) + " is " + found + " instead of " + std::string(value)));
}
}  // namespace

Status make_schema(Database& database) {
  JAMBLINE_TRY(database.run("PRAGMA page_size=4096; PRAGMA synchronous=FULL; BEGIN IMMEDIATE"));
  for (const Part& part : parts) JAMBLINE_TRY(database.run(part.sql));
  const std::string numbers = "PRAGMA application_id=" + std::to_string(application_id) +
                              "; PRAGMA user_version=" + std::to_string(schema_version) +
                              "; COMMIT; PRAGMA journal_mode=WAL";
  return database.run(numbers.c_str());
}

Result<std::int64_t> check_application(Database& database) {
  JAMBLINE_ASSIGN(const std::int64_t application, database.number("PRAGMA application_id"));
  if (application != application_id) return fail(damaged_schema("a database of another program"));
  JAMBLINE_ASSIGN(const std::int64_t version, database.number("PRAGMA user_version"));
  if (version < 1) return fail(damaged_schema("no version number"));
  return version;
}

Status check_schema(Database& database) {
  JAMBLINE_ASSIGN(Statement find, database.prepare("SELECT sql FROM sqlite_schema WHERE name=?"));
  for (const Part& part : parts) {
    find.bind_text(1, part.name);
    JAMBLINE_ASSIGN(const bool there, find.step());
    if (!there || find.text(0) != part.sql)
      return fail(damaged_schema(std::string(part.name) + " is missing or was changed"));
    find.reset();
  }
  return {};
}

Status set_durable(Database& database) {
  database.defend();
  JAMBLINE_TRY(database.run("PRAGMA journal_mode=WAL"));
  JAMBLINE_TRY(database.run("PRAGMA synchronous=FULL"));
  JAMBLINE_TRY(database.run("PRAGMA recursive_triggers=ON"));  // REPLACE meets the guards as well
  JAMBLINE_TRY(database.run("PRAGMA secure_delete=ON"));       // an erased payload is overwritten
  JAMBLINE_TRY(database.run("PRAGMA temp_store=MEMORY"));
  JAMBLINE_TRY(wants(database, "PRAGMA journal_mode", "wal"));
  JAMBLINE_TRY(wants(database, "PRAGMA synchronous", "2"));
  JAMBLINE_TRY(wants(database, "PRAGMA recursive_triggers", "1"));
  return wants(database, "PRAGMA secure_delete", "1");
}

}  // namespace jambline::log
