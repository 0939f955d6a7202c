// The machine's own clock is set by hours while a booth clears, by Debian's faketime: the count
// goes by the time since boot, which that leaves alone (FAKETIME_DONT_FAKE_MONOTONIC=1). The
// process that put the gun down was killed.
#include "tests/safety/set_clock.h"

#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <filesystem>
#include <gtest/gtest.h>
#include <sys/wait.h>

#include "folds/booth_state.h"
#include "tests/safety/spray_shop.h"

namespace jambline::safety {

int child(const char* what, const char* folder) {
  SystemClock clock;
  auto opened = engine::Engine::open({.folder = folder,
                                      .clock = clock,
                                      .random = std::make_unique<SystemRandom>(),
                                      .device_name = "cart 1",
                                      .published = [](auto) {}});
  if (!opened) {
    std::fprintf(stderr, "the shop did not open\n");
    return 2;
  }
  engine::Engine& engine = **opened;
  if (std::string(what) == "spray") {
    const SprayShop shop = make_shop(engine, clock.now().wall_ms);
    const JobId job = open_car(engine, shop, "K 1");
    act(engine, good_day(shop, job, shop.booth), shop.ivo);
    act(engine, acts::GunDown{shop.booth}, shop.ivo);
    std::raise(SIGKILL);
  }
  const auto& view = *engine.snapshot()->shop;
  const auto& booth = view.booths.front();
  const auto state = folds::booth_state(booth, view.air.find(booth.booth), clock.now());
  std::printf("%lld %d %.1f\n", static_cast<long long>(clock.now().wall_ms / 1000),
              static_cast<int>(state.word), state.left_s);
  return 0;
}

namespace {

struct Seen {
  long long wall_s = 0;
  int word = -1;
  double left_s = -1;
};

Seen look(const std::string& before, const std::string& folder) {
  Seen out;
  const std::string self = std::filesystem::read_symlink("/proc/self/exe").string();
  const std::string line = before + " " + self + " --child look " + folder;
  FILE* pipe = popen(line.c_str(), "r");
  if (!pipe) return out;
  const int read = std::fscanf(pipe, "%lld %d %lf", &out.wall_s, &out.word, &out.left_s);
  const int status = pclose(pipe);
  EXPECT_EQ(read, 3) << line;
  EXPECT_TRUE(WIFEXITED(status) && WEXITSTATUS(status) == 0) << line;
  return out;
}

TEST(SetClock, AKilledProgramAndAClockThatIsSetNeverShortenTheClearance) {
  std::string pattern =
      (std::filesystem::temp_directory_path() / "jambline-safety-XXXXXX").string();
  const std::string folder = mkdtemp(pattern.data());
  const std::string self = std::filesystem::read_symlink("/proc/self/exe").string();
  const int status = std::system((self + " --child spray " + folder).c_str());
  ASSERT_TRUE(WIFEXITED(status) && WEXITSTATUS(status) == 128 + SIGKILL) << status;

  const double whole_s = smoke_test_min * 60;
  const std::string faked = "FAKETIME_DONT_FAKE_MONOTONIC=1 " JAMBLINE_FAKETIME " -f ";
  const Seen real = look("", folder);
  const Seen forward = look(faked + "+3h", folder);
  const Seen back = look(faked + "-3h", folder);
  EXPECT_NEAR(static_cast<double>(forward.wall_s - real.wall_s), 3 * 3600, 60)
      << "the clock was not set: is faketime there?";
  EXPECT_NEAR(static_cast<double>(back.wall_s - real.wall_s), -3 * 3600, 60);
  for (const Seen& seen : {real, forward, back}) {
    EXPECT_EQ(seen.word, static_cast<int>(folds::BoothWordNow::Counting));
    EXPECT_LE(seen.left_s, whole_s);
    EXPECT_GT(seen.left_s, whole_s - 60) << "no minute has gone by";
  }
  std::filesystem::remove_all(folder);
}

}  // namespace
}  // namespace jambline::safety
