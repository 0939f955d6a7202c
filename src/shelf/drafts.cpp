#include "shelf/drafts.h"

namespace jambline::shelf {

Result<Drafts> Drafts::open(const std::filesystem::path& folder) {
  Drafts drafts;
  JAMBLINE_ASSIGN(drafts.database_,
                  sqlite::Database::open(folder / "drafts.db", sqlite::Database::Mode::Create, ""));
  JAMBLINE_TRY(
      drafts.database_.run("PRAGMA journal_mode=WAL; PRAGMA synchronous=NORMAL;"
                           "CREATE TABLE IF NOT EXISTS draft (form TEXT PRIMARY KEY, text TEXT NOT "
                           "NULL) WITHOUT ROWID"));
  return drafts;
}

Result<std::map<std::string, std::string>> Drafts::all() {
  JAMBLINE_ASSIGN(sqlite::Statement query, database_.prepare("SELECT form, text FROM draft"));
  std::map<std::string, std::string> out;
  while (true) {
    JAMBLINE_ASSIGN(const bool more, query.step());
    if (!more) return out;
    out.emplace(query.text(0), query.text(1));
  }
}

Status Drafts::keep(const std::string& form, const std::string& text) {
  if (text.empty()) {
    JAMBLINE_ASSIGN(sqlite::Statement forget,
                    database_.prepare("DELETE FROM draft WHERE form = ?"));
    forget.bind_text(1, form);
    return forget.finish();
  }
  JAMBLINE_ASSIGN(sqlite::Statement put,
                  database_.prepare("INSERT OR REPLACE INTO draft VALUES (?, ?)"));
  put.bind_text(1, form);
  put.bind_text(2, text);
  return put.finish();
}

}  // namespace jambline::shelf
