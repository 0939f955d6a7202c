// fuzz-seeds FOLDER: writes the seeds of every target into FOLDER/<target>/.
#include <cstdio>
#include <filesystem>
#include <fstream>

#include "tests/fuzz/targets.h"

int main(int argc, char** argv) {
  if (argc != 2) {
    std::fprintf(stderr, "fuzz-seeds FOLDER\n");
    return 2;
  }
  for (const auto& target : jambline::fuzz::targets()) {
    const auto folder = std::filesystem::path(argv[1]) / target.name;
    std::filesystem::create_directories(folder);
    int number = 0;
    for (const auto& seed : target.seeds())
      std::ofstream(folder / ("seed" + std::to_string(number++)), std::ios::binary) << seed;
  }
  return 0;
}
