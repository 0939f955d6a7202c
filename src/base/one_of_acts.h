#pragma once

// For the one source file of a list that knows how its kinds are copied, moved and ended.
#include <memory>

#include "base/one_of.h"

namespace jambline {

template <class Kind>
struct ActsOf {
  static_assert(std::is_nothrow_move_constructible_v<Kind>);
  static void copy(void* to, const void* from) { ::new (to) Kind(*static_cast<const Kind*>(from)); }
  static void move(void* to, void* from) { ::new (to) Kind(std::move(*static_cast<Kind*>(from))); }
  static void end(void* value) { std::destroy_at(static_cast<Kind*>(value)); }
  static constexpr ActsOnKind all{copy, move, end};
};

template <class List>
constinit const KindActs<List> OneOf<List>::acts = List::template all_of<ActsOf, ActsOnKind>();

}  // namespace jambline
