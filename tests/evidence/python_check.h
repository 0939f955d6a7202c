// tests/evidence/python_check.h: what the stand-alone readers say about many files.
#pragma once

#include <cstdio>
#include <fstream>
#include <sstream>

#include "tests/evidence/memory_folder.h"
#include "tests/log/log_folder.h"

namespace jambline::evidence {

struct PythonSaid {
  int code = -1;
  std::vector<std::string> lines;
  std::string last() const { return lines.empty() ? "" : lines.back(); }
};

// Each wanted is "bundle FILE" or "folder FOLDER".
inline std::vector<PythonSaid> python_check(const std::vector<std::string>& wanted) {
  const MemoryFolder scratch;
  std::ofstream asked(scratch.path() / "asked");
  for (const auto& line : wanted) asked << line << '\n';
  asked.close();
  const std::string command =
      "python3 -B " JAMBLINE_SOURCE_DIR "/tests/evidence/check_many.py " JAMBLINE_SOURCE_DIR " '" +
      scratch.path().string() + "' <'" + (scratch.path() / "asked").string() + "' 2>&1";
  std::string text;
  FILE* pipe = popen(command.c_str(), "r");
  std::array<char, 4096> buffer;
  while (const std::size_t count = fread(buffer.data(), 1, buffer.size(), pipe))
    text.append(buffer.data(), count);
  EXPECT_EQ(pclose(pipe), 0) << text;
  std::vector<PythonSaid> out;
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    PythonSaid& said = out.emplace_back();
    said.code = std::atoi(line.c_str());
    while (std::getline(lines, line) && line != ".") said.lines.push_back(line);
  }
  EXPECT_EQ(out.size(), wanted.size()) << text;
  out.resize(wanted.size());
  return out;
}

}  // namespace jambline::evidence
