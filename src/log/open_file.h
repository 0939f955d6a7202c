// log/open_file.h: from a folder to an open log.db, with every check that comes before the entries.
//
// Promise: a file that is refused is left as it is, to the byte.
// Errors:  those of EntryLog::open().
#pragma once

#include "log/entry_log.h"
#include "log/folder_lock.h"
#include "sqlite/sqlite.h"

namespace jambline::log {

using sqlite::Database;
using sqlite::Statement;

struct OpenFile {
  std::optional<FolderLock> lock;  // held = may be written
  Database database;
  bool newer_schema = false;
};

Result<OpenFile> open_file(const std::filesystem::path& folder, OpenMode mode,
                           const OpenOptions& options);

}  // namespace jambline::log
