#include "log/open_file.h"

#include <cerrno>
#include <fstream>
#include <system_error>

#include "log/files.h"
#include "log/schema.h"

namespace jambline::log {

namespace fs = std::filesystem;

namespace {
Error damaged(std::string cause) {
  return Error{Code::DatabaseDamaged, "open", "log.db", {}}.with("cause", std::move(cause));
}

std::uintmax_t size_of(const fs::path& file) {
  std::error_code refused;
  const auto size = fs::file_size(file, refused);
  return refused ? 0 : size;
}

// A new log appears under its name only when it is whole and on the disk.
Status make_file(const fs::path& folder, const std::string& vfs) {
  const fs::path made = folder / "log.db.new";
  std::error_code refused;
  for (const char* ending : {"", "-wal", "-shm", "-journal"})
    fs::remove(fs::path(made) += ending, refused);
  {
    JAMBLINE_ASSIGN(Database database, Database::open(made, Database::Mode::Create, vfs));
    JAMBLINE_TRY(make_schema(database));
  }
  fs::rename(made, folder / "log.db", refused);
  if (refused) return fail(file_error("open", folder / "log.db", refused.value()));
  return sync_folder(folder);
}

// Looks at the file without SQLite, so that what is no database is not touched by it.
Status look(const fs::path& folder) {
  const fs::path file = folder / "log.db";
  std::ifstream in(file, std::ios::binary);
  if (!in) return fail(file_error("read", file, errno));
  char magic[16] = {};
  in.read(magic, sizeof magic);
  if (in.gcount() != sizeof magic ||
      std::string_view(magic, 16) != std::string_view("SQLite format 3\0", 16))
    return fail(damaged(in.gcount() == 0 ? "the file is empty" : "not a database"));
  return {};
}

// With nothing in the write-ahead log, every page that the header counts has to be in the file.
Status whole_file(Database& database, const fs::path& folder) {
  if (size_of(folder / "log.db-wal") > 0) return {};
  JAMBLINE_ASSIGN(const std::int64_t pages, database.number("PRAGMA page_count"));
  JAMBLINE_ASSIGN(const std::int64_t bytes, database.number("PRAGMA page_size"));
  if (size_of(folder / "log.db") >= static_cast<std::uintmax_t>(pages * bytes)) return {};
  return fail(damaged("the file was cut short"));
}

Result<Database> open_reading(const fs::path& folder, const std::string& vfs) {
  const fs::path file = folder / "log.db";
  auto database = Database::open(file, Database::Mode::ReadOnly, vfs);
  if (database) {
    const auto probe = database->number("SELECT count(*) FROM sqlite_schema");
    if (probe) return database;
    if (probe.error().code != Code::ReadOnly && probe.error().code != Code::FileFailed &&
        probe.error().code != Code::NoSuchFile && probe.error().code != Code::DiskFull)
      return fail(probe.error());
  } else if (database.error().code == Code::DatabaseDamaged) {
    return database;
  }
  // A folder in which SQLite may not make its -shm file; so nobody writes there now.
  const bool waiting = size_of(folder / "log.db-wal") > 0;
  return Database::open(file, waiting ? Database::Mode::Alone : Database::Mode::Frozen, vfs);
}
}  // namespace

Result<OpenFile> open_file(const fs::path& folder, OpenMode mode, const OpenOptions& options) {
  OpenFile opened;
  std::error_code refused;
  if (mode == OpenMode::Write) {
    if (fs::create_directories(folder, refused); refused)
      return fail(file_error("open", folder, refused.value()));
    JAMBLINE_ASSIGN(opened.lock, FolderLock::take(folder));
    if (!fs::exists(folder / "log.db", refused)) {
      if (size_of(folder / "log.db-wal") > 0)
        return fail(damaged("log.db is missing, its write-ahead log is there"));
      JAMBLINE_TRY(make_file(folder, options.vfs));
    }
  }
  JAMBLINE_TRY(look(folder));
  if (mode == OpenMode::Write) {
    JAMBLINE_ASSIGN(opened.database,
                    Database::open(folder / "log.db", Database::Mode::Write, options.vfs));
    if (opened.database.only_reading()) return fail(Code::ReadOnly, "open", "log.db");
  } else {
    JAMBLINE_ASSIGN(opened.database, open_reading(folder, options.vfs));
  }
  opened.database.checkpoint_on_close(false);
  JAMBLINE_TRY(whole_file(opened.database, folder));
  JAMBLINE_ASSIGN(const std::int64_t version, check_application(opened.database));
  if (version > schema_version) {
    opened.newer_schema = true;
    opened.lock.reset();
    JAMBLINE_ASSIGN(opened.database, open_reading(folder, options.vfs));
    return opened;
  }
  JAMBLINE_TRY(check_schema(opened.database));
  return opened;
}

}  // namespace jambline::log
