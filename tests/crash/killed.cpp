#include <fcntl.h>
#include <gtest/gtest.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include "tests/crash/kill_moment.h"
#include "tests/log/log_folder.h"

namespace jambline::log {
namespace {

// Appends until it is killed, and tells the parent each arrival number once append() has returned.
[[noreturn]] void write_until_killed(const std::filesystem::path& folder, std::uint64_t seed,
                                     int pipe_end) {
  auto log = EntryLog::open(folder, OpenMode::Write, no_ballast());
  if (!log) _exit(2);
  SeededRandom random(seed);
  for (std::int64_t i = 0;; ++i) {
    const std::vector<Draft> drafts(1 + random.below(5),
                                    note(std::string(random.below(2000), 'k')));
    if (!(*log)->append(key_number(1), {}, drafts, at(i), random)) _exit(3);
    const Arrival told = (*log)->last_arrival();
    if (write(pipe_end, &told, sizeof told) != sizeof told) _exit(4);
  }
}

TEST(Killed, InEveryRoundWhatReturnedIsThereAndNoActionIsHalfThere) {
  const TempFolder folder;
  small_log(folder.path(), 0).reset();
  test::KillMoment moment(500);
  Arrival seen = 1;
  std::uint64_t actions = 0;
  const int rounds = test::crash_rounds(500);
  for (int round = 0; round < rounds; ++round) {
    int ends[2];
    ASSERT_EQ(pipe2(ends, O_CLOEXEC), 0);
    const pid_t child = fork();
    if (child == 0) {
      close(ends[0]);
      write_until_killed(folder.path(), static_cast<std::uint64_t>(round), ends[1]);
    }
    close(ends[1]);
    Arrival told = seen;
    const auto hear = [&] {
      Arrival number = 0;
      if (read(ends[0], &number, sizeof number) != sizeof number) return false;
      told = number;
      ++actions;
      return true;
    };
    moment.wait(hear);
    kill(child, SIGKILL);
    int status = 0;
    waitpid(child, &status, 0);
    ASSERT_TRUE(WIFSIGNALED(status))
        << "round " << round << ": the writer ended by itself, code " << WEXITSTATUS(status);
    while (hear()) {
    }
    close(ends[0]);

    auto log = open_log(folder.path());
    ASSERT_GE(log->last_arrival(), told) << "round " << round;
    int parts_left = 0;
    must(log->read_after(seen, [&](const Stored& stored) {
      const auto& header = stored.entry.header;
      EXPECT_EQ(header.part == 1, parts_left == 0) << "round " << round;
      parts_left = header.parts - header.part;
      return true;
    }));
    ASSERT_EQ(parts_left, 0) << "half an action in round " << round;
    seen = log->last_arrival();
  }
  EXPECT_GT(actions, static_cast<std::uint64_t>(rounds) / 5)
      << "hardly a round got as far as an append";
  const auto chain = EntryLog::audit(folder.path(), {}, {}, AuditDepth::Chain);
  ASSERT_TRUE(chain);
  EXPECT_FALSE(chain->first_bad);
  EXPECT_EQ(chain->entries, static_cast<std::uint64_t>(seen));
}

}  // namespace
}  // namespace jambline::log
