// `jambline-record find` says what the engine says, and changes nothing.
#include <filesystem>
#include <gtest/gtest.h>

#include "base/json.h"
#include "engine/engine.h"
#include "tests/record/run.h"
#include "tests/record/small_shop.h"

namespace jambline {
namespace {

class FindInFolder : public testing::Test {
 protected:
  void SetUp() override {
    shop_.open();
    shop_.work();
    at_ = " --folder " + shop_.folder.string();
  }
  std::string engine_says(const shelf::FindAsked& asked) {
    const auto kinds = std::make_shared<const shelf::Names>(
        folds::named_kinds([](auto kind) { return std::string(word_of(kind)); }));
    std::string out;
    shop_.engine->find(asked, kinds, {}, [&](const auto& found) {
      out = found ? to_json(*found) + "\n" : std::string(code_name(found.error().code));
    });
    shop_.engine->drain();
    return out;
  }
  static shelf::FindAsked asked_by(const std::string& words) {
    shelf::FindAsked asked;
    asked.words = words;
    asked.count = true;
    return asked;
  }
  SmallShop shop_;
  std::string at_;
};

TEST_F(FindInFolder, SaysWhatTheEngineSays) {
  std::vector<std::pair<std::string, shelf::FindAsked>> questions;
  for (const std::string words :
       {"k41", "206 green", "mara", "nib", "'\"wet*'", "88014", "nobody", ""})
    questions.emplace_back("find " + words + " --json",
                           asked_by(words == "'\"wet*'" ? "\"wet*" : words));
  auto asked = asked_by("");
  asked.people = {shop_.mara};
  questions.emplace_back("find --person mara --json", asked);
  asked = asked_by("door");
  asked.color = "deep";
  asked.delivered = false;
  questions.emplace_back("find door --color deep --in-shop --json", asked);
  asked = asked_by("");
  asked.defects = {job::DefectKind::Nib};
  questions.emplace_back("find --defect nib --json", asked);
  asked = asked_by("");
  asked.late = true;
  questions.emplace_back("find --late --json", asked);
  asked = asked_by("");
  asked.most = 1;
  questions.emplace_back("find --most 1 --json", asked);
  std::vector<std::string> answers;
  for (const auto& [line, question] : questions) {
    answers.push_back(engine_says(question));
    const Said said = run(line + at_, "");
    EXPECT_EQ(said.code, 0) << line;
    EXPECT_EQ(said.words, answers.back()) << line << ", beside the running program";
  }
  shop_.close();
  for (const char* ending : {"", "-wal", "-shm"})
    std::filesystem::remove(shop_.folder / (std::string("shelf.db") + ending));
  for (std::size_t i = 0; i < questions.size(); ++i)
    EXPECT_EQ(run(questions[i].first + at_, "").words, answers[i])
        << questions[i].first << ", without a shelf";
  EXPECT_FALSE(std::filesystem::exists(shop_.folder / "shelf.db"));
}

TEST_F(FindInFolder, OneLineACarAndWhereTheWordWasFound) {
  const Said said = run("find wet mara" + at_);
  EXPECT_EQ(said.code, 0);
  expect_words(said, "K 41-206");
  expect_words(said, "    notes: wet\n");
  expect_words(said, "    person: Mara\n");
  expect_words(said, "\n1 car\n");
  const Said page = run("find --most 1" + at_);
  expect_words(page, "1 of 2 cars; the next ones: --after ");
  const std::string after = page.words.substr(page.words.rfind(' ') + 1);
  const Said rest = run("find --most 1 --after " + after.substr(0, after.size() - 1) + at_);
  EXPECT_EQ(rest.code, 0);
  expect_words(rest, "S 88-014");
  EXPECT_EQ(rest.words.find("K 41-206"), std::string::npos);
}

TEST_F(FindInFolder, DaysAreThoseOfTheShop) {
  expect_words(run("find --from 2026-11-25 --to 2026-11-25" + at_), "\n2 cars\n");
  expect_words(run("find --from 2026-11-26" + at_), "0 cars\n");
  expect_words(run("find --to 2026-11-24" + at_), "0 cars\n");
}

TEST_F(FindInFolder, WhatItCannotReadItSays) {
  EXPECT_EQ(run("find --from yesterday" + at_).code, 2);
  EXPECT_EQ(run("find --person nobody" + at_).code, 2);
  EXPECT_EQ(run("find --defect rust" + at_).code, 2);
  EXPECT_EQ(run("find --folder " + shop_.folder.string() + "/none").code, 2);
  const Said help = run("find --help");
  EXPECT_EQ(help.code, 0);
  expect_words(help, "half a plate");
  expect_words(help, "--sprayed-without");
}

TEST_F(FindInFolder, SignsOfTheSearchLanguageAreNoError) {
  std::vector<std::string> all{"'\"'",      "'*'",  "'NEAR(a b)'", "'a OR'",
                               "'plate:k'", "'^k'", "'k-'",        "'{'"};
  all.push_back("'" + std::string(10'000, 'k') + "'");
  for (const auto& words : all) {
    const Said said = run("find " + words + at_);
    EXPECT_EQ(said.code, 0) << words.substr(0, 20) << said.words;
  }
}

TEST_F(FindInFolder, AFolderThatMayNotBeWrittenIsSearchedAndNotChanged) {
  shop_.close();
  namespace fs = std::filesystem;
  const auto look = [&] { return test::whole_file(shop_.folder / "log.db"); };
  const std::string before = look();
  fs::permissions(shop_.folder, fs::perms::owner_read | fs::perms::owner_exec);
  expect_words(run("find wet" + at_), "\n1 car\n");
  fs::permissions(shop_.folder, fs::perms::owner_all);
  EXPECT_EQ(look(), before);
}

}  // namespace
}  // namespace jambline
