// tests/hub/hub_folder.h: throw-away folders, and the small words of the hub's tests.
#pragma once

#include <cstdlib>
#include <filesystem>
#include <gtest/gtest.h>
#include <string>

#include "base/error.h"

namespace jambline::test {

class HubTempFolder {
 public:
  HubTempFolder() {
    std::string name = (std::filesystem::temp_directory_path() / "jambline-hub-XXXXXX").string();
    if (!mkdtemp(name.data())) std::abort();
    path_ = name;
  }
  ~HubTempFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  HubTempFolder(const HubTempFolder&) = delete;
  HubTempFolder& operator=(const HubTempFolder&) = delete;
  const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

inline std::string error_words(const Error& error) {
  std::string words =
      std::string(code_name(error.code)) + " " + error.operation + " " + error.subject;
  for (const auto& [name, value] : error.args) words += " " + name + "=" + value;
  return words;
}

// Unwraps, or ends the test program with the error's words.
template <class T>
T get(Result<T> result) {
  if (!result) {
    ADD_FAILURE() << error_words(result.error());
    std::abort();
  }
  return std::move(*result);
}
inline void good(const Status& status) {
  EXPECT_TRUE(status) << (status ? "" : error_words(status.error()));
}
template <class T>
Code code_of(const tl::expected<T, Error>& result) {
  EXPECT_FALSE(result) << "no error";
  return result ? Code::Stopped : result.error().code;
}

}  // namespace jambline::test
