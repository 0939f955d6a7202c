// hub/shop_schema.h: the tables of a hub's shop.db and their guards, word for word.
//
// Shape:   version 1. Later versions only add columns and tables: each adds its step to upgrade().
// Errors:  DatabaseDamaged when the file is not a hub's or a table or guard differs (args: cause),
//          NewerSchema when a newer hub wrote it.
#pragma once

#include "sqlite/sqlite.h"

namespace jambline::hub {

inline constexpr std::int64_t shop_application_id = 0x4A424C48;  // "JBLH"
inline constexpr std::int64_t shop_schema_version = 1;

// In an empty database: tables, guards, application_id, user_version, WAL.
Status make_shop_schema(sqlite::Database& database);
// Whose file it is, and that this hub may write it; changes nothing.
Status check_shop_schema(sqlite::Database& database);
// From an older version to this one, in one transaction.
Status upgrade_shop_schema(sqlite::Database& database);
// WAL, synchronous=FULL and the other settings of a writing connection, read back.
Status set_shop_durable(sqlite::Database& database);

}  // namespace jambline::hub
