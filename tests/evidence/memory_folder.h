// tests/evidence/memory_folder.h: a throw-away folder that waits for no disk: what is tested here
// is what lies in a bundle, and a hundred shops are made for it.
#pragma once

#include <cstdlib>
#include <filesystem>
#include <string>

namespace jambline::evidence {

class MemoryFolder {
 public:
  MemoryFolder() {
    namespace fs = std::filesystem;
    const fs::path above = fs::exists("/dev/shm") ? "/dev/shm" : fs::temp_directory_path();
    std::string name = (above / "jambline-evidence-XXXXXX").string();
    if (!mkdtemp(name.data())) std::abort();
    path_ = name;
  }
  ~MemoryFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  MemoryFolder(const MemoryFolder&) = delete;
  MemoryFolder& operator=(const MemoryFolder&) = delete;
  const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

}  // namespace jambline::evidence
