// The man page names every command and every long option that the program does, and no other.
#include <regex>
#include <set>
#include <sstream>

#include "tests/record/run.h"

namespace jambline {
namespace {

// As a reader sees it: hyphens are hyphens, and no marks of type are left.
std::string man_page() {
  std::string out = test::whole_file(JAMBLINE_SOURCE_DIR "/platform/linux/jambline-record.1");
  out = std::regex_replace(out, std::regex(R"(\\-)"), "-");
  return std::regex_replace(out, std::regex(R"(\\f[BIR])"), "");
}

std::set<std::string> long_options(const std::string& words) {
  std::set<std::string> out;
  const std::regex option("--[a-z0-9]+(-[a-z0-9]+)*");
  for (std::sregex_iterator at(words.begin(), words.end(), option), end; at != end; ++at)
    out.insert(at->str());
  return out;
}

std::set<std::string> commands() {
  std::set<std::string> out;
  std::istringstream lines(run("--help").words);
  bool in_commands = false;
  const std::regex command("^  ([a-z]+) .*");
  for (std::string line; std::getline(lines, line);) {
    if (line.rfind("Subcommands", 0) == 0) in_commands = true;
    std::smatch found;
    if (in_commands && std::regex_match(line, found, command)) out.insert(found[1]);
  }
  return out;
}

TEST(ManPage, NamesEveryCommandAndLongOptionOfTheProgramAndNoOther) {
  const std::string page = man_page();
  std::set<std::string> known = long_options(run("--help").words);
  ASSERT_GE(commands().size(), 8U);
  for (const auto& command : commands()) {
    EXPECT_TRUE(std::regex_search(page, std::regex("\n(\\.B )?" + command + "( |\n)"))) << command;
    for (const auto& option : long_options(run(command + " --help").words)) known.insert(option);
  }
  const auto said = long_options(page);
  for (const auto& option : known) EXPECT_EQ(said.count(option), 1U) << option;
  for (const auto& option : said) EXPECT_EQ(known.count(option), 1U) << option;
}

TEST(ManPage, IsSetWithoutAWarning) {
  const Said said =
      shell("groff -man -ww -Tutf8 " JAMBLINE_SOURCE_DIR "/platform/linux/jambline-record.1",
            " 2>&1 >/dev/null");
  EXPECT_EQ(said.code, 0);
  EXPECT_EQ(said.words, "");
}

}  // namespace
}  // namespace jambline
