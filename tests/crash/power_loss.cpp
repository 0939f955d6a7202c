#include <gtest/gtest.h>

#include "tests/crash/power_loss_vfs.h"
#include "tests/log/log_folder.h"

namespace jambline::log {
namespace {

namespace fs = std::filesystem;

OpenOptions on_test_disk() {
  OpenOptions options = no_ballast();
  options.vfs = PowerLossVfs::name;
  return options;
}

// Every action has all its parts, and the numbers have no gap.
void expect_whole_actions(const std::vector<Stored>& entries, const std::string& where) {
  std::map<ActionId, int> missing;
  for (const auto& stored : entries) {
    const auto& header = stored.entry.header;
    missing.try_emplace(header.action, header.parts).first->second -= 1;
  }
  for (const auto& [action, parts] : missing) ASSERT_EQ(parts, 0) << "half an action " << where;
}

// Sixteen actions of one to four parts over two sessions, an erasure between them.
void write_two_sessions(PowerLossVfs& disk, const fs::path& folder) {
  SeededRandom random(12);
  Hash target;
  for (int session = 0; session < 2; ++session) {
    auto log = must(EntryLog::open(folder, OpenMode::Write, on_test_disk()));
    for (int i = 0; i < 8; ++i) {
      std::vector<Draft> drafts(1 + random.below(4), note(std::string(random.below(3000), 'a')));
      const auto stored = must(log->append(key_number(1), {}, drafts, at(i), random));
      target = stored.front().entry.hash;
      disk.said(log->last_arrival());
    }
    const std::uint16_t kinds[] = {note_kind};
    must(log->erase_payload(key_number(1), {}, target, "test", kinds, at(99), random));
    disk.said(log->last_arrival());
  }
}

TEST(PowerLoss, EveryEntryThatWasSaidToBeSavedIsThereWheneverThePowerGoes) {
  const TempFolder folder;
  small_log(folder.path(), 2).reset();
  PowerLossVfs disk;
  write_two_sessions(disk, folder.path());
  SeededRandom random(2);
  int images = 0;
  std::int64_t said = 3;  // the shop and two notes
  for (std::size_t count = 1; count <= disk.events.size(); ++count) {
    const auto& event = disk.events[count - 1];
    if (event.what == PowerLossVfs::Event::What::Said) said = event.offset;
    for (const auto loss : {PowerLossVfs::Loss::Nothing, PowerLossVfs::Loss::Unsynced,
                            PowerLossVfs::Loss::Some, PowerLossVfs::Loss::Torn}) {
      const std::string where = "after event " + std::to_string(count) + " of " +
                                std::to_string(disk.events.size()) + ", loss " +
                                std::to_string(static_cast<int>(loss));
      const TempFolder image;
      disk.build(count, loss, random, image.path());
      if (!fs::exists(image.path() / "log.db")) continue;  // before its first event
      ++images;
      auto log = EntryLog::open(image.path(), OpenMode::ReadOnly, no_ballast());
      ASSERT_TRUE(log) << where << ' ' << code_name(log.error().code) << ' '
                       << log.error().arg("cause");
      const auto entries = all_of(**log);
      ASSERT_GE(static_cast<std::int64_t>(entries.size()), said) << where;
      expect_whole_actions(entries, where);
      log->reset();
      if (images % 8 != 0) continue;
      const Audit found = audit(image.path());
      ASSERT_FALSE(found.first_bad) << where << ' ' << found.first_bad->arg("cause");
      auto again = must(EntryLog::open(image.path(), OpenMode::Write, no_ballast()));
      const Draft draft = note("goes on");
      must(again->append(key_number(1), {}, {&draft, 1}, at(1), random));
    }
  }
  EXPECT_GT(images, 600);
}

TEST(PowerLoss, AFullDiskAtAnyWriteLosesNothingAndLeavesNothingHalf) {
  const TempFolder base;
  small_log(base.path(), 2).reset();
  bool met = true;
  for (std::uint64_t at_write = 0; met; ++at_write) {
    for (const bool stays_full : {false, true}) {
      const TempFolder folder;
      fs::copy_file(base.path() / "log.db", folder.path() / "log.db");
      PowerLossVfs disk;
      met = false;
      disk.full = [&](std::uint64_t number) {
        const bool none = number == at_write || (stays_full && number > at_write);
        met = met || none;
        return none;
      };
      SeededRandom random(at_write);
      std::size_t saved = 3;
      auto log = EntryLog::open(folder.path(), OpenMode::Write, on_test_disk());
      if (!log) {
        EXPECT_EQ(log.error().code, Code::DiskFull) << at_write;
        disk.full = nullptr;
        log = EntryLog::open(folder.path(), OpenMode::Write, on_test_disk());
        ASSERT_TRUE(log) << at_write;
      }
      for (int i = 0; i < 4; ++i) {
        if (i == 3) disk.full = nullptr;  // somebody made room
        const std::vector<Draft> drafts(3, note(std::string(1500, 'b')));
        const auto stored = (*log)->append(key_number(1), {}, drafts, at(i), random);
        if (stored) {
          saved += 3;
        } else {
          EXPECT_EQ(stored.error().code, Code::DiskFull) << at_write;
        }
        EXPECT_TRUE(stored || i < 3) << "the log does not go on after write " << at_write;
        const auto entries = all_of(**log);
        ASSERT_EQ(entries.size(), saved) << at_write;
        expect_whole_actions(entries, std::to_string(at_write));
      }
      log->reset();
      const Audit found = audit(folder.path());
      ASSERT_FALSE(found.first_bad) << at_write;
      ASSERT_EQ(found.entries, saved) << at_write;
    }
  }
}

TEST(PowerLoss, AFullDiskAtAnyWriteOfCreationLeavesNoLogOrAWholeOne) {
  bool met = true;
  for (std::uint64_t at_write = 0; met; ++at_write) {
    const TempFolder folder;
    PowerLossVfs disk;
    met = false;
    disk.full = [&](std::uint64_t number) { return number == at_write && (met = true); };
    const auto log = EntryLog::open(folder.path(), OpenMode::Write, on_test_disk());
    if (log) continue;
    EXPECT_EQ(log.error().code, Code::DiskFull) << at_write;
    EXPECT_FALSE(fs::exists(folder.path() / "log.db")) << at_write;
    disk.full = nullptr;
    EXPECT_TRUE(EntryLog::open(folder.path(), OpenMode::Write, on_test_disk())) << at_write;
  }
}

TEST(PowerLoss, TheBallastIsGivenUpSoThatTheEntryIsStillSaved) {
  const TempFolder folder;
  small_log(folder.path(), 2).reset();
  PowerLossVfs disk;
  OpenOptions options = on_test_disk();
  options.ballast_bytes = 1U << 20U;
  auto log = must(EntryLog::open(folder.path(), OpenMode::Write, options));
  const auto ballast = folder.path() / "ballast";
  ASSERT_EQ(fs::file_size(ballast), 1U << 20U);
  EXPECT_FALSE(log->disk_low());
  disk.full = [&](std::uint64_t) { return fs::exists(ballast); };
  SeededRandom random(5);
  const Draft draft = note("the disk is full");
  EXPECT_EQ(must(log->append(key_number(1), {}, {&draft, 1}, at(), random)).front().arrival, 4);
  EXPECT_TRUE(log->disk_low());
  EXPECT_FALSE(fs::exists(ballast));
  disk.full = [](std::uint64_t) { return true; };
  EXPECT_EQ(log->append(key_number(1), {}, {&draft, 1}, at(), random).error().code, Code::DiskFull);
  disk.full = nullptr;
  log.reset();
  log = must(EntryLog::open(folder.path(), OpenMode::Write, options));
  EXPECT_FALSE(log->disk_low()) << "made again when there is room";
}

}  // namespace
}  // namespace jambline::log
