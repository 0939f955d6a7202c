// seal/fingerprint.h: the shop's id as people read it aloud and compare it.
//
// Shape:  eight groups of four hex signs: "1f0a-93c2-...". It is the whole id, so that whoever
// knows
//         it can tell a shop whose founder's key was replaced.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "base/ids.h"

namespace jambline::seal {

std::string fingerprint(const ShopId& shop);
// Takes hyphens, blanks and capitals as they come; nullopt unless 32 hex signs are left.
std::optional<ShopId> parse_fingerprint(std::string_view text);

}  // namespace jambline::seal
