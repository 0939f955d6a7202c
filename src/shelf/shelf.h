// shelf/shelf.h: the second database (shelf.db): what the folds gave, so that a start does not have
// to fold years. It may be deleted at any time.
//
// Shape:   one floor row, one lesson, the worked spans and waits of a job, its account (accounts.h)
//          and what it is found by (find.h), stamped with the fold version and with how far
//          (arrival) of which shop's log it knows. Another stamp, or a damaged file: empty, and
//          everything is folded.
// Durable: synchronous=OFF; a torn shelf is found and made anew. One in memory where the folder
//          takes none.
// Threads: one owner (the work lane); Find reads beside it.
// Errors:  DiskFull, ReadOnly, FileFailed; the caller goes on without a shelf and says so.
#pragma once

#include <cstdint>
#include <filesystem>
#include <string>
#include <vector>

#include "base/error.h"
#include "folds/account.h"
#include "folds/find_words.h"
#include "folds/floor_view.h"
#include "folds/lesson.h"
#include "folds/worked.h"
#include "shelf/find.h"
#include "shelf/find_rows.h"
#include "sqlite/sqlite.h"

namespace jambline::shelf {

inline constexpr std::int64_t fold_version = 9;  // grows when a fold's answer changes

struct Car {
  folds::FloorRow row;
  folds::Lesson lesson;
  folds::Worked worked;
  folds::Findable found_by;
  folds::Account account;
};
// All of it of a car.
Car car_of(const folds::CarView& view);

class Shelf {
 public:
  static Result<Shelf> open(const std::filesystem::path& folder, const ShopId& shop);
  // Lives as long as it or a Find on it does.
  static Result<Shelf> in_memory(const ShopId& shop);

  const Whereabouts& where() const { return where_; }

  // How far the rows know the log; 0 = nothing is known.
  std::int64_t arrival() const { return arrival_; }

  // Puts cars and the new position in one transaction.
  Status put(const std::vector<Car>& cars, std::int64_t arrival);
  Status clear();
  // The job has no row; with the new position in one transaction.
  Status drop(const JobId& job, std::int64_t arrival);

  // By whose rights the rows were folded: the caller's word. Empty: by nobody's.
  const std::string& rights() const { return rights_; }
  Status keep_rights(const std::string& rights);

  // After a text of an entry was erased: nothing of it stays in the file.
  Status forget_erased() { return find_.forget_erased(database_); }

  Result<std::vector<folds::FloorRow>> in_work();  // not delivered, by promise then by opening
  Result<std::vector<folds::FloorRow>> all();      // newest first
  // At most so many, by job, from the one after `job` on (none: from the first).
  Result<std::vector<folds::Lesson>> lessons_after(const JobId& job, int most);
  // Spans and waits that reach into [from, to), by start.
  Result<folds::Worked> worked(std::int64_t from_ms, std::int64_t to_ms);

 private:
  static Result<Shelf> ready(sqlite::Database database, Whereabouts where, const ShopId& shop);

  sqlite::Database database_;
  Whereabouts where_;
  FindRows find_;
  sqlite::Statement put_row_;
  sqlite::Statement put_lesson_;
  sqlite::Statement drop_worked_;
  sqlite::Statement put_worked_;
  sqlite::Statement drop_waited_;
  sqlite::Statement put_waited_;
  sqlite::Statement put_account_;
  sqlite::Statement put_position_;
  sqlite::Statement in_work_;
  sqlite::Statement all_;
  sqlite::Statement lessons_after_;
  sqlite::Statement worked_;
  sqlite::Statement waited_;
  std::int64_t arrival_ = 0;
  std::string rights_;
};

}  // namespace jambline::shelf
