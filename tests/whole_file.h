// tests/whole_file.h: what a file holds, byte for byte. No bytes where there is no file.
#pragma once

#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

namespace jambline::test {

inline std::string whole_file(const std::filesystem::path& path) {
  std::ostringstream bytes;
  if (std::filesystem::is_regular_file(path))
    bytes << std::ifstream(path, std::ios::binary).rdbuf();
  return bytes.str();
}

// Every file under a folder, one after the other.
inline std::string whole_folder(const std::filesystem::path& folder) {
  std::string bytes;
  for (const auto& item : std::filesystem::recursive_directory_iterator(folder))
    bytes += whole_file(item.path());
  return bytes;
}

}  // namespace jambline::test
