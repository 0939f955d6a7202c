#include "base/describe.h"

#include <gtest/gtest.h>

#include "tests/base/sample.h"

namespace jambline {
namespace {

struct Names {
  std::vector<std::string> all;
  template <class T>
  void operator()(const Field& field, T&) {
    all.emplace_back(field.name);
  }
};

TEST(Describe, EveryFieldIsVisitedOnceInOrder) {
  sample::Everything value;
  Names names;
  sample::Everything::describe(value, names);
  EXPECT_EQ(names.all, (std::vector<std::string>{"baked", "wall_ms", "since_boot_ms", "small",
                                                 "film_um", "note", "verdict", "hash", "after_um",
                                                 "word", "spots", "words", "first"}));
  const sample::Everything fixed;
  Names again;
  sample::Everything::describe(fixed, again);
  EXPECT_EQ(again.all, names.all);
}

TEST(Describe, WordsOfAnEnumGoBothWays) {
  EXPECT_EQ(word_of(sample::Verdict::Redo), "redo");
  EXPECT_EQ(from_word<sample::Verdict>("redo"), sample::Verdict::Redo);
  EXPECT_EQ(from_word<sample::Verdict>("Redo"), std::nullopt);
  EXPECT_EQ(from_word<sample::Verdict>(""), std::nullopt);
  EXPECT_EQ(word_of(static_cast<sample::Verdict>(200)), "");
}

TEST(Describe, ConceptsTellTheKindsApart) {
  EXPECT_TRUE(Described<sample::Spot>);
  EXPECT_FALSE(Described<int>);
  EXPECT_TRUE(WordedEnum<sample::Verdict>);
  EXPECT_FALSE(WordedEnum<Strict>);
  EXPECT_TRUE(is_bytes<Hash>);
  EXPECT_TRUE(is_vector<std::vector<int>>);
  EXPECT_TRUE(is_optional<std::optional<int>>);
}

}  // namespace
}  // namespace jambline
