#include "shelf/open_reading.h"

namespace jambline::shelf {

Result<sqlite::Database> open_reading(const Whereabouts& where) {
  using sqlite::Database;
  auto database = Database::open(where.file, Database::Mode::ReadOnly, where.vfs);
  if (!database) return database;
  const auto probe = database->number("SELECT count(*) FROM sqlite_schema");
  if (probe) return database;
  if (!where.vfs.empty() || probe.error().code == Code::DatabaseDamaged) return fail(probe.error());
  // A folder in which SQLite may not make its -shm file; so nobody writes there now.
  std::error_code none;
  const auto waiting = std::filesystem::file_size(where.file.string() + "-wal", none);
  return Database::open(where.file,
                        !none && waiting > 0 ? Database::Mode::Alone : Database::Mode::Frozen, {});
}

}  // namespace jambline::shelf
