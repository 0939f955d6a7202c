// screens/state_kind.h: the state of a thing, as the number of the shape that says it. The order is
// that of the theme's ShapeKind; a test holds them together.
#pragma once

#include <cstdint>

namespace jambline::screens {

enum class StateKind : std::uint8_t {
  None,
  Done,
  Running,
  Waits,
  Must,
  NotYet,
  Unseen,
  Disputed,
  Respray,
  Paused,
  Ring,
};

constexpr int shape_of(StateKind kind) {
  return static_cast<int>(kind);
}

}  // namespace jambline::screens
