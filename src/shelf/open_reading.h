// shelf/open_reading.h: a connection that only reads a shelf, beside its writer, or where nobody
// may write at all.
//
// Errors:  those of sqlite/sqlite.h.
#pragma once

#include "shelf/find.h"
#include "sqlite/sqlite.h"

namespace jambline::shelf {

Result<sqlite::Database> open_reading(const Whereabouts& where);

}  // namespace jambline::shelf
