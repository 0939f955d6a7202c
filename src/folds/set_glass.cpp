#include "folds/set_glass.h"

#include <algorithm>

namespace jambline::folds {

SetGlass set_glass(const BondView& bond, const CarAirView& air) {
  SetGlass out{bond.bond, bond.product, bond.what, bond.case_name, bond.at, 0, {}, {}};
  if (bond.set_ms) out.set_before_ms = std::max<std::int64_t>(0, bond.at.wall_ms - *bond.set_ms);
  for (const auto& read : air.climates) {
    if (read.at.order < bond.at.order) continue;
    out.coldest_c = std::min(out.coldest_c.value_or(read.air_c), read.air_c);
    out.driest_percent =
        std::min(out.driest_percent.value_or(read.humidity_percent), read.humidity_percent);
  }
  return out;
}

std::vector<SetGlass> glass_of(const CarAirView& air) {
  std::vector<SetGlass> out;
  for (const auto& bond : air.bonds)
    if (!bond.case_name.empty()) out.push_back(set_glass(bond, air));
  return out;
}

}  // namespace jambline::folds
