// engine/whole_log.h: every entry of a log, folded in one pass: how floor and record are rebuilt.
//
// Threads: the log is read on the caller's thread; decoding and folding go on beside it on a thread
//          that has ended when the function returns.
// Errors:  those of reading the log; then nothing is given back.
#pragma once

#include <unordered_map>

#include "folds/job_fold.h"
#include "folds/rights_fold.h"
#include "folds/shop_fold.h"
#include "log/entry_log.h"

namespace jambline::engine {

struct WholeLog {
  folds::RightsFold rights;
  folds::ShopFold shop;
  std::unordered_map<JobId, folds::JobFold> jobs;
  std::int64_t entries = 0;
};

Result<WholeLog> fold_whole_log(log::EntryLog& log);

}  // namespace jambline::engine
