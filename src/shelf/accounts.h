// shelf/accounts.h: what cars say to a manager's questions (folds/account.h), read from the shelf.
//
// Reads:   what was committed last, with a connection of its own; writers never wait for it.
// Cost:    what reaches into the time that is asked for, and nothing else; some 20 us a car.
// Threads: one at a time.
// Errors:  those of sqlite/sqlite.h, Stopped, and those of base/json.h of a damaged row.
#pragma once

#include <cstdint>
#include <memory>
#include <stop_token>
#include <vector>

#include "folds/account.h"
#include "shelf/find.h"

namespace jambline::shelf {

class Accounts {
 public:
  static Result<Accounts> open(const Whereabouts& where);

  // Of cars that were in the shop, or worked on, in [from, to); by opening, then job.
  Result<std::vector<folds::Account>> read(std::int64_t from_ms, std::int64_t to_ms,
                                           const std::stop_token& stop = {});

 private:
  std::unique_ptr<sqlite::Database> database_;
  sqlite::Statement read_;
};

}  // namespace jambline::shelf
