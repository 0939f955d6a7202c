#include <algorithm>
#include <gtest/gtest.h>

#include "base/random.h"
#include "tests/fuzz/targets.h"

namespace jambline::fuzz {

void PrintTo(const Target& target, std::ostream* out) {
  *out << target.name;
}

namespace {

Input bytes_of(const std::string& text) {
  return {reinterpret_cast<const std::uint8_t*>(text.data()), text.size()};
}

// Flips, cuts, repeats, inserts and splices, one to four of them.
std::string mutated(const std::vector<std::string>& seeds, SeededRandom& random) {
  std::string text = seeds[random.below(seeds.size())];
  for (auto turns = 1 + random.below(4); turns > 0; --turns) {
    const std::size_t place = text.empty() ? 0 : random.below(text.size());
    const std::size_t count = std::min<std::size_t>(text.size() - place, 1 + random.below(24));
    switch (random.below(6)) {
      case 0:
        if (!text.empty()) text[place] = static_cast<char>(text[place] ^ (1 << random.below(8)));
        break;
      case 1:
        text.resize(place);
        break;
      case 2:
        text.insert(place, text.substr(place, count));
        break;
      case 3:
        text.insert(place, 1, static_cast<char>(random.below(256)));
        break;
      case 4:
        text.erase(place, count);
        break;
      default: {
        const std::string& other = seeds[random.below(seeds.size())];
        text = text.substr(0, place) + other.substr(std::min(place, other.size()));
      }
    }
  }
  return text;
}

class Fuzzed : public testing::TestWithParam<Target> {};

TEST_P(Fuzzed, KeepsItsPromisesForSeedsAndTwoThousandMutations) {
  const Target& target = GetParam();
  const auto seeds = target.seeds();
  ASSERT_FALSE(seeds.empty());
  for (const auto& seed : seeds) target.run(bytes_of(seed));
  SeededRandom random(static_cast<std::uint64_t>(target.name[0]));
  for (int round = 0; round < 2000; ++round) {
    const std::string text = mutated(seeds, random);
    const std::vector<std::uint8_t> exact(text.begin(), text.end());  // so that asan sees the end
    target.run(exact);
  }
}

std::string name_of_target(const testing::TestParamInfo<Target>& one) {
  return one.param.name;
}
INSTANTIATE_TEST_SUITE_P(Decoders, Fuzzed, testing::ValuesIn(entry_targets()), name_of_target);
INSTANTIATE_TEST_SUITE_P(Network, Fuzzed, testing::ValuesIn(network_targets()), name_of_target);

}  // namespace
}  // namespace jambline::fuzz
