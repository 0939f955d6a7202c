// app/record/write_tables.h: the tables of a shop's record (folds/tables.h) as files, one a table.
//
// Shape:   NAME.csv or NAME.json. Cars are folded one after the other and let go again: the room
//          that it takes does not grow with the shop.
// Cars:    all, or those that were in the shop or worked on in the time that is asked for; the
//          tables of the shop are whole, that of entries has those of these cars and of the shop.
// Durable: all files are written into a folder beside (".part" after its name), synced, and the
//          folder renamed: the new name stands for a whole set or is not there. What a kill left
//          behind of that name is thrown away.
// Errors:  AlreadyDone when `to` is there and not empty; Unknown for a table that there is none of;
//          DiskFull, ReadOnly, NoSuchFile, FileFailed; those of reading the log.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "base/error.h"
#include "folds/questions.h"

namespace jambline::app {

struct TablesWanted {
  std::filesystem::path folder;
  std::filesystem::path to;
  std::vector<std::string> names;  // none: all
  bool json = false;
  folds::Period period = {};
};
struct TablesWritten {
  struct One {
    std::string file;
    std::uint64_t rows = 0;
  };
  std::vector<One> tables;
  std::uint64_t cars = 0;
};

Result<TablesWritten> write_tables(const TablesWanted& wanted);

}  // namespace jambline::app
