#include "shelf/find_rows.h"

#include <algorithm>
#include <array>

namespace jambline::shelf {

namespace {

constexpr const char* make_find_tables =
    "CREATE TABLE IF NOT EXISTS find_fact (place INTEGER PRIMARY KEY, job BLOB NOT NULL UNIQUE,"
    " opened INTEGER NOT NULL, delivered INTEGER, promised INTEGER, next INTEGER,"
    " flags INTEGER NOT NULL);"
    "CREATE VIRTUAL TABLE IF NOT EXISTS find_words USING fts5(plate, vin, color, notes, work,"
    " reasons, customer, codes, parts, tokenize='unicode61 remove_diacritics 2',"
    " prefix='1 2 3 4', columnsize=0);";

// The order within a millisecond; the time that the rest of a place can hold.
constexpr int order_bits = 18;
constexpr std::int64_t last_ms = (std::int64_t{1} << 44U) - 1;

std::array<std::string_view, find_columns> columns_of(const folds::FindWords& words) {
  return {words.plate,   words.vin,      words.color, words.notes, words.work,
          words.reasons, words.customer, words.codes, words.parts};
}

std::int64_t flags_of(const folds::FindFacts& facts) {
  return (facts.redo ? redo_flag : 0) | (facts.came_back ? came_back_flag : 0) |
         (facts.spray_override ? spray_override_flag : 0) |
         (facts.other_override ? other_override_flag : 0) |
         (facts.sprayed_without ? sprayed_without_flag : 0) |
         (facts.pictures_missing ? pictures_missing_flag : 0) | (facts.amended ? amended_flag : 0) |
         (facts.disputed ? disputed_flag : 0);
}

void bind_number(sqlite::Statement& to, int place, const std::optional<std::int64_t>& number) {
  if (number)
    to.bind(place, *number);
  else
    to.bind_nothing(place);
}

}  // namespace

std::int64_t first_place(std::int64_t opened_ms) {
  return std::clamp<std::int64_t>(opened_ms, 0, last_ms) << order_bits;
}

std::int64_t wanted_place(std::int64_t opened_ms, const JobId& job) {
  std::uint32_t mixed = 2'166'136'261U;
  for (const std::uint8_t byte : job.bytes) mixed = (mixed ^ byte) * 16'777'619U;
  return first_place(opened_ms) | (mixed >> (32U - order_bits));
}

Status FindRows::make(sqlite::Database& database) {
  return database.run(make_find_tables);
}

Status FindRows::clear(sqlite::Database& database) {
  JAMBLINE_TRY(database.run("DROP TABLE IF EXISTS find_words; DROP TABLE IF EXISTS find_fact;"));
  return make(database);
}

Result<FindRows> FindRows::of(sqlite::Database& database) {
  FindRows rows;
  JAMBLINE_ASSIGN(rows.known_,
                  database.prepare("SELECT place, opened FROM find_fact WHERE job = ?"));
  JAMBLINE_ASSIGN(rows.taken_, database.prepare("SELECT 1 FROM find_fact WHERE place = ?"));
  JAMBLINE_ASSIGN(rows.words_, database.prepare((std::string("SELECT ") + find_column_names +
                                                 " FROM find_words WHERE rowid = ?")
                                                    .c_str()));
  JAMBLINE_ASSIGN(rows.put_fact_, database.prepare("INSERT OR REPLACE INTO find_fact"
                                                   " VALUES (?, ?, ?, ?, ?, ?, ?)"));
  JAMBLINE_ASSIGN(rows.drop_fact_, database.prepare("DELETE FROM find_fact WHERE place = ?"));
  JAMBLINE_ASSIGN(rows.add_words_,
                  database.prepare((std::string("INSERT INTO find_words (") + find_column_names +
                                    ", rowid) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)")
                                       .c_str()));
  JAMBLINE_ASSIGN(rows.change_words_,
                  database.prepare((std::string("UPDATE find_words SET (") + find_column_names +
                                    ") = (?, ?, ?, ?, ?, ?, ?, ?, ?) WHERE rowid = ?")
                                       .c_str()));
  JAMBLINE_ASSIGN(rows.drop_words_, database.prepare("DELETE FROM find_words WHERE rowid = ?"));
  return rows;
}

// Two cars of one millisecond may want the same: the later one goes before it.
Result<std::int64_t> FindRows::free_place(std::int64_t opened_ms, const JobId& job) {
  for (std::int64_t place = wanted_place(opened_ms, job);; --place) {
    taken_.bind(1, place);
    JAMBLINE_ASSIGN(const bool taken, taken_.step());
    taken_.reset();
    if (!taken) return place;
  }
}

Result<bool> FindRows::same_words(std::int64_t place, const folds::FindWords& words) {
  words_.bind(1, place);
  JAMBLINE_ASSIGN(bool same, words_.step());
  const auto columns = columns_of(words);
  for (int column = 0; same && column < find_columns; ++column)
    same = words_.text(column) == columns[static_cast<std::size_t>(column)];
  words_.reset();
  return same;
}

Status FindRows::put_words(sqlite::Statement& put, std::int64_t place,
                           const folds::FindWords& words) {
  const auto columns = columns_of(words);
  for (int column = 0; column < find_columns; ++column)
    put.bind_text(column + 1, columns[static_cast<std::size_t>(column)]);
  put.bind(find_columns + 1, place);
  return put.finish();
}

Status FindRows::put(const JobId& job, const folds::Findable& car) {
  known_.bind(1, job.bytes);
  JAMBLINE_ASSIGN(const bool known, known_.step());
  std::int64_t place = known ? known_.number(0) : 0;
  const bool moved = known && known_.number(1) != car.facts.opened_ms;
  known_.reset();
  if (moved) JAMBLINE_TRY(drop(job));
  if (!known || moved) {
    JAMBLINE_ASSIGN(place, free_place(car.facts.opened_ms, job));
    JAMBLINE_TRY(put_words(add_words_, place, car.words));
  } else {
    JAMBLINE_ASSIGN(const bool same, same_words(place, car.words));
    if (!same) JAMBLINE_TRY(put_words(change_words_, place, car.words));
  }
  put_fact_.bind(1, place);
  put_fact_.bind(2, job.bytes);
  put_fact_.bind(3, car.facts.opened_ms);
  bind_number(put_fact_, 4, car.facts.delivered_ms);
  bind_number(put_fact_, 5, car.facts.promised_ms);
  if (car.facts.next_stage)
    put_fact_.bind(6, static_cast<std::int64_t>(*car.facts.next_stage));
  else
    put_fact_.bind_nothing(6);
  put_fact_.bind(7, flags_of(car.facts));
  return put_fact_.finish();
}

Status FindRows::drop(const JobId& job) {
  known_.bind(1, job.bytes);
  JAMBLINE_ASSIGN(const bool known, known_.step());
  const std::int64_t place = known ? known_.number(0) : 0;
  known_.reset();
  if (!known) return {};
  drop_words_.bind(1, place);
  JAMBLINE_TRY(drop_words_.finish());
  drop_fact_.bind(1, place);
  return drop_fact_.finish();
}

// Words of a document that was changed stay in older parts of the index until those are merged.
Status FindRows::forget_erased(sqlite::Database& database) {
  JAMBLINE_TRY(database.run("INSERT INTO find_words(find_words) VALUES('optimize')"));
  // They also stood in the write-ahead log; a reader may hold this up, not stop it.
  (void)database.run("PRAGMA wal_checkpoint(TRUNCATE)");
  return {};
}

}  // namespace jambline::shelf
