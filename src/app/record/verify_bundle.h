// app/record/verify_bundle.h: an evidence bundle checked, and what was found in words.
//
// Result:  as in commands.h: 0 good, 1 bad, 2 it could not be read.
#pragma once

#include <filesystem>
#include <optional>

#include "base/ids.h"

namespace jambline::app {

int verify_bundle(const std::filesystem::path& file, const std::optional<ShopId>& wanted,
                  bool quiet);

}  // namespace jambline::app
