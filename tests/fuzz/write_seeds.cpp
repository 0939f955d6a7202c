// NAME-seeds FOLDER: writes the seeds of its targets into FOLDER/<target>/. SEEDS_OF is the
// function that lists them.
#include <cstdio>
#include <filesystem>
#include <fstream>

#include "tests/fuzz/targets.h"

int main(int argc, char** argv) {
  if (argc != 2) {
    std::fprintf(stderr, "%s FOLDER\n", argv[0]);
    return 2;
  }
  for (const auto& target : jambline::fuzz::SEEDS_OF()) {
    const auto folder = std::filesystem::path(argv[1]) / target.name;
    std::filesystem::create_directories(folder);
    int number = 0;
    for (const auto& seed : target.seeds())
      std::ofstream(folder / ("seed" + std::to_string(number++)), std::ios::binary) << seed;
  }
  return 0;
}
