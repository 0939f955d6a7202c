// What somebody did before a screen is looked at.
#pragma once

#include <optional>

#include "shops.h"

namespace jambline::walk {

// Posts and waits; false when it was refused.
bool act(Shop& shop, acts::Command command, const PersonId& by);
const folds::ShopView& shop_of(Shop& shop);
std::optional<PersonId> manager_of(Shop& shop);

}  // namespace jambline::walk
