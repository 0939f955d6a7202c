#include <fstream>
#include <grp.h>
#include <gtest/gtest.h>
#include <sqlite3.h>
#include <sstream>
#include <sys/wait.h>
#include <unistd.h>

#include "tests/log/behind_guards.h"
#include "tests/log/log_folder.h"
#include "tests/log/refusing_log.h"

namespace jambline::log {
namespace {

namespace fs = std::filesystem;

void put_bytes(const fs::path& file, const std::string& bytes) {
  std::ofstream(file, std::ios::binary | std::ios::trunc) << bytes;
}
Code opened(const fs::path& folder, OpenMode mode = OpenMode::Write) {
  const auto log = EntryLog::open(folder, mode, no_ballast());
  return log ? Code::Missing : log.error().code;
}
void sql(const fs::path& folder, const std::string& text) {
  sqlite3* raw = nullptr;
  ASSERT_EQ(sqlite3_open((folder / "log.db").c_str(), &raw), SQLITE_OK);
  EXPECT_EQ(sqlite3_exec(raw, text.c_str(), nullptr, nullptr, nullptr), SQLITE_OK)
      << sqlite3_errmsg(raw);
  sqlite3_close(raw);
}
// Runs `body` in a child that may not write where modes forbid it, also when the tests run as root.
int as_a_plain_person(const std::function<int()>& body) {
  const pid_t child = fork();
  if (child == 0) {
    if (geteuid() == 0 && (setgroups(0, nullptr) != 0 || setgid(65534) != 0 || setuid(65534) != 0))
      _exit(99);
    _exit(body());
  }
  int status = 0;
  waitpid(child, &status, 0);
  return WIFEXITED(status) ? WEXITSTATUS(status) : 98;
}

TEST(Open, ASecondCopyOnOneFolderIsRefusedAndAReaderIsNot) {
  const TempFolder folder;
  auto log = small_log(folder.path(), 1);
  EXPECT_EQ(opened(folder.path()), Code::FolderInUse);
  auto reader = open_log(folder.path(), OpenMode::ReadOnly);
  EXPECT_EQ(reader->last_arrival(), 2);
  SeededRandom random(6);
  const Draft draft = note("new");
  must(log->append(key_number(1), {}, {&draft, 1}, at(), random));
  EXPECT_EQ(reader->last_arrival(), 3);
  EXPECT_EQ(reader->heads().front().seq, 3U);
  EXPECT_EQ(reader->append(key_number(1), {}, {&draft, 1}, at(), random).error().code,
            Code::ReadOnly);
  log.reset();
  EXPECT_EQ(opened(folder.path()), Code::Missing);
}

TEST(Open, AnotherDevicesKeyMayNotAppend) {
  const TempFolder folder;
  auto log = small_log(folder.path(), 1);
  SeededRandom random(6);
  const Draft draft = note("mine");
  EXPECT_EQ(log->append(key_number(2), {}, {&draft, 1}, at(), random).error().code, Code::WrongKey);
  EXPECT_EQ(log->last_arrival(), 2);
}

TEST(Open, AnEmptyATruncatedAndAForeignFileAreRefusedAndLeftAsTheyAre) {
  const TempFolder folder;
  small_log(folder.path(), 12).reset();
  const auto file = folder.path() / "log.db";
  const std::string whole = test::whole_file(file);
  std::vector<std::string> spoilt{"", "x", std::string(4096, '\0'), "SQLite format 3",
                                  std::string(100, 'S')};
  for (const std::size_t length : {std::size_t{16}, std::size_t{100}, std::size_t{4096},
                                   whole.size() / 2, whole.size() - 4096, whole.size() - 1})
    spoilt.push_back(whole.substr(0, length));
  for (const auto& bytes : spoilt) {
    put_bytes(file, bytes);
    const auto log = EntryLog::open(folder.path(), OpenMode::Write, no_ballast());
    ASSERT_FALSE(log) << bytes.size();
    EXPECT_EQ(log.error().code, Code::DatabaseDamaged) << bytes.size();
    EXPECT_FALSE(log.error().arg("cause").empty());
    EXPECT_EQ(test::whole_file(file), bytes) << bytes.size();
  }
  fs::remove(file);
  sql(folder.path(), "CREATE TABLE other(a); INSERT INTO other VALUES(1)");
  const std::string foreign = test::whole_file(file);
  EXPECT_EQ(opened(folder.path()), Code::DatabaseDamaged);
  EXPECT_EQ(test::whole_file(file), foreign);
  put_bytes(file, whole);
  EXPECT_EQ(opened(folder.path()), Code::Missing);
}

TEST(Open, AMissingLogBesideItsWriteAheadLogIsNotReplacedByANewOne) {
  const TempFolder folder;
  put_bytes(folder.path() / "log.db-wal", "something");
  EXPECT_EQ(opened(folder.path()), Code::DatabaseDamaged);
  EXPECT_FALSE(fs::exists(folder.path() / "log.db"));
}

TEST(Open, WhatACreationLeftBehindDoesNotMatter) {
  const TempFolder folder;
  for (const char* name : {"log.db.new", "log.db.new-wal", "log.db.new-journal"})
    put_bytes(folder.path() / name, "half a file");
  small_log(folder.path(), 1).reset();
  EXPECT_FALSE(audit(folder.path()).first_bad);
  EXPECT_FALSE(fs::exists(folder.path() / "log.db.new"));
}

// One changed byte anywhere is found, or hit a byte that nobody reads.
TEST(Open, AChangedByteAnywhereIsFoundOrChangesNoEntry) {
  const TempFolder folder;
  std::vector<std::string> wanted;
  {
    auto log = small_log(folder.path(), 12);
    for (const auto& entry : entries_of(*log)) wanted.push_back(seal::encode(entry));
  }
  const auto file = folder.path() / "log.db";
  const std::string whole = test::whole_file(file);
  SeededRandom random(31);
  int found = 0;
  for (int round = 0; round < 500; ++round) {
    std::string bytes = whole;
    const auto place = random.below(bytes.size());
    bytes[place] = static_cast<char>(bytes[place] ^ static_cast<char>(1U << random.below(8)));
    put_bytes(file, bytes);
    const auto result = EntryLog::audit(folder.path(), {}, {});
    if (!result || result->first_bad) {
      ++found;
      const auto log = EntryLog::open(folder.path(), OpenMode::Write, no_ballast());
      if (!log) {
        EXPECT_EQ(test::whole_file(file), bytes) << "refused and changed at " << place;
      }
    } else {
      auto log = EntryLog::open(folder.path(), OpenMode::ReadOnly, no_ballast());
      ASSERT_TRUE(log) << place;
      const auto entries = entries_of(**log);
      ASSERT_EQ(entries.size(), wanted.size()) << place;
      for (std::size_t i = 0; i < entries.size(); ++i)
        ASSERT_EQ(seal::encode(entries[i]), wanted[i]) << place;
    }
    for (const char* name : {"log.db-wal", "log.db-shm"}) fs::remove(folder.path() / name);
  }
  EXPECT_GT(found, 50);
}

TEST(Open, ANewerSchemaIsReadAndNotWritten) {
  const TempFolder folder;
  small_log(folder.path(), 3).reset();
  sql(folder.path(), "ALTER TABLE entries ADD COLUMN later TEXT; PRAGMA user_version=2");
  auto log = open_log(folder.path());
  EXPECT_TRUE(log->newer_schema());
  EXPECT_FALSE(log->writable());
  EXPECT_EQ(all_of(*log).size(), 4U);
  SeededRandom random(6);
  const Draft draft = note("no");
  EXPECT_EQ(log->append(key_number(1), {}, {&draft, 1}, at(), random).error().code,
            Code::NewerSchema);
  EXPECT_FALSE(audit(folder.path()).first_bad);
}

TEST(Open, AMissingGuardIsDamage) {
  const TempFolder folder;
  small_log(folder.path(), 1).reset();
  sql(folder.path(), "DROP TRIGGER entries_stay");
  EXPECT_EQ(opened(folder.path()), Code::DatabaseDamaged);
}

TEST(Open, AReadOnlyFolderOpensForReadingAndSaysReadOnlyForWriting) {
  const TempFolder folder;
  small_log(folder.path(), 2).reset();
  fs::permissions(folder.path() / "log.db", static_cast<fs::perms>(0444));
  fs::permissions(folder.path() / "lock", static_cast<fs::perms>(0444));
  fs::permissions(folder.path(), static_cast<fs::perms>(0555));
  EXPECT_EQ(as_a_plain_person([&] { return static_cast<int>(opened(folder.path())); }),
            static_cast<int>(Code::ReadOnly));
  EXPECT_EQ(as_a_plain_person([&] {
              const auto log = EntryLog::open(folder.path(), OpenMode::ReadOnly);
              return log ? static_cast<int>(entries_of(**log).size()) : 97;
            }),
            3);
  EXPECT_EQ(as_a_plain_person([&] {
              const auto result = EntryLog::audit(folder.path(), {}, {});
              return result && !result->first_bad ? static_cast<int>(result->entries) : 97;
            }),
            3);
  fs::permissions(folder.path(), static_cast<fs::perms>(0700));
}

TEST(Open, NoFolderIsSaidSoForReading) {
  const TempFolder folder;
  EXPECT_EQ(opened(folder.path() / "none", OpenMode::ReadOnly), Code::NoSuchFile);
  EXPECT_FALSE(fs::exists(folder.path() / "none"));
}

TEST(Open, AnOwnTailThatMovedIsABrokenChain) {
  const char* moves[] = {
      // the last two change places
      "UPDATE entries SET seq=100 WHERE seq=6; UPDATE entries SET seq=6 WHERE seq=5; UPDATE "
      "entries "
      "SET seq=5 WHERE seq=100",
      // one in the middle is gone, and the rest moves up
      "DELETE FROM entries WHERE seq=5; UPDATE entries SET seq=5 WHERE seq=6",
      "DELETE FROM entries WHERE seq=4",
      // the last header is another one
      "UPDATE entries SET header=(SELECT header FROM entries WHERE seq=5) WHERE seq=6",
      "UPDATE entries SET header=CAST(x'01'||zeroblob(205) AS BLOB) WHERE seq=6",
      "UPDATE entries SET signature=zeroblob(64) WHERE seq=6",
      "UPDATE entries SET hash=zeroblob(32) WHERE seq=6",
      "DELETE FROM entries",
  };
  for (const char* move : moves) {
    const TempFolder folder;
    small_log(folder.path(), 5).reset();
    change_behind_guards(folder.path(), move);
    const Code code = opened(folder.path());
    EXPECT_TRUE(code == Code::ChainBroken || code == Code::DatabaseDamaged) << move;
    if (std::string(move) == "DELETE FROM entries") continue;  // an empty log is no bad one
    const auto result = EntryLog::audit(folder.path(), {}, {});
    EXPECT_TRUE(!result || result->first_bad) << move;
  }
}

TEST(Audit, NamesTheFirstBadEntryAndHowFarAllIsProven) {
  const TempFolder folder;
  small_log(folder.path(), 9).reset();
  change_behind_guards(
      folder.path(),
      "UPDATE entries SET payload=CAST(replace(payload, '2', '3') AS BLOB) WHERE seq=4");
  const Audit found = audit(folder.path());
  ASSERT_TRUE(found.first_bad);
  EXPECT_EQ(found.first_bad->code, Code::BadHash);
  EXPECT_EQ(found.first_bad->arg("seq"), "4");
  EXPECT_EQ(found.entries, 3U);
}

TEST(Audit, CanBeStopped) {
  const TempFolder folder;
  small_log(folder.path(), 1).reset();
  std::stop_source stop;
  stop.request_stop();
  EXPECT_EQ(EntryLog::audit(folder.path(), stop.get_token(), {}).error().code, Code::Stopped);
}

TEST(Refusing, ALogThatMayNotWriteSaysSoAndReadsOn) {
  const TempFolder folder;
  RefusingLog log(small_log(folder.path(), 1));
  log.refuse = Code::DiskFull;
  SeededRandom random(6);
  const Draft draft = note("no room");
  EXPECT_EQ(log.append(key_number(1), {}, {&draft, 1}, at(), random).error().code, Code::DiskFull);
  EXPECT_EQ(all_of(log).size(), 2U);
  log.refuse.reset();
  must(log.append(key_number(1), {}, {&draft, 1}, at(), random));
  EXPECT_EQ(all_of(log).size(), 3U);
}

}  // namespace
}  // namespace jambline::log
