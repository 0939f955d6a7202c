// tests/record/run.h: runs jambline-record, or a shell command, and gives back what it said.
#pragma once

#include <array>
#include <cstdio>
#include <filesystem>
#include <gtest/gtest.h>
#include <iterator>
#include <string>
#include <sys/wait.h>

#include "tests/whole_file.h"

namespace jambline {

struct Said {
  int code{};
  std::string words;
};

inline Said shell(const std::string& command, const char* errors = " 2>&1") {
  Said said;
  FILE* pipe = popen((command + errors).c_str(), "r");
  std::array<char, 4096> buffer;
  while (const std::size_t count = fread(buffer.data(), 1, buffer.size(), pipe))
    said.words.append(buffer.data(), count);
  said.code = WEXITSTATUS(pclose(pipe));
  return said;
}

inline Said run(const std::string& arguments, const char* errors = " 2>&1") {
  return shell(JAMBLINE_RECORD " " + arguments, errors);
}

inline void expect_words(const Said& said, const std::string& words) {
  EXPECT_NE(said.words.find(words), std::string::npos) << "no " << words << " in\n" << said.words;
}

}  // namespace jambline
