// sqlite/sqlite.h: SQLite's C API with its results as Status, and nothing else.
//
// Shape:   Database owns a connection, Statement a prepared statement that is kept and used again.
//          Row reads columns of a Statement; sizes are checked by the caller.
// Threads: a connection and its statements belong to one thread at a time.
// Errors:  DiskFull, ReadOnly, DatabaseDamaged, NoSuchFile, otherwise FileFailed (args: cause, the
//          words of SQLite).
// Source:  https://sqlite.org/c3ref/intro.html, https://sqlite.org/rescode.html
#pragma once

#include <cstdint>
#include <cstring>
#include <filesystem>
#include <span>
#include <string>
#include <string_view>

#include "base/error.h"
#include "base/ids.h"

struct sqlite3;
struct sqlite3_stmt;

namespace jambline::sqlite {

class Statement;

class Database {
 public:
  // Frozen, Alone: to read where nothing may be written, no lock and no -shm file. Frozen leaves
  // the write-ahead log out; Alone reads it with its index in memory. Nobody may be writing
  // meanwhile.
  enum class Mode : std::uint8_t { Create, Write, ReadOnly, Frozen, Alone };
  static Result<Database> open(const std::filesystem::path& file, Mode mode,
                               const std::string& vfs);
  Database() = default;
  Database(Database&& other) noexcept;
  Database& operator=(Database&& other) noexcept;
  ~Database();

  Status run(const char* sql);  // one or more statements without parameters
  Result<std::int64_t> number(const char* sql);
  Result<std::string> text(const char* sql);
  Result<Statement> prepare(const char* sql);
  // Whether closing may fold the write-ahead log into the database file.
  void checkpoint_on_close(bool allowed);
  void defend();  // no writable schema, no statement that could corrupt the file
  bool in_transaction() const;
  bool only_reading() const;
  sqlite3* raw() const { return raw_; }

 private:
  sqlite3* raw_ = nullptr;
};

class Statement {
 public:
  Statement() = default;
  explicit Statement(sqlite3_stmt* raw) : raw_(raw) {}
  Statement(Statement&& other) noexcept;
  Statement& operator=(Statement&& other) noexcept;
  ~Statement();
  explicit operator bool() const { return raw_ != nullptr; }
  bool busy() const;

  // Bound bytes must live until the statement was stepped.
  void bind(int place, std::int64_t number);
  void bind(int place, std::span<const std::uint8_t> bytes);
  void bind_nothing(int place);
  void bind_text(int place, std::string_view text);
  // True while there is a row.
  Result<bool> step();
  Status finish();  // steps to the end and makes it ready again
  void reset();

  std::int64_t number(int column) const;
  std::span<const std::uint8_t> bytes(int column) const;
  std::string_view text(int column) const;
  // False when the column does not hold exactly so many bytes.
  template <std::size_t N, class Tag>
  bool read(int column, Bytes<N, Tag>& out) const {
    const auto found = bytes(column);
    if (found.size() != N) return false;
    std::memcpy(out.bytes.data(), found.data(), N);
    return true;
  }

 private:
  sqlite3_stmt* raw_ = nullptr;
};

}  // namespace jambline::sqlite
