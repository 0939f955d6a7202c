// tests/bench/figures.h: what the parts of bench-log share.
//
// Each part registers itself with a Part object and prints its figures. A figure is the median of
// five rounds; what is compared takes turns within a round, so that a slow minute of the machine
// meets both.
#pragma once

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <filesystem>
#include <functional>
#include <string>
#include <vector>

namespace jambline::bench {

class Part {
 public:
  explicit Part(std::function<void()> run) { all().push_back(std::move(run)); }
  static std::vector<std::function<void()>>& all() {
    static std::vector<std::function<void()>> parts;
    return parts;
  }
};

inline double seconds(const std::function<void()>& work) {
  const auto start = std::chrono::steady_clock::now();
  work();
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

inline double median(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  return values[values.size() / 2];
}

// Of seven rounds, after one that warms up.
inline double median_ms(const std::function<void()>& work) {
  std::vector<double> rounds;
  work();
  for (int round = 0; round < 7; ++round) rounds.push_back(1000 * seconds(work));
  return median(rounds);
}

inline void figure(const char* name, double value, const char* unit) {
  std::printf("figure %s %.3f %s\n", name, value, unit);
  std::fflush(stdout);
}

// The ratio of the rates of two ways to do the same: above 1 = `ours` is the faster one.
inline double rate_ratio(const std::function<void()>& ours, const std::function<void()>& plain) {
  std::vector<double> ratios;
  ours();
  plain();
  for (int round = 0; round < 5; ++round) {
    const double plain_s = seconds(plain);
    ratios.push_back(plain_s / seconds(ours));
  }
  return median(ratios);
}

class BenchFolder {
 public:
  explicit BenchFolder(const std::filesystem::path& in = std::filesystem::temp_directory_path()) {
    std::string name = (in / "jambline-bench-XXXXXX").string();
    if (!mkdtemp(name.data())) std::abort();
    path_ = name;
  }
  ~BenchFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  BenchFolder(const BenchFolder&) = delete;
  BenchFolder& operator=(const BenchFolder&) = delete;
  const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

}  // namespace jambline::bench
