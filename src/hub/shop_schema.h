// hub/shop_schema.h: the tables of a hub's shop.db and their guards, word for word.
//
// Shape:   version 2. Each later version adds its step to upgrade_shop_schema(). Version 1 kept an
//          entry's device, place and hash in columns beside its bytes, and an index over them.
// Errors:  DatabaseDamaged when the file is not a hub's or a table or guard differs (args: cause),
//          NewerSchema when a newer hub wrote it.
#pragma once

#include "sqlite/sqlite.h"

namespace jambline::hub {

inline constexpr std::int64_t shop_application_id = 0x4A424C48;  // "JBLH"
inline constexpr std::int64_t shop_schema_version = 2;

// In an empty database: tables, guards, application_id, user_version, WAL.
Status make_shop_schema(sqlite::Database& database);
// Whose file it is, of this version or an older one, and that this hub may write it; changes
// nothing.
Status check_shop_schema(sqlite::Database& database);
// From an older version to this one, in one transaction.
Status upgrade_shop_schema(sqlite::Database& database);
// WAL, synchronous=FULL and the other settings of a writing connection, read back.
Status set_shop_durable(sqlite::Database& database);

}  // namespace jambline::hub
