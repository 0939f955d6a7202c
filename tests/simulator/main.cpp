// simulator --schedules N [--from SEED]: runs N seeds and prints those that fail.
// simulator --seed S: one of them, with a log of its steps.
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <optional>
#include <string_view>

#include "tests/simulator/schedule.h"

int main(int count, char** words) {
  std::uint64_t schedules = 100, from = 1;
  std::optional<std::uint64_t> one;
  for (int i = 1; i + 1 < count; i += 2) {
    const std::string_view word = words[i];
    const std::uint64_t value = std::strtoull(words[i + 1], nullptr, 10);
    if (word == "--schedules")
      schedules = value;
    else if (word == "--from")
      from = value;
    else if (word == "--seed")
      one = value;
    else
      return std::fprintf(stderr, "simulator: unknown word %s\n", words[i]), 2;
  }
  using namespace jambline::simulator;
  if (one) {
    const Ran ran = run_schedule(
        *one, [](const std::string& words_of_step) { std::printf("%s\n", words_of_step.c_str()); });
    for (const auto& what : ran.complaints) std::printf("seed %ju: %s\n", *one, what.c_str());
    return ran.complaints.empty() ? 0 : 1;
  }
  std::uint64_t failed = 0, acts = 0, mishaps_done = 0;
  std::array<std::uint64_t, met_kinds> met{};
  const auto began = std::chrono::steady_clock::now();
  for (std::uint64_t seed = from; seed < from + schedules; ++seed) {
    const Ran ran = run_schedule(seed);
    acts += ran.acts;
    mishaps_done += ran.mishaps;
    for (std::size_t i = 0; i < met_kinds; ++i) met[i] += ran.met[i];
    if (ran.complaints.empty()) continue;
    ++failed;
    std::printf("seed %ju: %s\n", seed, ran.complaints.front().c_str());
    std::fflush(stdout);
  }
  const auto took = std::chrono::steady_clock::now() - began;
  for (std::size_t i = 0; i < met_kinds; ++i)
    std::printf("fault %2d  %8ju  %.*s\n", met_rows[i].fault, met[i],
                static_cast<int>(met_rows[i].words.size()), met_rows[i].words.data());
  std::printf("%ju schedules, %ju red, %ju acts, %ju mishaps, %.1f s, of which %.1f s of CPU\n",
              schedules, failed, acts, mishaps_done, std::chrono::duration<double>(took).count(),
              static_cast<double>(std::clock()) / CLOCKS_PER_SEC);
  return failed == 0 ? 0 : 1;
}
