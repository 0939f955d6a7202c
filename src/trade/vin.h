// trade/vin.h: is this vehicle identification number written as one should be?
//
// Rule:    17 signs, no I, O, Q; the sign at place 9 answers for the other sixteen (sum of value
//          times weight, mod 11, ten written X).
// Means:   passing is no proof: a wrong sign passes when it has the value of the right one (2 and
// S,
//          8 and H, 1 and A), and so do some pairs of mistakes. Failing is no proof of a mistake
//          either: the check sign is required in North America and China only. So nothing here
//          refuses a number; the person who stands at the car decides.
// Errors:  none; what is wrong is in the answer. Text of any length and encoding is taken.
// Source:  49 CFR 565.15; ISO 3779. The model year's place 7 rule is from memory (565.15(d)).
// Threads: pure.
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace jambline::trade {

// One place where another sign, one that is often misread for it, would make the number pass.
struct VinSuspect {
  int place = 0;  // 1..17
  char instead{};
  friend bool operator==(const VinSuspect&, const VinSuspect&) = default;
};

struct VinCheck {
  std::string text;                   // upper case, blanks and hyphens taken out
  bool length_right = false;          // 17
  std::vector<int> forbidden_places;  // I, O, Q or a sign that is no letter or digit; 1-based
  // Only when the length is right and no place but 9 is forbidden:
  bool summed = false;
  int sum = 0;
  char expected{};                   // what should stand at place 9
  bool passes = false;               // length, signs and check sign
  std::vector<VinSuspect> suspects;  // empty when it passes

  // Model years that place 10 can mean, the likelier one first; empty when the sign stands for
  // none. Place 7 a digit: 1980 to 2009, a letter: 2010 to 2039 (cars and light trucks).
  std::vector<int> model_years;
};

VinCheck check_vin(std::string_view text);

// The value of a sign in the sum, -1 for I, O, Q and all that has none.
int vin_value(char sign);

inline constexpr std::array<int, 17> vin_weights{8, 7, 6, 5, 4, 3, 2, 10, 0,
                                                 9, 8, 7, 6, 5, 4, 3, 2};

}  // namespace jambline::trade
