// app/record/read_folder.h: a shop's folder read from its log, without changing anything in it.
//
// Shape:   every car's view, newest first, and the shop's. The shelf is not looked at: what is
// shown
//          comes from the entries alone.
// Errors:  those of log/entry_log.h at open; of find_car Unknown, and Disputed when several cars
// fit
//          (args: cars).
// Threads: one owner; opens the log read-only, also beside a running program.
#pragma once

#include <filesystem>
#include <memory>
#include <vector>

#include "base/error.h"
#include "blobs/blob_store.h"
#include "entries/entry.h"
#include "folds/car_view.h"
#include "folds/rights_fold.h"
#include "folds/shop_view.h"
#include "log/entry_log.h"

namespace jambline::app {

struct ShopFolder {
  folds::RightsFold rights;
  std::unique_ptr<log::EntryLog> log;
  folds::ShopView shop;
  std::vector<folds::CarView> cars;  // those that were opened, newest first
};

Result<ShopFolder> read_folder(const std::filesystem::path& folder);

// By job id, its first eight signs or more, the plate, or any part of it; blanks, hyphens and
// capitals do not count. A whole plate goes before a part of one.
Result<const folds::CarView*> find_car(const ShopFolder& folder, const std::string& wanted);

// The car's entries in the order in which they are shown; refused ones are marked.
Result<std::vector<entries::Entry>> time_line(const ShopFolder& folder, const JobId& job);

// Where the folder keeps the files of its pictures.
std::filesystem::path blobs_of(const std::filesystem::path& folder);

}  // namespace jambline::app
