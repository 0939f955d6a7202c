// Whether a number that came from a screen is one of an enumeration's.
#pragma once

#include "base/describe.h"

namespace jambline {

template <WordedEnum E>
constexpr bool is_one(int value) {
  return value >= 0 && value < static_cast<int>(enum_words<E>.size());
}

}  // namespace jambline
