// A real process on the real disk, killed at a random moment, again and again in the same folder.
#include <gtest/gtest.h>
#include <set>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include "blobs/blob_store.h"
#include "tests/blobs/sample_blobs.h"
#include "tests/crash/kill_moment.h"

namespace jambline::test {
namespace {

using blobs::BlobName;
using blobs::BlobStore;
using blobs::PosixFiles;

// Stores blobs until it is killed and says each one's name into the pipe.
[[noreturn]] void store_until_killed(const std::filesystem::path& folder, int pipe,
                                     std::uint64_t seed) {
  PosixFiles files;
  const auto store = BlobStore::open(files, folder);
  if (!store) ::_exit(3);
  for (std::uint64_t number = seed;; ++number) {
    const auto name = (*store)->put(sample(number, 1 + number * 7919 % 100000));
    if (!name) ::_exit(4);
    if (::write(pipe, name->bytes.data(), name->bytes.size()) != 32) ::_exit(5);
  }
}

TEST(Killed, EveryBlobThatWasReportedIsWholeAndNothingElseIsLeft) {
  const auto folder =
      std::filesystem::temp_directory_path() / ("jambline-killed-" + std::to_string(::getpid()));
  PosixFiles files;
  KillMoment moment(20260101);
  std::set<BlobName> stored;
  const int rounds = crash_rounds(200);
  for (int round = 0; round < rounds; ++round) {
    int pipe[2];
    ASSERT_EQ(::pipe(pipe), 0);
    const pid_t child = ::fork();
    ASSERT_GE(child, 0);
    if (child == 0) {
      ::close(pipe[0]);
      store_until_killed(folder, pipe[1], static_cast<std::uint64_t>(round) * 1000);
    }
    ::close(pipe[1]);
    const auto hear = [&] {
      BlobName name;
      if (::read(pipe[0], name.bytes.data(), name.bytes.size()) != 32) return false;
      stored.insert(name);
      return true;
    };
    moment.wait(hear);
    ASSERT_EQ(::kill(child, SIGKILL), 0);
    while (hear()) {
    }
    ::close(pipe[0]);
    int state = 0;
    ASSERT_EQ(::waitpid(child, &state, 0), child);
    ASSERT_TRUE(WIFSIGNALED(state)) << "the child ended by itself: " << WEXITSTATUS(state);
  }
  ASSERT_FALSE(stored.empty());
  const auto store = BlobStore::open(files, folder).value();
  for (const BlobName& one : stored) EXPECT_TRUE(store->check(one)) << one.hex();
  const auto report = store->scrub({}, nullptr).value();
  EXPECT_TRUE(report.damaged.empty());
  EXPECT_TRUE(report.strange.empty());
  EXPECT_GE(report.blobs, stored.size());
  EXPECT_TRUE(files.list(folder / "incoming")->empty());
  std::filesystem::remove_all(folder);
}

}  // namespace
}  // namespace jambline::test
