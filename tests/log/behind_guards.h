// tests/log/behind_guards.h: changes rows of a log as its triggers would never allow.
#pragma once

#include <filesystem>
#include <gtest/gtest.h>
#include <sqlite3.h>
#include <string>

namespace jambline::log {

// The guards stand again afterwards, as they were.
inline void change_behind_guards(const std::filesystem::path& folder, const std::string& change) {
  sqlite3* raw = nullptr;
  ASSERT_EQ(sqlite3_open((folder / "log.db").c_str(), &raw), SQLITE_OK);
  std::string guards;
  sqlite3_exec(
      raw, "SELECT sql FROM sqlite_schema WHERE type='trigger'",
      [](void* out, int, char** column, char**) {
        *static_cast<std::string*>(out) += std::string(column[0]) + ";\n";
        return 0;
      },
      &guards, nullptr);
  const std::string all =
      "DROP TRIGGER entries_stay; DROP TRIGGER entries_never_change; DROP TRIGGER "
      "erasures_are_entries; DROP TRIGGER erasures_stay; DROP TRIGGER erasures_never_change; " +
      change + ";" + guards;
  EXPECT_EQ(sqlite3_exec(raw, all.c_str(), nullptr, nullptr, nullptr), SQLITE_OK)
      << sqlite3_errmsg(raw);
  sqlite3_close(raw);
}

}  // namespace jambline::log
