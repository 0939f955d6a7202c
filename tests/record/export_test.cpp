// `jambline-record export`, `hours --by` and `ask`: whole sets of files or none, and the answers of
// the pages' own functions.
#include <filesystem>
#include <gtest/gtest.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/json.h"
#include "folds/hours_question.h"
#include "folds/tables.h"
#include "tests/record/run.h"
#include "tests/record/small_shop.h"

namespace jambline {
namespace {

class ExportOfFolder : public testing::Test {
 protected:
  void SetUp() override {
    shop_.open();
    shop_.work();
    shop_.act(acts::WriteNote{shop_.green, "=1+1, \"wet\""});
    shop_.close();
    at_ = " --folder " + shop_.folder.string();
    to_ = shop_.folder / "out";
  }
  Said exported(const std::string& more = {}) {
    return run("export" + at_ + " --to " + to_.string() + " " + more);
  }
  SmallShop shop_;
  std::string at_;
  std::filesystem::path to_;
};

TEST_F(ExportOfFolder, WritesEveryTableAndTakesFormulasAsText) {
  const Said said = exported();
  ASSERT_EQ(said.code, 0) << said.words;
  for (const auto& table : folds::tables()) {
    const auto file = to_ / (std::string(table.name) + ".csv");
    ASSERT_TRUE(std::filesystem::exists(file)) << file;
    EXPECT_EQ(test::whole_file(file).rfind(std::string(table.columns.front().name), 0), 0U);
  }
  expect_words(said, "cars.csv  2 rows");
  EXPECT_NE(test::whole_file(to_ / "notes.csv").find(",\"'=1+1, \"\"wet\"\"\","),
            std::string::npos);
  EXPECT_NE(test::whole_file(to_ / "notes.csv").find("\"door open,\nwet\""), std::string::npos);
  EXPECT_FALSE(std::filesystem::exists(to_.string() + ".part"));
}

TEST_F(ExportOfFolder, OnlyTheTablesThatWereNamedAsJson) {
  ASSERT_EQ(exported("--table cars --table marks --json").code, 0);
  EXPECT_TRUE(JsonDocument::parse(test::whole_file(to_ / "cars.json")));
  EXPECT_NE(test::whole_file(to_ / "marks.json").find("\"defect\":\"nib\""), std::string::npos);
  EXPECT_FALSE(std::filesystem::exists(to_ / "notes.json"));
  std::filesystem::remove_all(to_);
  const Said unknown = exported("--table carts");
  EXPECT_EQ(unknown.code, 2);
  expect_words(unknown, "carts");
  expect_words(unknown, "sprayed_without");
  EXPECT_FALSE(std::filesystem::exists(to_));
}

TEST_F(ExportOfFolder, OnlyCarsThatWereThereInTheTime) {
  ASSERT_EQ(exported("--to-day 2026-11-24").code, 0);
  EXPECT_EQ(test::whole_file(to_ / "cars.csv").find("K 41-206"), std::string::npos);
  EXPECT_NE(test::whole_file(to_ / "people.csv").find("Ivo"), std::string::npos);
  std::filesystem::remove_all(to_);
  ASSERT_EQ(exported("--from 2026-11-25").code, 0);
  EXPECT_NE(test::whole_file(to_ / "cars.csv").find("K 41-206"), std::string::npos);
  std::filesystem::remove_all(to_);
  EXPECT_EQ(exported("--from tomorrow").code, 2);
  EXPECT_EQ(exported("--from 2026-11-25 --to-day 2026-11-24").code, 2);
}

TEST_F(ExportOfFolder, LeavesAFolderWithSomethingInItAlone) {
  std::filesystem::create_directory(to_);
  std::ofstream(to_ / "mine.txt") << "mine";
  const Said said = exported();
  EXPECT_EQ(said.code, 2);
  EXPECT_EQ(test::whole_file(to_ / "mine.txt"), "mine");
  EXPECT_EQ(std::distance(std::filesystem::directory_iterator(to_), {}), 1);
  std::filesystem::remove(to_ / "mine.txt");
  EXPECT_EQ(exported().code, 0) << "an empty one is taken";
}

TEST_F(ExportOfFolder, SaysWhenItMayNotWriteOrTheDiskIsFullAndLeavesNothing) {
  EXPECT_EQ(run("export" + at_ + " --to " + (shop_.folder / "no" / "way").string()).code, 2);
  if (geteuid() != 0) {
    const auto closed = shop_.folder / "closed";
    std::filesystem::create_directory(closed);
    chmod(closed.c_str(), 0555);
    const Said said = run("export" + at_ + " --to " + (closed / "out").string());
    EXPECT_EQ(said.code, 2);
    EXPECT_TRUE(std::filesystem::is_empty(closed));
  }
  // The shell lets no file grow beyond a block: what a full disk does to a write.
  const Said full = run("verify " + shop_.folder.string());
  ASSERT_EQ(full.code, 0);
  const std::string limited = "(ulimit -f 1; trap '' XFSZ; " JAMBLINE_RECORD " export" + at_ +
                              " --to " + to_.string() + " >/dev/null 2>&1)";
  EXPECT_NE(std::system(("bash -c \"" + limited + "\"").c_str()), 0);
  EXPECT_FALSE(std::filesystem::exists(to_));
  EXPECT_FALSE(std::filesystem::exists(to_.string() + ".part"));
}

TEST_F(ExportOfFolder, AsksTheSameFunctionsAsThePages) {
  const Said json = run("hours " + shop_.folder.string() + " --by person --json", "");
  ASSERT_EQ(json.code, 0);
  const Said asked = run("ask hours --by person --json" + at_, "");
  EXPECT_NE(json.words.find("\"by\":\"person\""), std::string::npos) << json.words;
  const auto answer_of = [](const std::string& words) {
    return words.substr(words.find("\"answer\""));
  };
  EXPECT_EQ(answer_of(json.words), answer_of(asked.words));
  for (const char* question :
       {"hours", "flow", "first-time", "dirt", "sprays", "due", "late", "pictures"}) {
    const Said words = run(std::string("ask ") + question + at_);
    EXPECT_EQ(words.code, 0) << question;
    EXPECT_FALSE(words.words.empty()) << question;
    const Said in_json = run(std::string("ask --json ") + question + at_, "");
    EXPECT_TRUE(JsonDocument::parse(in_json.words)) << question;
  }
  EXPECT_EQ(run("ask nothing" + at_).code, 2);
  EXPECT_EQ(run("ask hours --by weather" + at_).code, 2);
  EXPECT_EQ(run("ask late --from 2026-13-01" + at_).code, 2);
}

}  // namespace
}  // namespace jambline
