#include "shelf/shelf.h"

#include <atomic>

#include "base/json.h"

namespace jambline::shelf {

namespace {
using sqlite::Database;

constexpr const char* make_tables =
    "CREATE TABLE IF NOT EXISTS stamp (shop TEXT, version INTEGER, arrival INTEGER);"
    "CREATE TABLE IF NOT EXISTS rights (stamp TEXT);"
    "CREATE TABLE IF NOT EXISTS car (job BLOB PRIMARY KEY, delivered INTEGER, promised INTEGER,"
    " opened INTEGER NOT NULL, row TEXT NOT NULL) WITHOUT ROWID;"
    "CREATE TABLE IF NOT EXISTS lesson (job BLOB PRIMARY KEY, lesson TEXT NOT NULL) WITHOUT ROWID;"
    "CREATE TABLE IF NOT EXISTS account (job BLOB PRIMARY KEY, opened INTEGER NOT NULL,"
    " last INTEGER NOT NULL, account TEXT NOT NULL) WITHOUT ROWID;"
    "CREATE INDEX IF NOT EXISTS account_by_last ON account (last);"
    "CREATE TABLE IF NOT EXISTS worked (job BLOB NOT NULL, start INTEGER NOT NULL,"
    " end INTEGER NOT NULL, row TEXT NOT NULL);"
    "CREATE INDEX IF NOT EXISTS worked_by_end ON worked (end);"
    "CREATE INDEX IF NOT EXISTS worked_by_job ON worked (job);"
    "CREATE TABLE IF NOT EXISTS waited (job BLOB NOT NULL, start INTEGER NOT NULL,"
    " end INTEGER, row TEXT NOT NULL);"
    "CREATE INDEX IF NOT EXISTS waited_by_end ON waited (end);"
    "CREATE INDEX IF NOT EXISTS waited_by_job ON waited (job);"
    "CREATE INDEX IF NOT EXISTS car_in_work ON car (promised, opened) WHERE delivered IS NULL;"
    "CREATE INDEX IF NOT EXISTS car_by_opening ON car (opened);";

constexpr const char* forget_cars =
    "DELETE FROM car; DELETE FROM lesson; DELETE FROM account; DELETE FROM worked;"
    " DELETE FROM waited; ";

void bind_time(sqlite::Statement& statement, int place, const std::optional<std::int64_t>& ms) {
  if (ms)
    statement.bind(place, *ms);
  else
    statement.bind_nothing(place);
}

Result<Database> open_file(const std::filesystem::path& file) {
  JAMBLINE_ASSIGN(Database database, Database::open(file, Database::Mode::Create, ""));
  JAMBLINE_TRY(
      database.run("PRAGMA journal_mode=WAL; PRAGMA synchronous=OFF;"
                   "PRAGMA secure_delete=ON;"));
  JAMBLINE_TRY(database.run(make_tables));
  return database;
}

void forget(const std::filesystem::path& file) {
  for (const char* ending : {"", "-wal", "-shm"}) {
    std::error_code ignored;  // what cannot be removed is told by the open that follows
    std::filesystem::remove(file.string() + ending, ignored);
  }
}

// What the query gives, read from its first column.
template <class Value>
Result<std::vector<Value>> values(sqlite::Statement& query) {
  std::vector<Value> out;
  while (true) {
    JAMBLINE_ASSIGN(const bool more, query.step());
    if (!more) break;
    auto value = from_json<Value>(query.text(0));
    if (!value) {
      query.reset();
      return fail(std::move(value.error()));
    }
    out.push_back(std::move(*value));
  }
  query.reset();
  return out;
}
}  // namespace

Car car_of(const folds::CarView& view) {
  return {folds::floor_row(view), folds::lesson_of(view), folds::worked_of(view),
          folds::findable(view), folds::account_of(view)};
}

Result<Shelf> Shelf::open(const std::filesystem::path& folder, const ShopId& shop) {
  const auto file = folder / "shelf.db";
  const auto open_once = [&]() -> Result<Shelf> {
    JAMBLINE_ASSIGN(Database database, open_file(file));
    return ready(std::move(database), {file, {}}, shop);
  };
  auto shelf = open_once();
  if (!shelf &&
      (shelf.error().code == Code::DatabaseDamaged || shelf.error().code == Code::FileFailed)) {
    forget(file);
    shelf = open_once();
  }
  return shelf;
}

Result<Shelf> Shelf::in_memory(const ShopId& shop) {
  static std::atomic<int> number{0};
  // A name that begins with a stroke is shared within the process: https://sqlite.org/memdb.html
  const Whereabouts where{"/jambline-shelf-" + std::to_string(++number), "memdb"};
  JAMBLINE_ASSIGN(Database database, Database::open(where.file, Database::Mode::Create, where.vfs));
  JAMBLINE_TRY(database.run(make_tables));
  return ready(std::move(database), where, shop);
}

Result<Shelf> Shelf::ready(sqlite::Database database, Whereabouts where, const ShopId& shop) {
  Shelf shelf;
  shelf.database_ = std::move(database);
  shelf.where_ = std::move(where);
  JAMBLINE_ASSIGN(shelf.put_row_,
                  shelf.database_.prepare("INSERT OR REPLACE INTO car VALUES (?, ?, ?, ?, ?)"));
  JAMBLINE_ASSIGN(shelf.put_lesson_,
                  shelf.database_.prepare("INSERT OR REPLACE INTO lesson VALUES (?, ?)"));
  JAMBLINE_ASSIGN(shelf.put_account_,
                  shelf.database_.prepare("INSERT OR REPLACE INTO account VALUES (?, ?, ?, ?)"));
  JAMBLINE_ASSIGN(shelf.drop_worked_, shelf.database_.prepare("DELETE FROM worked WHERE job = ?"));
  JAMBLINE_ASSIGN(shelf.put_worked_,
                  shelf.database_.prepare("INSERT INTO worked VALUES (?, ?, ?, ?)"));
  JAMBLINE_ASSIGN(shelf.worked_,
                  shelf.database_.prepare("SELECT row FROM worked WHERE end > ? AND start < ?"
                                          " ORDER BY start, end"));
  JAMBLINE_ASSIGN(shelf.drop_waited_, shelf.database_.prepare("DELETE FROM waited WHERE job = ?"));
  JAMBLINE_ASSIGN(shelf.put_waited_,
                  shelf.database_.prepare("INSERT INTO waited VALUES (?, ?, ?, ?)"));
  JAMBLINE_ASSIGN(shelf.waited_,
                  shelf.database_.prepare("SELECT row FROM waited WHERE (end > ? OR end IS NULL)"
                                          " AND start < ? ORDER BY start"));
  JAMBLINE_ASSIGN(shelf.put_position_, shelf.database_.prepare("UPDATE stamp SET arrival = ?"));
  JAMBLINE_ASSIGN(shelf.in_work_,
                  shelf.database_.prepare("SELECT row FROM car WHERE delivered IS NULL"
                                          " ORDER BY promised IS NULL, promised, opened"));
  JAMBLINE_ASSIGN(shelf.all_, shelf.database_.prepare("SELECT row FROM car ORDER BY opened DESC"));
  JAMBLINE_ASSIGN(shelf.lessons_after_,
                  shelf.database_.prepare("SELECT lesson FROM lesson WHERE job > ?"
                                          " ORDER BY job LIMIT ?"));

  JAMBLINE_ASSIGN(
      const std::int64_t fits,
      shelf.database_.number(("SELECT count(*) FROM stamp WHERE version = " +
                              std::to_string(fold_version) + " AND shop = '" + shop.hex() + "'")
                                 .c_str()));
  if (fits == 1) {
    JAMBLINE_ASSIGN(shelf.arrival_, shelf.database_.number("SELECT arrival FROM stamp"));
  } else {
    JAMBLINE_TRY(shelf.database_.run((std::string(forget_cars) +
                                      "DELETE FROM stamp; INSERT INTO stamp VALUES ('" +
                                      shop.hex() + "', " + std::to_string(fold_version) + ", 0)")
                                         .c_str()));
    JAMBLINE_TRY(FindRows::clear(shelf.database_));
  }
  JAMBLINE_TRY(FindRows::make(shelf.database_));
  JAMBLINE_ASSIGN(shelf.find_, FindRows::of(shelf.database_));
  JAMBLINE_ASSIGN(auto rights, shelf.database_.prepare("SELECT stamp FROM rights"));
  JAMBLINE_ASSIGN(const bool known, rights.step());
  if (known) shelf.rights_ = rights.text(0);
  return shelf;
}

Status Shelf::put(const std::vector<Car>& cars, std::int64_t arrival) {
  JAMBLINE_TRY(database_.run("BEGIN"));
  const auto put_all = [&]() -> Status {
    for (const auto& [row, lesson, worked, found_by, account] : cars) {
      JAMBLINE_TRY(find_.put(row.job, found_by));
      const std::string json = to_json(row);
      put_row_.bind(1, row.job.bytes);
      bind_time(put_row_, 2, row.delivered_ms);
      bind_time(put_row_, 3, row.promised_ms);
      put_row_.bind(4, row.opened_ms);
      put_row_.bind_text(5, json);
      JAMBLINE_TRY(put_row_.finish());
      const std::string learned = to_json(lesson);
      put_lesson_.bind(1, row.job.bytes);
      put_lesson_.bind_text(2, learned);
      JAMBLINE_TRY(put_lesson_.finish());
      const std::string says = to_json(account);
      put_account_.bind(1, row.job.bytes);
      put_account_.bind(2, account.opened_ms);
      put_account_.bind(3, account.last_ms.value_or(INT64_MAX));
      put_account_.bind_text(4, says);
      JAMBLINE_TRY(put_account_.finish());
      drop_worked_.bind(1, row.job.bytes);
      JAMBLINE_TRY(drop_worked_.finish());
      for (const auto& span : worked.spans) {
        const std::string span_text = to_json(span);
        put_worked_.bind(1, row.job.bytes);
        put_worked_.bind(2, span.start_ms);
        put_worked_.bind(3, span.end_ms);
        put_worked_.bind_text(4, span_text);
        JAMBLINE_TRY(put_worked_.finish());
      }
      drop_waited_.bind(1, row.job.bytes);
      JAMBLINE_TRY(drop_waited_.finish());
      for (const auto& wait : worked.waits) {
        const std::string wait_text = to_json(wait);
        put_waited_.bind(1, row.job.bytes);
        put_waited_.bind(2, wait.start_ms);
        bind_time(put_waited_, 3, wait.end_ms);
        put_waited_.bind_text(4, wait_text);
        JAMBLINE_TRY(put_waited_.finish());
      }
    }
    put_position_.bind(1, arrival);
    return put_position_.finish();
  };
  auto done = put_all();
  if (done) done = database_.run("COMMIT");
  if (!done) {
    if (database_.in_transaction()) JAMBLINE_TRY(database_.run("ROLLBACK"));
    return done;
  }
  arrival_ = arrival;
  return {};
}

Status Shelf::clear() {
  arrival_ = 0;
  JAMBLINE_TRY(database_.run(
      ("BEGIN; " + std::string(forget_cars) + "UPDATE stamp SET arrival = 0; COMMIT").c_str()));
  return FindRows::clear(database_);
}

Status Shelf::drop(const JobId& job, std::int64_t arrival) {
  const std::string of_job = " WHERE job = x'" + job.hex() + "';";
  JAMBLINE_TRY(database_.run("BEGIN"));
  std::string all;
  for (const char* table : {"car", "lesson", "account", "worked", "waited"})
    all += std::string("DELETE FROM ") + table + of_job;
  all += "UPDATE stamp SET arrival = " + std::to_string(arrival) + "; COMMIT";
  auto done = find_.drop(job);
  if (done) done = database_.run(all.c_str());
  if (!done) {
    if (database_.in_transaction()) JAMBLINE_TRY(database_.run("ROLLBACK"));
    return done;
  }
  arrival_ = arrival;
  return {};
}

Status Shelf::keep_rights(const std::string& rights) {
  if (rights == rights_) return {};
  JAMBLINE_TRY(database_.run("DELETE FROM rights"));
  JAMBLINE_ASSIGN(auto put, database_.prepare("INSERT INTO rights VALUES (?)"));
  put.bind_text(1, rights);
  JAMBLINE_TRY(put.finish());
  rights_ = rights;
  return {};
}

Result<std::vector<folds::FloorRow>> Shelf::in_work() {
  return values<folds::FloorRow>(in_work_);
}
Result<std::vector<folds::FloorRow>> Shelf::all() {
  return values<folds::FloorRow>(all_);
}
Result<std::vector<folds::Lesson>> Shelf::lessons_after(const JobId& job, int most) {
  lessons_after_.bind(1, job.bytes);
  lessons_after_.bind(2, std::int64_t{most});
  return values<folds::Lesson>(lessons_after_);
}
Result<folds::Worked> Shelf::worked(std::int64_t from_ms, std::int64_t to_ms) {
  folds::Worked out;
  worked_.bind(1, from_ms);
  worked_.bind(2, to_ms);
  JAMBLINE_ASSIGN(out.spans, values<folds::WorkedRow>(worked_));
  waited_.bind(1, from_ms);
  waited_.bind(2, to_ms);
  JAMBLINE_ASSIGN(out.waits, values<folds::WaitedRow>(waited_));
  return out;
}

}  // namespace jambline::shelf
