// trade/refusal.h: how a calculation says no: an Error that names the field, in a sentence.
//
// Errors:  OutOfRange (a number that cannot be), Missing (an empty list), TooLarge (more than the
//          function takes), Malformed (lists that contradict themselves). args: field, cause.
#pragma once

#include <cmath>
#include <string>

#include "base/error.h"

namespace jambline::trade {

inline Error refusal(Code code, std::string field, std::string cause) {
  std::string subject = field;
  return {code,
          "calculate",
          std::move(subject),
          {{"field", std::move(field)}, {"cause", std::move(cause)}}};
}

inline std::string item(const char* list, std::size_t place, const char* field) {
  return std::string(list) + '[' + std::to_string(place) + "]." + field;
}

// Finite and within [low, high].
inline Status need(const std::string& field, double value, double low, double high,
                   const char* cause) {
  if (std::isfinite(value) && value >= low && value <= high) return {};
  return fail(refusal(Code::OutOfRange, field, cause));
}

inline constexpr double absolute_zero_c = -273.15;

}  // namespace jambline::trade
