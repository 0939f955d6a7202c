// folds/find_words.h: what a car is found by: its words field by field, and the facts to choose by.
//
// Shape:   texts as people wrote them, one a line. What is no text is a code: a kind of the record
//          ("defect3") or a thing of the shop by its id ("person0f..."). No sentence and no name of
//          a person stands here: whoever asks brings the names of codes with him (NamedCode), in
//          his language and as the shop calls its people now. A name that was erased is in no
//          index.
// Parts:   the ends of plate and VIN without blanks and hyphens, so that half a plate is enough.
// Late:    is worked out when asked: a car in work becomes late by itself.
// Threads: pure.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "folds/car_view.h"
#include "folds/shop_view.h"

namespace jambline::folds {

// Where a word was found.
enum class FindField : std::uint8_t {
  Plate,
  Vin,
  Color,
  Notes,     // of the car and on its pictures
  Work,      // operations, parts that are bought, sublets, batches, what was bonded
  Reasons,   // of overrides, returns, amended clocks
  Customer,  // complaint, old damage, who signed
  Kind,
  Person,
  Booth,
  Product,
};

// The word in front of the number of each kind; changing one is a new fold_version of the shelf.
template <class E>
inline constexpr std::string_view find_family{};
template <>
inline constexpr std::string_view find_family<job::DefectKind> = "defect";
template <>
inline constexpr std::string_view find_family<job::DirtCause> = "cause";
template <>
inline constexpr std::string_view find_family<job::Panel> = "panel";
template <>
inline constexpr std::string_view find_family<job::BodyShape> = "body";
template <>
inline constexpr std::string_view find_family<job::Stage> = "next";  // the next one
template <>
inline constexpr std::string_view find_family<job::Verdict> = "verdict";
template <>
inline constexpr std::string_view find_family<job::WorkKind> = "work";
template <>
inline constexpr std::string_view find_family<job::WaitReason> = "wait";
template <>
inline constexpr std::string_view find_family<job::GunItem> = "gun";  // passed over, or without
template <>
inline constexpr std::string_view find_family<job::GunReason> = "gunwhy";
template <>
inline constexpr std::string_view find_family<job::CutItem> = "cut";  // passed over
template <>
inline constexpr std::string_view find_family<job::OverrideReason> = "cutwhy";
template <>
inline constexpr std::string_view find_family<job::Step> = "step";  // done against a rule
template <>
inline constexpr std::string_view find_family<job::RuleReason> = "stepwhy";

template <WordedEnum E>
std::string find_code(E value) {
  static_assert(!find_family<E>.empty());
  return std::string(find_family<E>) + std::to_string(static_cast<int>(value));
}
std::string find_code(const PersonId& person);
std::string find_code(const BoothId& booth);
std::string find_code(const ProductId& product);
FindField field_of_code(std::string_view code);

// What a code is called by whoever asks.
struct NamedCode {
  std::string code;
  std::string name;
  friend bool operator==(const NamedCode&, const NamedCode&) = default;
};

// Every kind with its words; `words_of` gives a std::string for each value of each of them.
template <class WordsOf>
std::vector<NamedCode> named_kinds(const WordsOf& words_of) {
  std::vector<NamedCode> out;
  const auto add = [&]<class E>(E) {
    for (std::size_t i = 0; i < enum_words<E>.size(); ++i)
      out.push_back({find_code(static_cast<E>(i)), words_of(static_cast<E>(i))});
  };
  const auto add_all = [&]<class... E>(E... of_each) { (add(of_each), ...); };
  add_all(job::DefectKind{}, job::DirtCause{}, job::Panel{}, job::BodyShape{}, job::Stage{},
          job::Verdict{}, job::WorkKind{}, job::WaitReason{}, job::GunItem{}, job::GunReason{},
          job::CutItem{}, job::OverrideReason{}, job::Step{}, job::RuleReason{});
  return out;
}

// People, booths and products as the shop calls them now.
std::vector<NamedCode> named_of_shop(const ShopView& shop);

struct FindWords {
  std::string plate;
  std::string vin;
  std::string color;
  std::string notes;
  std::string work;
  std::string reasons;
  std::string customer;
  std::string codes;  // sorted, a blank between
  std::string parts;
  friend bool operator==(const FindWords&, const FindWords&) = default;
};

struct FindFacts {
  std::int64_t opened_ms{};
  std::optional<std::int64_t> delivered_ms;
  std::optional<std::int64_t> promised_ms;
  std::optional<job::Stage> next_stage;
  bool redo = false;              // work done again, or a panel that has to be
  bool came_back = false;         // after it was delivered
  bool spray_override = false;    // a must before the gun was passed over, with name and reason
  bool other_override = false;    // before cutting, or against the order of assembly
  bool sprayed_without = false;   // somebody said that it was sprayed without
  bool pictures_missing = false;  // a stage was ended though pictures were missing
  bool amended = false;           // hours that count at another time than the clock said
  bool disputed = false;
  friend bool operator==(const FindFacts&, const FindFacts&) = default;
};

struct Findable {
  FindWords words;
  FindFacts facts;
  friend bool operator==(const Findable&, const Findable&) = default;
};

Findable findable(const CarView& car);

// Letters and digits only; whatever is not ASCII stays.
std::string squeezed(std::string_view text);

}  // namespace jambline::folds

template <>
inline constexpr auto jambline::enum_words<jambline::folds::FindField> =
    std::to_array<std::string_view>({"plate", "vin", "color", "notes", "work", "reasons",
                                     "customer", "kind", "person", "booth", "product"});
