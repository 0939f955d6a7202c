// A program that keeps one picture after the other, killed at any moment between file and entry.
#include <fcntl.h>
#include <gtest/gtest.h>
#include <set>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include "tests/crash/kill_moment.h"
#include "tests/engine/every_command.h"
#include "tests/log/log_folder.h"

namespace jambline::engine {
namespace {

struct KilledShop {
  log::TempFolder folder;
  FakeClock clock;
  SmallShop shop;

  std::unique_ptr<Engine> open(std::uint64_t seed) {
    clock.moment.wall_ms += 60'000;
    Engine::Parts parts{folder.path(), clock, std::make_unique<SeededRandom>(seed), "cart", {}, {}};
    auto engine = log::must(Engine::open(std::move(parts)));
    if (!shop.job.none()) engine->watch(shop.job);
    engine->drain();
    return engine;
  }
};

// Says an empty hash when it begins, then each picture's once its entry stands.
[[noreturn]] void keep_until_killed(KilledShop& killed, std::uint64_t seed, int pipe_end) {
  const auto engine = killed.open(seed);
  const auto tell = [pipe_end](const Hash& hash) {
    if (write(pipe_end, hash.bytes.data(), Hash::size) != Hash::size) _exit(4);
  };
  tell({});
  SeededRandom random(seed);
  while (true) {
    std::vector<std::uint8_t> bytes(1 + random.below(20000));
    random.fill(bytes);
    const acts::TakePicture command = picture_of(killed.shop.job, bytes);
    if (!keep(*engine, std::move(bytes), command, killed.shop.ivo)) _exit(3);
    tell(command.facts.file);
  }
}

TEST(PictureKilled, NoEntryIsWithoutItsFileAndWhatWasLeftIsOfferedAtTheNextStart) {
  KilledShop killed;
  killed.clock.moment = {1'790'000'000'000, 1000, BootId{{1}}, 0};
  furnish(*killed.open(1), killed.clock, killed.shop);
  test::KillMoment moment(200);
  std::set<Hash> told;
  int left_over = 0;
  const int rounds = test::crash_rounds(40);
  const int most_rounds = 20 * rounds;  // until one falls between file and entry
  for (int round = 0; round < rounds || (left_over == 0 && round < most_rounds); ++round) {
    SCOPED_TRACE("round " + std::to_string(round));
    int ends[2];
    ASSERT_EQ(pipe2(ends, O_CLOEXEC), 0);
    const pid_t child = fork();
    if (child == 0) {
      close(ends[0]);
      keep_until_killed(killed, static_cast<std::uint64_t>(2 * round + 2), ends[1]);
    }
    close(ends[1]);
    Hash hash;
    ASSERT_EQ(read(ends[0], hash.bytes.data(), Hash::size), static_cast<ssize_t>(Hash::size));
    const auto hear = [&] {
      if (read(ends[0], hash.bytes.data(), Hash::size) != static_cast<ssize_t>(Hash::size))
        return false;
      told.insert(hash);
      return true;
    };
    moment.wait(hear);
    kill(child, SIGKILL);
    int status = 0;
    waitpid(child, &status, 0);
    ASSERT_TRUE(WIFSIGNALED(status)) << "it ended by itself, code " << WEXITSTATUS(status);
    while (hear()) {
    }
    close(ends[0]);

    const auto engine = killed.open(static_cast<std::uint64_t>(2 * round + 3));
    std::optional<Result<PictureCheck>> check;
    std::optional<Result<std::vector<LeftoverPicture>>> left;
    engine->check_pictures({}, [&](auto found) { check = std::move(found); });
    engine->leftovers([&](auto found) { left = std::move(found); });
    engine->drain();
    ASSERT_TRUE(*check && *left);
    EXPECT_TRUE((*check)->not_here.empty()) << "an entry names a file that is not there";
    EXPECT_TRUE((*check)->damaged.empty());

    std::set<Hash> named;
    for (const auto& picture : engine->snapshot()->car->pictures) named.insert(picture.facts.file);
    for (const Hash& one : told) ASSERT_EQ(named.count(one), 1U) << "said to be kept, and is not";
    std::set<Hash> known = named;
    for (const LeftoverPicture& one : **left) {
      ++left_over;
      known.insert(one.file);
      ASSERT_TRUE(one.meant) << "nobody knows where it was meant to go";
      EXPECT_EQ(one.meant->job, killed.shop.job);
      EXPECT_EQ(one.person, killed.shop.ivo);
      const auto bytes = engine->blobs()->get(one.file);
      ASSERT_TRUE(bytes);
      EXPECT_TRUE(keep(*engine, *bytes, *one.meant, one.person)) << "it cannot be kept after all";
      told.insert(one.file);
    }
    const auto files = log::must(engine->blobs()->list());
    EXPECT_EQ(std::set<Hash>(files.begin(), files.end()), known) << "neither named nor offered";
  }
  std::printf("%d rounds, %zu pictures kept, %d left over and taken up\n", rounds, told.size(),
              left_over);
  EXPECT_GT(told.size(), 0U);
  EXPECT_GT(left_over, 0) << "no kill fell between file and entry";
}

}  // namespace
}  // namespace jambline::engine
