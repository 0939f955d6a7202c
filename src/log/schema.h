// log/schema.h: the tables of log.db and their guards, word for word.
//
// Shape:   version 1. Later versions only add columns and tables; entries are never migrated.
// Errors:  DatabaseDamaged when the file is not ours or a table or guard differs (args: cause).
#pragma once

#include <cstdint>

#include "sqlite/sqlite.h"

namespace jambline::log {

using sqlite::Database;
using sqlite::Statement;

inline constexpr std::int64_t application_id = 0x4A424C47;  // "JBLG"
inline constexpr std::int64_t schema_version = 1;

// In an empty database: tables, guards, application_id, user_version, WAL.
Status make_schema(Database& database);
// The file's version; refuses a file of another program.
Result<std::int64_t> check_application(Database& database);
// That every table and guard of version 1 is there as it was made.
Status check_schema(Database& database);
// WAL, synchronous=FULL and the other settings of a writing connection, read back.
Status set_durable(Database& database);

}  // namespace jambline::log
