#include "log/entry_log.h"

#include "log/ballast.h"
#include "log/open_file.h"
#include "log/sqlite_log.h"

namespace jambline::log {

namespace {
Result<std::unique_ptr<EntryLog>> open_once(const std::filesystem::path& folder, OpenMode mode,
                                            const OpenOptions& options) {
  JAMBLINE_ASSIGN(OpenFile file, open_file(folder, mode, options));
  JAMBLINE_ASSIGN(std::unique_ptr<EntryLog> log, SqliteLog::make(folder, options, std::move(file)));
  return log;
}
}  // namespace

Result<std::unique_ptr<EntryLog>> EntryLog::open(const std::filesystem::path& folder, OpenMode mode,
                                                 const OpenOptions& options) {
  auto log = open_once(folder, mode, options);
  const bool full = !log && log.error().code == Code::DiskFull && mode == OpenMode::Write;
  if (full && Ballast(folder, options.ballast_bytes).spend())
    log = open_once(folder, mode, options);
  return log;
}

}  // namespace jambline::log
