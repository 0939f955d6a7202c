#include "app/calc/calculation.h"

namespace jambline::app {

const std::vector<Calculation>& calculations() {
  static const std::vector<Calculation> all = [] {
    std::vector<Calculation> out;
    for (const auto family : {film_calculations, dirt_calculations, chance_calculations,
                              plan_calculations, cure_calculations, air_calculations,
                              breathing_calculations, assembly_calculations, record_calculations})
      for (Calculation& one : family()) out.push_back(one);
    return out;
  }();
  return all;
}

}  // namespace jambline::app
