#include <fstream>
#include <gtest/gtest.h>
#include <iterator>

#include "base/json.h"
#include "folds/floor_view.h"
#include "tests/record/run.h"
#include "tests/record/small_shop.h"

namespace jambline {
namespace {

class ListShow : public testing::Test {
 protected:
  void SetUp() override {
    shop_.open();
    shop_.work();
    shop_.close();
    at_ = " --folder " + shop_.folder.string();
  }
  static void expect(const Said& said, const std::string& words) { expect_words(said, words); }
  SmallShop shop_;
  std::string at_;
};

TEST_F(ListShow, ListHasOneLineACarNewestFirst) {
  const Said said = run("list" + at_);
  EXPECT_EQ(said.code, 0) << said.words;
  const auto green = said.words.find("K 41-206");
  const auto red = said.words.find("S 88-014");
  ASSERT_NE(green, std::string::npos) << said.words;
  ASSERT_NE(red, std::string::npos) << said.words;
  EXPECT_LT(green, red);
  const std::string line = said.words.substr(green, said.words.find('\n', green) - green);
  for (const char* words :
       {"deep green", "four-door sedan", "inspect", "1 mark open", "in the shop"})
    EXPECT_NE(line.find(words), std::string::npos) << words << " in " << line;
  expect(said, "\n2 cars\n");
}

TEST_F(ListShow, ShowTellsPanelsMarksHoursAndTheTimeLine) {
  for (const char* car : {"'K 41-206'", "k41206", "41-2", "206"}) {
    const Said said = run("show " + std::string(car) + at_);
    EXPECT_EQ(said.code, 0) << said.words;
    expect(said, "car        K 41-206\n");
    expect(said, "color      deep green, G7\n");
    expect(said, "  hood: to correct\n    1  nib, size 2, at ");
    expect(said, "  left fender: clean\n");
    expect(said, "  front bumper cover (loose): clean, edges and back, offered\n");
    expect(said, "  inspect: 0.1 h of 1.0 h\n");
    expect(said, "Ivo  Nib 1 placed on the hood\n");
    expect(said, "Ivo  Crater 2 placed on the hood  [taken back]\n");
    expect(said, "Mara  Taken back: Crater 2 placed on the hood\n");
    expect(said, "Ivo  Front bumper cover: clean, edges and back looked at\n");
    expect(said, "Ivo  Note: door open, wet\n");
    EXPECT_EQ(said.words.find("   2  crater"), std::string::npos) << said.words;
  }
}

// 2026-11-25 14:35 UTC is 9:35 in New York (UTC-5 since 2026-11-01, tzdata).
TEST_F(ListShow, TimesAreThoseOfTheShopsZone) {
  expect(run("show k41206" + at_), "opened     2026-11-25 09:35\n");
}

TEST_F(ListShow, ACarIsAlsoFoundByItsJobIdAndSeveralAreNamed) {
  EXPECT_EQ(run("show " + shop_.green.hex() + at_).words,
            run("show " + shop_.green.hex().substr(0, 8) + at_).words);
  const Said several = run("show 1" + at_);
  EXPECT_EQ(several.code, 2);
  expect(several, "several cars fit");
  expect(several, "K 41-206 (" + shop_.green.hex().substr(0, 8) + ")");
  EXPECT_EQ(run("show 999" + at_).code, 2);
  EXPECT_EQ(run("show ''" + at_).code, 2);
}

TEST_F(ListShow, JsonSaysTheSameAndReadsAsJson) {
  const Said list = run("list --json" + at_, "");
  ASSERT_EQ(list.code, 0);
  const auto rows = from_json<std::vector<folds::FloorRow>>(list.words, Strict::Yes);
  ASSERT_TRUE(rows) << rows.error().arg("field") << list.words;
  ASSERT_EQ(rows->size(), 2U);
  EXPECT_EQ(rows->front().job, shop_.green);
  EXPECT_EQ(rows->front().marks_open, 1);

  const Said show = run("show k41206 --json" + at_, "");
  ASSERT_EQ(show.code, 0);
  EXPECT_TRUE(JsonDocument::parse(show.words)) << show.words;
  expect(show, "\"words\":\"Nib 1 placed on the hood\"");
  expect(show, "\"kind_name\":\"MarkPlaced\"");
  expect(show, "\"taken_back\":true");
}

TEST_F(ListShow, LookingChangesNothingInTheFolder) {
  const std::string before = test::whole_file(shop_.folder / "log.db");
  ASSERT_FALSE(before.empty());
  run("list" + at_);
  run("show k41206" + at_);
  EXPECT_EQ(test::whole_file(shop_.folder / "log.db"), before);
}

TEST_F(ListShow, ItWorksBesideTheRunningProgram) {
  shop_.open();
  const Said said = run("list" + at_);
  EXPECT_EQ(said.code, 0) << said.words;
  expect(said, "2 cars");
}

TEST_F(ListShow, AFolderWithoutALogIsNoAnswer) {
  const Said said = run("list --folder " + shop_.folder.string() + "/none");
  EXPECT_EQ(said.code, 2);
  expect(said, "to do: ");
}

TEST(RecordCatalogue, PrintsTheFileOfTheSourceTree) {
  const Said said = run("catalogue", "");
  EXPECT_EQ(said.code, 0);
  EXPECT_EQ(said.words, test::whole_file(JAMBLINE_SOURCE_DIR "/src/entries/CATALOGUE.md"));
}

}  // namespace
}  // namespace jambline
