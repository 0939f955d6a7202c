#include <gtest/gtest.h>
#include <memory>
#include <stdexcept>
#include <string>
#include <variant>
#include <vector>

#include "base/one_of_acts.h"
#include "base/random.h"

namespace jambline {
namespace {

// Counts how many live; copies of a `fragile` one throw.
struct Counted {
  static int alive;
  std::string text;
  bool fragile = false;
  Counted() { ++alive; }
  explicit Counted(std::string said, bool breaks = false) : text(std::move(said)), fragile(breaks) {
    ++alive;
  }
  Counted(const Counted& other) : text(other.text), fragile(other.fragile) {
    if (fragile) throw std::runtime_error("copied");
    ++alive;
  }
  Counted(Counted&& other) noexcept : text(std::move(other.text)), fragile(other.fragile) {
    ++alive;
  }
  Counted& operator=(const Counted&) = delete;
  Counted& operator=(Counted&&) = delete;
  ~Counted() { --alive; }
};
int Counted::alive = 0;

struct Owner {
  std::shared_ptr<int> of;
};
struct alignas(32) Wide {
  double value = 1.5;
};

struct FewKinds : Kinds<Wide, Counted, Owner, int> {};
struct Few : OneOf<FewKinds> {
  using OneOf::OneOf;
};

struct OtherKinds : Kinds<std::string, int, std::vector<int>> {};
struct OneOfOther : OneOf<OtherKinds> {
  using OneOf::OneOf;
};

std::string said(const Few& few) {
  struct Words {
    std::string operator()(const Wide& one) const { return "wide " + std::to_string(one.value); }
    std::string operator()(const Counted& one) const { return "counted " + one.text; }
    std::string operator()(const Owner& one) const { return one.of ? "owner" : "nobody"; }
    std::string operator()(int one) const { return std::to_string(one); }
  };
  return few.visit(Words{});
}

}  // namespace

template const KindActs<FewKinds> OneOf<FewKinds>::acts;
template const KindActs<OtherKinds> OneOf<OtherKinds>::acts;

namespace {

TEST(OneOf, HoldsTheFirstKindWhenMadeOfNothing) {
  const Few few;
  EXPECT_EQ(few.index(), 0U);
  EXPECT_TRUE(few.is<Wide>());
  EXPECT_EQ(said(few), "wide 1.500000");
  EXPECT_EQ(reinterpret_cast<std::uintptr_t>(few.get_if<Wide>()) % alignof(Wide), 0U);
}

TEST(OneOf, AnswersAsTheKindItHoldsAndAsNoOther) {
  Few few = 7;
  EXPECT_EQ(few.index(), 3U);
  EXPECT_EQ(few.get<int>(), 7);
  EXPECT_EQ(few.get_if<Owner>(), nullptr);
  EXPECT_THROW(few.get<Counted>(), std::bad_cast);
  few.visit([](auto& one) {
    if constexpr (std::is_same_v<std::decay_t<decltype(one)>, int>) one = 8;
  });
  EXPECT_EQ(said(few), "8");
  few.emplace<Counted>().text = "here";
  EXPECT_EQ(said(few), "counted here");
}

TEST(OneOf, WhatItHeldEndsOnceAndNothingIsHeldTwice) {
  {
    std::vector<Few> all;
    for (int i = 0; i < 20; ++i) all.push_back(i % 2 ? Few(Counted(std::to_string(i))) : Few(i));
    EXPECT_EQ(Counted::alive, 10);
    std::vector<Few> copies = all;
    EXPECT_EQ(Counted::alive, 20);
    copies[1] = all[2];
    copies[2] = std::move(copies[3]);
    EXPECT_TRUE(copies[3].is<Counted>()) << "what was moved from keeps its kind";
    EXPECT_EQ(said(copies[2]), "counted 3");
    EXPECT_EQ(Counted::alive, 20);
    Few& same = all[5];
    all[5] = same;
    EXPECT_EQ(said(all[5]), "counted 5");
    const auto counted = std::make_shared<int>(1);
    all[0] = Owner{counted};
    EXPECT_EQ(counted.use_count(), 2);
    all[0] = 3;
    EXPECT_EQ(counted.use_count(), 1);
  }
  EXPECT_EQ(Counted::alive, 0);
}

TEST(OneOf, ACopyThatThrowsChangesNothing) {
  {
    const Few fragile = Counted("glass", true);
    Few other = 5;
    EXPECT_THROW(other = fragile, std::runtime_error);
    EXPECT_EQ(other.get<int>(), 5);
    EXPECT_THROW(Few{fragile}, std::runtime_error);
    EXPECT_EQ(said(fragile), "counted glass");
  }
  EXPECT_EQ(Counted::alive, 0);
}

// Reference: std::variant of the same kinds (ISO/IEC 14882, 22.6), in libstdc++.
TEST(OneOf, DoesWhatAVariantDoes) {
  using Other = std::variant<std::string, int, std::vector<int>>;
  SeededRandom random(124);
  std::vector<Other> others(6);
  const auto words = [](const auto& one) -> std::string {
    using T = std::decay_t<decltype(one)>;
    if constexpr (std::is_same_v<T, std::string>) return "s" + one;
    if constexpr (std::is_same_v<T, int>) return "i" + std::to_string(one);
    if constexpr (std::is_same_v<T, std::vector<int>>) return "v" + std::to_string(one.size());
    return {};
  };
  std::vector<OneOfOther> ours(6);
  for (int round = 0; round < 5000; ++round) {
    const auto to = random.below(6), from = random.below(6);
    const auto number = static_cast<int>(random.below(40));
    switch (random.below(6)) {
      case 0:
        others[to] = number, ours[to] = number;
        break;
      case 1:
        others[to] = std::string(random.below(60), 'x');
        ours[to] = std::get<std::string>(others[to]);
        break;
      case 2:
        others[to] = std::vector<int>(random.below(9));
        ours[to] = std::get<std::vector<int>>(others[to]);
        break;
      case 3:
        others[to] = others[from], ours[to] = ours[from];
        break;
      case 4:
        std::swap(others[to], others[from]), std::swap(ours[to], ours[from]);
        break;
      default:
        others[to].emplace<2>(), ours[to].emplace<std::vector<int>>();
    }
    for (std::size_t i = 0; i < others.size(); ++i) {
      ASSERT_EQ(ours[i].index(), others[i].index()) << "round " << round;
      ASSERT_EQ(ours[i].visit(words), std::visit(words, others[i])) << "round " << round;
    }
  }
}

}  // namespace
}  // namespace jambline
