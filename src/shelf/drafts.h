// shelf/drafts.h: half-typed forms (drafts.db), so that a killed program gives back what was typed.
//
// Shape:   one text a form, by the form's name. Not truth: nothing here is ever signed or sent.
// Durable: synchronous=NORMAL; survives a kill of the program, may lose the last second at a power
//          cut.
// Threads: one owner.
// Errors:  DiskFull, ReadOnly, DatabaseDamaged, FileFailed.
#pragma once

#include <filesystem>
#include <map>
#include <string>

#include "base/error.h"
#include "sqlite/sqlite.h"

namespace jambline::shelf {

class Drafts {
 public:
  static Result<Drafts> open(const std::filesystem::path& folder);
  Result<std::map<std::string, std::string>> all();
  Status keep(const std::string& form, const std::string& text);  // empty text forgets the form

 private:
  sqlite::Database database_;
};

}  // namespace jambline::shelf
