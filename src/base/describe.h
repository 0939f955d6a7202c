// base/describe.h: one description of a struct, used for everything that has to know its fields.
//
// A described struct has a static member template
//     template <class Self, class Visit> static void describe(Self& self, Visit& visit) {
//       visit(Field{.name = "x_mm", .unit = "mm", .doc = "from the panel's left edge"}, self.x_mm);
//     }
// that visits every field once, in the order in which it is written. From it come the JSON writer
// and reader (base/json.h), JSON Schema, examples, CSV heads and CATALOGUE.md.
//
// Field types: bool, integers, double, std::string, enums with words, Bytes<N> (hex text),
// std::optional, std::vector and other described structs.
//
// An enum E (enumerators 0, 1, 2 ... without gaps) gets its words by
//     template <> inline constexpr auto jambline::enum_words<E> =
//         std::to_array<std::string_view>({"clean", "to correct"});
// The words are what stands in JSON; they are never reused for another meaning.
#pragma once

#include <array>
#include <concepts>
#include <limits>
#include <optional>
#include <string_view>
#include <type_traits>
#include <vector>

#include "base/ids.h"

namespace jambline {

struct Field {
  std::string_view name;
  std::string_view unit = {};
  std::string_view doc = {};
  double min = -std::numeric_limits<double>::infinity();  // inclusive; numbers only
  double max = std::numeric_limits<double>::infinity();
};

struct NullVisit {
  template <class T>
  void operator()(const Field&, T&) const {}
};

template <class T>
concept Described = requires(T& value, NullVisit& visit) {
  T::describe(value, visit);
};

template <class E>
inline constexpr std::array<std::string_view, 0> enum_words{};

template <class E>
concept WordedEnum = std::is_enum_v<E> &&(enum_words<E>.size() > 0);

template <WordedEnum E>
constexpr std::string_view word_of(E value) {
  const auto index = static_cast<std::size_t>(value);
  return index < enum_words<E>.size() ? enum_words<E>[index] : std::string_view{};
}

template <WordedEnum E>
constexpr std::optional<E> from_word(std::string_view word) {
  for (std::size_t i = 0; i < enum_words<E>.size(); ++i)
    if (enum_words<E>[i] == word) return static_cast<E>(i);
  return std::nullopt;
}

template <class T>
inline constexpr bool is_bytes = false;
template <std::size_t N, class Tag>
inline constexpr bool is_bytes<Bytes<N, Tag>> = true;

template <class T>
inline constexpr bool is_vector = false;
template <class T>
inline constexpr bool is_vector<std::vector<T>> = true;

template <class T>
inline constexpr bool is_optional = false;
template <class T>
inline constexpr bool is_optional<std::optional<T>> = true;

}  // namespace jambline
