// tests/base/sample.h: a described struct that has every kind of field.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/describe.h"
#include "base/json.h"

namespace jambline::sample {

enum class Verdict : std::uint8_t { Clean, ToCorrect, Redo };

struct Spot {
  double x_mm{};
  std::int32_t size{};
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "x_mm", .unit = "mm", .doc = "from the left", .min = 0, .max = 4000},
          self.x_mm);
    visit(Field{.name = "size", .min = 1, .max = 3}, self.size);
  }
  friend bool operator==(const Spot&, const Spot&) = default;
};

struct Everything {
  bool baked{};
  std::int64_t wall_ms{};
  std::uint64_t since_boot_ms{};
  std::int8_t small{};
  double film_um{};
  std::string note;
  Verdict verdict{};
  Hash hash;
  std::optional<double> after_um;
  std::optional<std::string> word;
  std::vector<Spot> spots;
  std::vector<std::string> words;
  Spot first;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "baked"}, self.baked);
    visit(Field{.name = "wall_ms", .unit = "ms"}, self.wall_ms);
    visit(Field{.name = "since_boot_ms", .unit = "ms"}, self.since_boot_ms);
    visit(Field{.name = "small"}, self.small);
    visit(Field{.name = "film_um", .unit = "um"}, self.film_um);
    visit(Field{.name = "note", .doc = "as \"said\""}, self.note);
    visit(Field{.name = "verdict"}, self.verdict);
    visit(Field{.name = "hash"}, self.hash);
    visit(Field{.name = "after_um", .unit = "um", .min = 0}, self.after_um);
    visit(Field{.name = "word"}, self.word);
    visit(Field{.name = "spots"}, self.spots);
    visit(Field{.name = "words"}, self.words);
    visit(Field{.name = "first"}, self.first);
  }
  friend bool operator==(const Everything&, const Everything&) = default;
};

inline Everything full() {
  Everything value;
  value.baked = true;
  value.wall_ms = -5;
  value.since_boot_ms = 7;
  value.small = -128;
  value.film_um = 47.25;
  value.note = "nib\n\"7\" \\ \x01 \xC3\xA9";
  value.verdict = Verdict::ToCorrect;
  value.hash.bytes[0] = 0xab;
  value.after_um = 0.5;
  value.spots = {{1.5, 1}, {4000, 3}};
  value.words = {"", "a"};
  value.first = {0, 2};
  return value;
}

}  // namespace jambline::sample

template <>
inline constexpr auto jambline::enum_words<jambline::sample::Verdict> =
    std::to_array<std::string_view>({"clean", "to correct", "redo"});
