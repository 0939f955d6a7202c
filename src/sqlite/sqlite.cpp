#include "sqlite/sqlite.h"

#include <cerrno>
#include <sqlite3.h>
#include <utility>

namespace jambline::sqlite {

namespace {
Code code_of(int result, int system_errno) {
  const bool no_room = system_errno == ENOSPC || system_errno == EDQUOT;
  switch (result & 0xFF) {
    case SQLITE_FULL:
      return Code::DiskFull;
    case SQLITE_READONLY:
    case SQLITE_PERM:
      return Code::ReadOnly;
    case SQLITE_CORRUPT:
    case SQLITE_NOTADB:
    case SQLITE_MISMATCH:
    case SQLITE_FORMAT:
      return Code::DatabaseDamaged;
    case SQLITE_IOERR:
      if (result == SQLITE_IOERR_SHORT_READ || result == SQLITE_IOERR_CORRUPTFS)
        return Code::DatabaseDamaged;
      return no_room ? Code::DiskFull : Code::FileFailed;
    case SQLITE_CANTOPEN:
      if (no_room) return Code::DiskFull;
      if (system_errno == EACCES || system_errno == EROFS || system_errno == EPERM)
        return Code::ReadOnly;
      return system_errno == ENOENT ? Code::NoSuchFile : Code::FileFailed;
    default:
      return Code::FileFailed;
  }
}

std::string file_of(sqlite3* raw) {
  const char* path = raw ? sqlite3_db_filename(raw, "main") : nullptr;
  return path && *path ? std::filesystem::path(path).filename().string() : std::string("database");
}

Error error_of(sqlite3* raw, int result, std::string operation) {
  const int system_errno = raw ? sqlite3_system_errno(raw) : 0;
  return Error{code_of(result, system_errno), std::move(operation), file_of(raw), {}}.with(
      "cause", raw ? sqlite3_errmsg(raw) : sqlite3_errstr(result));
}
}  // namespace

Result<Database> Database::open(const std::filesystem::path& file, Mode mode,
                                const std::string& vfs) {
  std::string uri = "file:";
  for (const char sign : file.string()) {  // the signs that mean something in a URI
    constexpr char digits[] = "0123456789ABCDEF";
    const auto code = static_cast<unsigned char>(sign);
    if (sign == '%' || sign == '?' || sign == '#' || code < 0x20)
      uri += {'%', digits[code >> 4U], digits[code & 15U]};
    else
      uri.push_back(sign);
  }
  if (mode == Mode::Frozen) uri += "?immutable=1";
  int flags = SQLITE_OPEN_URI | SQLITE_OPEN_NOMUTEX | SQLITE_OPEN_EXRESCODE;
  flags |= mode == Mode::Create  ? SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE
           : mode == Mode::Write ? SQLITE_OPEN_READWRITE
                                 : SQLITE_OPEN_READONLY;
  Database database;
  const char* alone = mode == Mode::Alone ? "unix-none" : nullptr;  // the usual one without locks
  const int result =
      sqlite3_open_v2(uri.c_str(), &database.raw_, flags, vfs.empty() ? alone : vfs.c_str());
  if (result != SQLITE_OK) return fail(error_of(database.raw_, result, "open"));
  sqlite3_busy_timeout(database.raw_, 5000);
  // Before the first read: then the index of the write-ahead log needs no file.
  // https://sqlite.org/wal.html#noshm
  if (mode == Mode::Alone) JAMBLINE_TRY(database.run("PRAGMA locking_mode=EXCLUSIVE"));
  return database;
}

Database::Database(Database&& other) noexcept : raw_(std::exchange(other.raw_, nullptr)) {}
Database& Database::operator=(Database&& other) noexcept {
  std::swap(raw_, other.raw_);
  return *this;
}
Database::~Database() {
  sqlite3_close_v2(raw_);
}

Status Database::run(const char* sql) {
  const int result = sqlite3_exec(raw_, sql, nullptr, nullptr, nullptr);
  if (result != SQLITE_OK) return fail(error_of(raw_, result, "run"));
  return {};
}

Result<Statement> Database::prepare(const char* sql) {
  sqlite3_stmt* raw = nullptr;
  const int result = sqlite3_prepare_v3(raw_, sql, -1, SQLITE_PREPARE_PERSISTENT, &raw, nullptr);
  if (result != SQLITE_OK) return fail(error_of(raw_, result, "prepare"));
  return Statement(raw);
}

Result<std::int64_t> Database::number(const char* sql) {
  JAMBLINE_ASSIGN(Statement statement, prepare(sql));
  JAMBLINE_ASSIGN(const bool there, statement.step());
  return there ? statement.number(0) : 0;
}

Result<std::string> Database::text(const char* sql) {
  JAMBLINE_ASSIGN(Statement statement, prepare(sql));
  JAMBLINE_ASSIGN(const bool there, statement.step());
  return there ? std::string(statement.text(0)) : std::string();
}

void Database::checkpoint_on_close(bool allowed) {
  sqlite3_db_config(raw_, SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, allowed ? 0 : 1, nullptr);
}
void Database::defend() {
  sqlite3_db_config(raw_, SQLITE_DBCONFIG_DEFENSIVE, 1, nullptr);
}
bool Database::only_reading() const {
  return sqlite3_db_readonly(raw_, "main") == 1;
}
bool Database::in_transaction() const {
  return sqlite3_get_autocommit(raw_) == 0;
}

Statement::Statement(Statement&& other) noexcept : raw_(std::exchange(other.raw_, nullptr)) {}
Statement& Statement::operator=(Statement&& other) noexcept {
  std::swap(raw_, other.raw_);
  return *this;
}
Statement::~Statement() {
  sqlite3_finalize(raw_);
}
bool Statement::busy() const {
  return sqlite3_stmt_busy(raw_) != 0;
}

void Statement::bind(int place, std::int64_t number) {
  sqlite3_bind_int64(raw_, place, number);
}
void Statement::bind(int place, std::span<const std::uint8_t> bytes) {
  if (bytes.empty())
    sqlite3_bind_zeroblob(raw_, place, 0);
  else
    sqlite3_bind_blob64(raw_, place, bytes.data(), bytes.size(), SQLITE_STATIC);
}
void Statement::bind_nothing(int place) {
  sqlite3_bind_null(raw_, place);
}
void Statement::bind_text(int place, std::string_view text) {
  sqlite3_bind_text64(raw_, place, text.data() ? text.data() : "", text.size(), SQLITE_STATIC,
                      SQLITE_UTF8);
}

Result<bool> Statement::step() {
  const int result = sqlite3_step(raw_);
  if (result == SQLITE_ROW) return true;
  if (result == SQLITE_DONE) return false;
  Error error = error_of(sqlite3_db_handle(raw_), result, "step");
  sqlite3_reset(raw_);
  return fail(std::move(error));
}

Status Statement::finish() {
  for (;;) {
    JAMBLINE_ASSIGN(const bool more, step());
    if (!more) break;
  }
  reset();
  return {};
}

void Statement::reset() {
  sqlite3_reset(raw_);
}

std::int64_t Statement::number(int column) const {
  return sqlite3_column_int64(raw_, column);
}
std::span<const std::uint8_t> Statement::bytes(int column) const {
  const auto* data = static_cast<const std::uint8_t*>(sqlite3_column_blob(raw_, column));
  const int size = sqlite3_column_bytes(raw_, column);
  return data ? std::span(data, static_cast<std::size_t>(size)) : std::span<const std::uint8_t>();
}
std::string_view Statement::text(int column) const {
  const auto found = bytes(column);
  return {reinterpret_cast<const char*>(found.data()), found.size()};
}

}  // namespace jambline::sqlite
