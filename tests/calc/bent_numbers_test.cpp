// Whatever number of an input is bent or taken out: an answer that is JSON, so without NaN and
// infinity, or a refusal in a sentence.
#include <gtest/gtest.h>
#include <random>

#include "app/calc/calculation.h"
#include "tests/calc/json_places.h"

namespace jambline::app {
namespace {

void expect_answer_or_sentence(const Calculation& one, const std::string& input,
                               const std::string& what) {
  const auto output = one.run(input);
  if (output) {
    EXPECT_TRUE(JsonDocument::parse(*output)) << one.name << " " << what << "\n" << *output;
    return;
  }
  const std::string sentence = refused(output.error(), input);
  EXPECT_TRUE(sentence.starts_with("The field '")) << one.name << " " << what << ": " << sentence;
  EXPECT_TRUE(sentence.ends_with(".\n")) << one.name << " " << what << ": " << sentence;
}

TEST(BentNumbers, OneNumberBentOrTakenOutGivesAnAnswerOrASentence) {
  for (const Calculation& one : calculations()) {
    const std::string example = one.example();
    const JsonPlaces places(example);
    for (const Place& place : places.all()) {
      if (place.kind != 'n') continue;
      for (const char* bent : {"-1e308", "1e308", "0", "5e-324", "-1", "1"})
        expect_answer_or_sentence(one, places.with(place, bent), place.path + " = " + bent);
      expect_answer_or_sentence(one, places.without(place), place.path + " out");
    }
  }
}

TEST(BentNumbers, ListsEmptiedOrHalvedGiveAnAnswerOrASentence) {
  for (const Calculation& one : calculations()) {
    const std::string example = one.example();
    const JsonPlaces places(example);
    for (const Place& place : places.all()) {
      if (place.kind == 'l') expect_answer_or_sentence(one, places.with(place, "[]"), place.path);
      if (!place.path.empty() && place.path.back() == ']')
        expect_answer_or_sentence(one, places.without(place), place.path + " out");
    }
  }
}

// How often chance is drawn: only bent in the other cases, for time.
bool is_effort(const Place& place) {
  return place.path == "patterns" || place.path == "trials";
}

TEST(BentNumbers, SeveralNumbersBentAtOnceGiveAnAnswerOrASentence) {
  std::mt19937_64 draws(4206);
  const std::vector<std::string> bends{"0",   "1",    "-1",  "0.5",  "2",     "10",  "100",
                                       "500", "1000", "1e4", "1e-6", "99.99", "1e6", "-20"};
  for (const Calculation& one : calculations()) {
    for (int trial = 0; trial < 300; ++trial) {
      std::string input = one.example();
      std::string what;
      for (std::uint64_t bent = 0, most = 2 + draws() % 4; bent < most; ++bent) {
        const JsonPlaces places(input);
        std::vector<Place> numbers;
        for (const Place& place : places.all())
          if (place.kind == 'n' && !is_effort(place)) numbers.push_back(place);
        if (numbers.empty()) break;
        const Place& place = numbers[draws() % numbers.size()];
        const std::string& value = bends[draws() % bends.size()];
        what += place.path + " = " + value + ", ";
        input = places.with(place, value);
      }
      expect_answer_or_sentence(one, input, what);
    }
  }
}

}  // namespace
}  // namespace jambline::app
