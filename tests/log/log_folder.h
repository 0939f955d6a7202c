// tests/log/log_folder.h: a throw-away folder with a log in it, and the small words of log tests.
#pragma once

#include <cstdlib>
#include <filesystem>
#include <gtest/gtest.h>
#include <string>

#include "base/clock.h"
#include "base/random.h"
#include "log/entry_log.h"
#include "tests/whole_file.h"

namespace jambline::log {

class TempFolder {
 public:
  TempFolder() {
    std::string name = (std::filesystem::temp_directory_path() / "jambline-test-XXXXXX").string();
    if (!mkdtemp(name.data())) std::abort();
    path_ = name;
  }
  ~TempFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  TempFolder(const TempFolder&) = delete;
  TempFolder& operator=(const TempFolder&) = delete;
  const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

inline constexpr std::int64_t monday_ms = 1772438400000;  // 2026-03-02 08:00 UTC
inline constexpr std::uint16_t note_kind = 700;           // a kind that only these tests know

inline Moment at(std::int64_t after_ms = 0) {
  Moment moment;
  moment.wall_ms = monday_ms + after_ms;
  moment.since_boot_ms = 1000000 + static_cast<std::uint64_t>(after_ms);
  moment.boot.bytes[0] = 7;
  moment.offset_min = 60;
  return moment;
}

inline seal::SigningKey key_number(std::uint8_t number) {
  std::array<std::uint8_t, 32> seed{};
  seed[0] = number;
  return seal::SigningKey::from_seed(seed);
}

inline JobId job_number(std::uint8_t number) {
  JobId job;
  job.bytes[15] = number;
  return job;
}

inline Draft note(std::string words, std::uint8_t job = 1) {
  return {job_number(job), note_kind, 1, R"({"words":")" + std::move(words) + R"("})"};
}

inline OpenOptions no_ballast() {
  OpenOptions options;
  options.ballast_bytes = 0;
  return options;
}

// Unwraps, or ends the test program with the error's words.
template <class T>
T must(Result<T> result) {
  if (!result) {
    std::string words(code_name(result.error().code));
    for (const auto& [name, value] : result.error().args) words += " " + name + "=" + value;
    ADD_FAILURE() << words;
    std::abort();
  }
  return std::move(*result);
}
inline void must(Status status) {
  if (!status) must(Result<int>(tl::unexpected<Error>(status.error())));
}

inline std::unique_ptr<EntryLog> open_log(const std::filesystem::path& folder,
                                          OpenMode mode = OpenMode::Write) {
  return must(EntryLog::open(folder, mode, no_ballast()));
}

// A log of one device with a shop and `notes` actions of one part after it.
inline std::unique_ptr<EntryLog> small_log(const std::filesystem::path& folder, int notes,
                                           std::uint8_t key = 1) {
  SeededRandom random(key);
  auto log = open_log(folder);
  must(log->found_shop(key_number(key), "tablet one", at(), random));
  for (int i = 0; i < notes; ++i) {
    const Draft draft = note("number " + std::to_string(i), static_cast<std::uint8_t>(1 + i % 3));
    must(log->append(key_number(key), {}, {&draft, 1}, at(1000 * (i + 1)), random));
  }
  return log;
}

inline std::vector<Stored> all_of(EntryLog& log) {
  std::vector<Stored> out;
  must(log.read_after(0, [&out](const Stored& stored) {
    out.push_back(stored);
    return true;
  }));
  return out;
}

inline std::vector<seal::SealedEntry> entries_of(EntryLog& log) {
  std::vector<seal::SealedEntry> out;
  for (auto& stored : all_of(log)) out.push_back(std::move(stored.entry));
  return out;
}

inline Audit audit(const std::filesystem::path& folder) {
  return must(EntryLog::audit(folder, {}, {}));
}

}  // namespace jambline::log
