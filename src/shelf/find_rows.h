// shelf/find_rows.h: the tables that find.h reads, written in the shelf's own transactions.
//
// Shape:   find_words, a full-text table with one document a job, and find_fact, its facts. Both
//          go by the car's place in the order of opening (find.h). What did not change is not
//          written again.
// Threads: the shelf's owner. Internal to shelf/.
#pragma once

#include "folds/find_words.h"
#include "sqlite/sqlite.h"

namespace jambline::shelf {

inline constexpr int find_columns = 9;  // of find_words, in this order:
inline constexpr const char* find_column_names =
    "plate, vin, color, notes, work, reasons, customer, codes, parts";

// The bits of find_fact.flags.
inline constexpr std::int64_t redo_flag = 1;
inline constexpr std::int64_t came_back_flag = 2;
inline constexpr std::int64_t spray_override_flag = 4;
inline constexpr std::int64_t other_override_flag = 8;
inline constexpr std::int64_t sprayed_without_flag = 16;
inline constexpr std::int64_t pictures_missing_flag = 32;
inline constexpr std::int64_t amended_flag = 64;
inline constexpr std::int64_t disputed_flag = 128;

// The place of a car that nobody else has; the first one of all cars opened at that time or later.
std::int64_t wanted_place(std::int64_t opened_ms, const JobId& job);
std::int64_t first_place(std::int64_t opened_ms);

class FindRows {
 public:
  static Status make(sqlite::Database& database);   // where they are not there
  static Status clear(sqlite::Database& database);  // empty ones
  static Result<FindRows> of(sqlite::Database& database);

  Status put(const JobId& job, const folds::Findable& car);
  Status drop(const JobId& job);
  // After a text was erased: what the index still holds of it goes.
  Status forget_erased(sqlite::Database& database);

 private:
  Result<std::int64_t> free_place(std::int64_t opened_ms, const JobId& job);
  Result<bool> same_words(std::int64_t place, const folds::FindWords& words);
  Status put_words(sqlite::Statement& put, std::int64_t place, const folds::FindWords& words);

  sqlite::Statement known_;
  sqlite::Statement taken_;
  sqlite::Statement words_;
  sqlite::Statement put_fact_;
  sqlite::Statement drop_fact_;
  sqlite::Statement add_words_;
  sqlite::Statement change_words_;
  sqlite::Statement drop_words_;
};

}  // namespace jambline::shelf
