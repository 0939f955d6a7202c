#include "log/entry_log.h"

#include "log/open_file.h"
#include "log/sqlite_log.h"

namespace jambline::log {

Result<std::unique_ptr<EntryLog>> EntryLog::open(const std::filesystem::path& folder, OpenMode mode,
                                                 const OpenOptions& options) {
  JAMBLINE_ASSIGN(OpenFile file, open_file(folder, mode, options));
  JAMBLINE_ASSIGN(std::unique_ptr<EntryLog> log, SqliteLog::make(folder, options, std::move(file)));
  return log;
}

}  // namespace jambline::log
