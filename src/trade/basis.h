// trade/basis.h: what a computed number was made from, enough for a screen to open it.
//
// Shape:   every result of src/trade carries one Basis: the method in one sentence, the terms in
//          the order in which they were used (inputs, intermediate values, limits), and the seed
//          where chance was drawn. A term's source is an authority with its year, "measured",
//          "entered by the shop", or "common practice, no source".
// Threads: plain values.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/describe.h"

namespace jambline::trade {

inline constexpr const char* common_practice = "common practice, no source";
inline constexpr const char* entered = "entered by the shop";
inline constexpr const char* measured = "measured";
inline constexpr const char* computed = "computed";

// The source of what a shop may set: its own value is the shop's, the default common practice.
inline const char* usual(double value, double default_value) {
  return value == default_value ? common_practice : entered;
}

struct Term {
  std::string name;
  double value{};
  std::string unit;
  std::string source;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "name"}, self.name);
    visit(Field{.name = "value"}, self.value);
    visit(Field{.name = "unit"}, self.unit);
    visit(Field{.name = "source", .doc = "authority and year, or what it rests on"}, self.source);
  }
  friend bool operator==(const Term&, const Term&) = default;
};

struct Basis {
  std::string method;
  std::vector<Term> terms;
  std::optional<std::uint64_t> seed;

  void term(std::string name, double value, std::string unit, std::string source) {
    terms.push_back({std::move(name), value, std::move(unit), std::move(source)});
  }
  // The first term of that name, or null.
  const Term* find(std::string_view name) const {
    for (const Term& one : terms)
      if (one.name == name) return &one;
    return nullptr;
  }

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "method"}, self.method);
    visit(Field{.name = "terms"}, self.terms);
    visit(Field{.name = "seed"}, self.seed);
  }
  friend bool operator==(const Basis&, const Basis&) = default;
};

}  // namespace jambline::trade
