#include <fstream>
#include <gtest/gtest.h>
#include <sqlite3.h>

#include "app/command_line_words.h"
#include "seal/fingerprint.h"
#include "tests/log/log_folder.h"
#include "tests/record/run.h"

namespace jambline::log {
namespace {

bool has(const jambline::Said& said, const std::string& words) {
  return said.words.find(words) != std::string::npos;
}
void change(const std::filesystem::path& folder, const std::string& sql) {
  sqlite3* raw = nullptr;
  ASSERT_EQ(sqlite3_open((folder / "log.db").c_str(), &raw), SQLITE_OK);
  std::string guards;
  const auto collect = [](void* out, int, char** column, char**) {
    *static_cast<std::string*>(out) += std::string(column[0]) + ";\n";
    return 0;
  };
  sqlite3_exec(raw, "SELECT sql FROM sqlite_schema WHERE type='trigger' AND tbl_name='entries'",
               collect, &guards, nullptr);
  const std::string all =
      "DROP TRIGGER entries_stay; DROP TRIGGER entries_never_change;" + sql + ";" + guards;
  ASSERT_EQ(sqlite3_exec(raw, all.c_str(), nullptr, nullptr, nullptr), SQLITE_OK)
      << sqlite3_errmsg(raw);
  sqlite3_close(raw);
}

TEST(Verify, AGoodFolderSaysHowFarItIsProven) {
  const TempFolder folder;
  auto log = small_log(folder.path(), 4);
  const auto print = seal::fingerprint(log->shop());
  const jambline::Said said = run("verify --quiet " + folder.path().string() + " --shop " + print);
  EXPECT_EQ(said.code, 0) << said.words;
  EXPECT_TRUE(has(said, "proven to entry 5, nothing can be said about later ones")) << said.words;
  EXPECT_TRUE(has(said, print));
  EXPECT_EQ(run("verify --quiet " + folder.path().string() +
                " --shop 0000-0000-0000-0000-0000-0000-0000-0001")
                .code,
            1);
  EXPECT_EQ(run("verify --quiet " + folder.path().string() + " --shop nonsense").code, 2);
}

TEST(Verify, NamesTheFirstBadEntryAndEndsWithOne) {
  const TempFolder folder;
  auto log = small_log(folder.path(), 4);
  const std::string device = log->device().hex();
  log.reset();
  change(folder.path(), "UPDATE entries SET signature=zeroblob(64) WHERE seq=4");
  const jambline::Said said = run("verify --quiet " + folder.path().string());
  EXPECT_EQ(said.code, 1);
  EXPECT_TRUE(has(said, "first bad entry")) << said.words;
  EXPECT_TRUE(has(said, "device " + device + ", seq 4")) << said.words;
  EXPECT_TRUE(has(said, "to do: ")) << said.words;
}

TEST(Verify, ADamagedFileIsBadAndAMissingFolderIsNoAnswer) {
  const TempFolder folder;
  std::ofstream(folder.path() / "log.db") << "no database";
  const jambline::Said said = run("verify --quiet " + folder.path().string());
  EXPECT_EQ(said.code, 1);
  EXPECT_TRUE(has(said, "damaged")) << said.words;
  EXPECT_EQ(run("verify --quiet " + folder.path().string() + "/none").code, 2);
  EXPECT_EQ(run("verify").code, 2);
  EXPECT_EQ(run("").code, 2);
  EXPECT_TRUE(has(run("--version"), "jambline-record "));
}

TEST(CommandLineWords, EveryCodeSaysWhatHappenedWhatIsKeptAndWhatToDo) {
  for (int code = 0; code <= static_cast<int>(Code::NotYet); ++code) {
    const auto words = app::words_for(static_cast<Code>(code));
    EXPECT_FALSE(words.what.empty() || words.kept.empty() || words.next.empty()) << code;
    EXPECT_NE(words.what, "something unknown happened") << code_name(static_cast<Code>(code));
  }
}

}  // namespace
}  // namespace jambline::log
