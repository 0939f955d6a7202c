// tests/trade/whole.h: numbers that properties are tried with.
#pragma once

#include <rapidcheck.h>

namespace jambline::trade {

// Evenly over the whole range, however small the case.
template <class T>
T whole(T low, T high) {
  return *rc::gen::resize(rc::kNominalSize, rc::gen::inRange<T>(low, high));
}

}  // namespace jambline::trade
