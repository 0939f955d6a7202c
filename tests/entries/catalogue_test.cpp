#include <gtest/gtest.h>
#include <iterator>
#include <set>
#include <sstream>

#include "entries/entry.h"
#include "tests/whole_file.h"

namespace jambline::entries {
namespace {

// The catalogue is what other people read our entries by: a change in a description has to show in
// a reviewed change of this file. `jambline-record catalogue` writes it anew.
TEST(Catalogue, TheFileIsWhatTheDescriptionsSay) {
  EXPECT_EQ(test::whole_file(JAMBLINE_SOURCE_DIR "/src/entries/CATALOGUE.md"), catalogue())
      << "write it anew: jambline-record catalogue > src/entries/CATALOGUE.md";
}

TEST(Catalogue, EveryKindHasItsOwnNumberAndName) {
  std::istringstream lines(catalogue());
  std::set<int> numbers;
  std::set<std::string> names;
  for (std::string line; std::getline(lines, line);) {
    if (line.rfind("## ", 0) != 0) continue;
    std::istringstream head(line.substr(3));
    int number{};
    std::string name;
    head >> number >> name;
    EXPECT_TRUE(numbers.insert(number).second) << number;
    EXPECT_TRUE(names.insert(name).second) << name;
    EXPECT_GT(number, 5) << "1 to 5 belong to membership";
    EXPECT_EQ(kind_name(static_cast<std::uint16_t>(number)), name);
  }
  EXPECT_EQ(numbers.size() + 3, PayloadKinds::count);
}

TEST(Catalogue, NamesOfMembershipKindsAndOfUnknownOnes) {
  EXPECT_EQ(kind_name(1), "ShopFounded");
  EXPECT_EQ(kind_name(5), "PayloadErased");
  EXPECT_EQ(kind_name(0), "kind 0");
  EXPECT_EQ(kind_name(4711), "kind 4711");
}

TEST(Catalogue, OnlyWhatSaysSomethingOfOnePersonMayBeErased) {
  EXPECT_EQ(erasable_kinds(), (std::vector<std::uint16_t>{
                                  PersonNamed::kind, NoteWritten::kind, PictureNoted::kind,
                                  FitTestDone::kind, DoNotSpraySaid::kind, DueSet::kind,
                                  ExposureSampled::kind, FirstAidOpened::kind, Signed::kind}));
}

}  // namespace
}  // namespace jambline::entries
