// tests/bad_input/shop_folder.h: a shop's folder with a car in it, ways to spoil it, and the proof
// that nothing was lost.
#pragma once

#include <fstream>
#include <functional>
#include <sqlite3.h>
#include <unistd.h>

#include "base/json.h"
#include "tests/engine/every_command.h"
#include "tests/log/log_folder.h"
#include "tests/whole_file.h"

namespace jambline::bad_input {

namespace fs = std::filesystem;

inline void put_bytes(const fs::path& file, const std::string& bytes) {
  std::ofstream(file, std::ios::binary | std::ios::trunc) << bytes;
}
inline void sql(const fs::path& folder, const std::string& text) {
  sqlite3* raw = nullptr;
  ASSERT_EQ(sqlite3_open((folder / "log.db").c_str(), &raw), SQLITE_OK);
  EXPECT_EQ(sqlite3_exec(raw, text.c_str(), nullptr, nullptr, nullptr), SQLITE_OK)
      << sqlite3_errmsg(raw);
  sqlite3_close(raw);
}
inline std::size_t page_of(const fs::path& folder, const std::string& name) {
  sqlite3* raw = nullptr;
  std::size_t page = 0;
  EXPECT_EQ(sqlite3_open((folder / "log.db").c_str(), &raw), SQLITE_OK);
  sqlite3_exec(
      raw, ("SELECT rootpage FROM sqlite_schema WHERE name='" + name + "'").c_str(),
      [](void* out, int, char** column, char**) {
        *static_cast<std::size_t*>(out) = std::stoul(column[0]);
        return 0;
      },
      &page, nullptr);
  sqlite3_close(raw);
  return page;
}
inline std::string with_random_bytes(std::string bytes, std::size_t from, std::size_t count) {
  SeededRandom random(from + count);
  for (std::size_t at = from; at < from + count && at < bytes.size(); ++at)
    bytes[at] = static_cast<char>(random.below(256));
  return bytes;
}

// While it lives, the tests have no more rights than a plain person, also when they run as root.
class PlainPerson {
 public:
  PlainPerson() : root_(geteuid() == 0) {
    if (root_ && (setegid(65534) != 0 || seteuid(65534) != 0)) std::abort();
  }
  ~PlainPerson() {
    if (root_ && (seteuid(0) != 0 || setegid(0) != 0)) std::abort();
  }
  PlainPerson(const PlainPerson&) = delete;
  PlainPerson& operator=(const PlainPerson&) = delete;

 private:
  bool root_;
};

class ShopFolder {
 public:
  ShopFolder() {
    clock.moment = {1'790'000'000'000, 1'000'000'000, BootId{{1}}, 0};  // 2026-09-21 14:13:20 UTC
    const auto engine = log::must(open());
    engine::furnish(*engine, clock, shop);
  }
  ~ShopFolder() { fs::permissions(path(), fs::perms::owner_all); }
  ShopFolder(const ShopFolder&) = delete;
  ShopFolder& operator=(const ShopFolder&) = delete;

  const fs::path& path() const { return folder_.path(); }
  fs::path file() const { return path() / "log.db"; }
  Result<std::unique_ptr<engine::Engine>> open() {
    return engine::Engine::open(
        {path(), clock, std::make_unique<SeededRandom>(++seed_), "cart 1", {}, {}});
  }
  // What the log holds, to the byte; the check of everything has to pass.
  std::vector<std::string> entries() const {
    const auto found = log::must(log::EntryLog::audit(path(), {}, {}));
    EXPECT_FALSE(found.first_bad);
    std::vector<std::string> out;
    for (const auto& entry : log::entries_of(*log::open_log(path(), log::OpenMode::ReadOnly)))
      out.push_back(seal::encode(entry));
    return out;
  }
  // Another file in the place of the log, as if nothing else had been there.
  void put_log(const std::string& bytes) const {
    for (const char* name : {"log.db-wal", "log.db-shm"}) fs::remove(path() / name);
    put_bytes(file(), bytes);
  }
  // May be read by all and written by nobody.
  void lock_up() const {
    for (const auto& one : fs::directory_iterator(path()))
      fs::permissions(one.path(), static_cast<fs::perms>(0444));
    fs::permissions(path(), static_cast<fs::perms>(0555));
  }

  engine::SmallShop shop;
  FakeClock clock;

 private:
  log::TempFolder folder_;
  std::uint64_t seed_ = 10;
};

inline std::string folds_of(engine::Engine& engine, const JobId& job) {
  engine.watch(job);
  engine.want_record();
  engine.drain();
  const auto snapshot = engine.snapshot();
  return to_json(*snapshot->shop) + to_json(*snapshot->floor) +
         (snapshot->record ? to_json(*snapshot->record) : std::string("no record")) +
         (snapshot->car ? to_json(*snapshot->car) : std::string("no car"));
}

}  // namespace jambline::bad_input
