#include <gtest/gtest.h>
#include <iterator>
#include <sqlite3.h>
#include <string>

#include "base/json.h"
#include "tests/log/log_folder.h"
#include "tests/whole_file.h"

namespace jambline::log {
namespace {

constexpr std::uint16_t list[] = {note_kind};

// Every byte of every file of the log.
std::string disk_bytes(const std::filesystem::path& folder) {
  std::string all;
  for (const char* name : {"log.db", "log.db-wal"}) all += test::whole_file(folder / name);
  return all;
}

TEST(Erase, ThePayloadIsGoneFromTheDiskAndTheChainHolds) {
  const TempFolder folder;
  auto log = small_log(folder.path(), 2);
  SeededRandom random(4);
  const Draft draft = note("Ottilie Wanderling");
  const auto target = must(log->append(key_number(1), {}, {&draft, 1}, at(), random)).front();
  EXPECT_NE(disk_bytes(folder.path()).find("Ottilie"), std::string::npos);
  must(log->erase_payload(key_number(1), {}, target.entry.hash, "left", list, at(50), random));
  EXPECT_EQ(disk_bytes(folder.path()).find("Ottilie"), std::string::npos);
  const auto found = must(log->find(target.entry.hash));
  ASSERT_TRUE(found);
  EXPECT_TRUE(found->entry.erased);
  EXPECT_TRUE(found->entry.payload.empty());
  EXPECT_FALSE(found->entry.salt);
  EXPECT_EQ(found->entry.header, target.entry.header);
  const Audit after = audit(folder.path());
  EXPECT_FALSE(after.first_bad);
  EXPECT_EQ(after.erased, 1U);
  EXPECT_EQ(
      log->erase_payload(key_number(1), {}, target.entry.hash, "", list, at(), random).error().code,
      Code::AlreadyDone);
}

TEST(Erase, OnlyListedKindsAndNeverMembership) {
  const TempFolder folder;
  auto log = small_log(folder.path(), 1);
  SeededRandom random(4);
  const auto entries = entries_of(*log);
  const std::uint16_t everything[] = {1, 2, 3, 4, 5, note_kind};
  EXPECT_EQ(log->erase_payload(key_number(1), {}, entries[0].hash, "", everything, at(), random)
                .error()
                .code,
            Code::NotErasable);
  EXPECT_EQ(
      log->erase_payload(key_number(1), {}, entries[1].hash, "", {}, at(), random).error().code,
      Code::NotErasable);
  EXPECT_EQ(log->erase_payload(key_number(1), {}, Hash{}, "", list, at(), random).error().code,
            Code::Unknown);
  EXPECT_EQ(entries_of(*log).size(), 2U);
}

TEST(Erase, ItReachesOtherDevicesInWhateverOrderThingsArrive) {
  const TempFolder folder;
  auto log = small_log(folder.path(), 1);
  SeededRandom random(4);
  const auto whole = entries_of(*log);
  must(log->erase_payload(key_number(1), {}, whole[1].hash, "left", list, at(50), random));
  const auto erased = entries_of(*log);

  const TempFolder a, b, c;
  auto knew = open_log(a.path());  // had the payload, hears of the erasure
  must(knew->add(whole));
  must(knew->add(erased));
  auto late = open_log(b.path());  // gets the payload and its erasure in one call
  must(late->add(std::vector{whole[0], whole[1], erased[2]}));
  auto third = open_log(c.path());  // hears of the erasure, then is offered the payload again
  must(third->add(erased));
  must(third->add(whole));
  for (EntryLog* each : {knew.get(), late.get(), third.get()}) {
    const auto entries = entries_of(*each);
    ASSERT_EQ(entries.size(), 3U);
    EXPECT_TRUE(entries[1].erased);
    EXPECT_TRUE(entries[1].payload.empty());
  }
  for (const TempFolder* each : {&a, &b, &c}) EXPECT_FALSE(audit(each->path()).first_bad);
}

TEST(Erase, APayloadLeftOutWithoutAnErasureIsNamedAndFilledWhenItComes) {
  const TempFolder folder, other;
  auto entries = entries_of(*small_log(folder.path(), 1));
  const auto whole = entries;
  entries[1].erased = true;
  entries[1].salt = {};
  entries[1].payload.clear();
  auto log = open_log(other.path());
  must(log->add(entries));
  const Audit found = audit(other.path());
  ASSERT_TRUE(found.first_bad);
  EXPECT_EQ(found.first_bad->arg("seq"), "2");
  must(log->add(whole));
  EXPECT_EQ(entries_of(*log)[1].payload, whole[1].payload);
  EXPECT_FALSE(audit(other.path()).first_bad);
}

TEST(Erase, ACallersListBindsWhatOthersErase) {
  const TempFolder folder, other;
  auto log = small_log(folder.path(), 1);
  SeededRandom random(4);
  const auto whole = entries_of(*log);
  must(log->erase_payload(key_number(1), {}, whole[1].hash, "", list, at(50), random));
  OpenOptions strict = no_ballast();
  strict.erasable = [](std::uint16_t kind) { return kind != note_kind; };
  auto kept = must(EntryLog::open(other.path(), OpenMode::Write, strict));
  EXPECT_EQ(kept->add(entries_of(*log)).error().code, Code::NotErasable);
  must(kept->add(std::vector{whole[0], whole[1], entries_of(*log)[2]}));
  EXPECT_FALSE(entries_of(*kept)[1].erased);
}

// The guards themselves, met by SQL that goes round the program.
TEST(Guards, EntriesAndErasuresRefuseEveryChangeButErasing) {
  const TempFolder folder;
  small_log(folder.path(), 3).reset();
  sqlite3* raw = nullptr;
  ASSERT_EQ(sqlite3_open((folder.path() / "log.db").c_str(), &raw), SQLITE_OK);
  const auto refused = [raw](const char* sql) {
    char* words = nullptr;
    const int code = sqlite3_exec(raw, sql, nullptr, nullptr, &words);
    const bool by_guard = code == SQLITE_CONSTRAINT && words &&
                          std::string(words).find("erasure") + std::string(words).find("entries") !=
                              2 * std::string::npos;
    sqlite3_free(words);
    return by_guard;
  };
  EXPECT_TRUE(refused("DELETE FROM entries WHERE arrival=2"));
  EXPECT_TRUE(refused("UPDATE entries SET payload=x'00' WHERE arrival=2"));
  EXPECT_TRUE(refused("UPDATE entries SET seq=9 WHERE arrival=2"));
  EXPECT_TRUE(refused("UPDATE entries SET arrival=9 WHERE arrival=2"));
  EXPECT_TRUE(refused("UPDATE entries SET header=zeroblob(206) WHERE arrival=2"));
  EXPECT_TRUE(
      refused("UPDATE entries SET erased=1, salt=zeroblob(16), payload=x'' WHERE arrival=2"))
      << "no erasure names it";
  EXPECT_TRUE(
      refused("INSERT INTO erasures VALUES((SELECT hash FROM entries WHERE arrival=2), "
              "(SELECT hash FROM entries WHERE arrival=3))"))
      << "entry 3 is no PayloadErased";
  sqlite3_close(raw);
  EXPECT_FALSE(audit(folder.path()).first_bad);
}

}  // namespace
}  // namespace jambline::log
