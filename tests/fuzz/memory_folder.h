// tests/fuzz/memory_folder.h: a throw-away folder that costs no disk, for what reads files by name.
#pragma once

#include <cstdlib>
#include <filesystem>
#include <string>

namespace jambline::fuzz {

// One a program; gone at its end.
inline const std::filesystem::path& memory_folder() {
  struct Folder {
    Folder() {
      namespace fs = std::filesystem;
      const fs::path above = fs::exists("/dev/shm") ? "/dev/shm" : fs::temp_directory_path();
      std::string name = (above / "jambline-fuzz-XXXXXX").string();
      if (!mkdtemp(name.data())) std::abort();
      path = name;
      for (const char* inner : {"expected", "note", "move", "hub", "backup", "served"})
        fs::create_directory(path / inner);
    }
    ~Folder() {
      std::error_code ignored;
      std::filesystem::remove_all(path, ignored);
    }
    std::filesystem::path path;
  };
  static const Folder folder;
  return folder.path;
}

}  // namespace jambline::fuzz
