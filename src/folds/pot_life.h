// folds/pot_life.h: how long what was mixed for a car can still be sprayed.
//
// Rests on: the pot life that the shop typed from the product's sheet (trade/cure_clock.h), at the
//          warmest air that was read since it was mixed; without a reading at the hottest of the
//          sheet's points, which is its shortest time. Warmer than the sheet: `at_most` is set, and
//          it ends sooner than `left_s` says.
// Doubt:   minutes that were said afterwards count; a mix from the future (a clock was put back)
//          has no `left_s`. Between two boots the wall clock is believed.
// None:    a product without a pot life, or one that cures by UV or moisture, is left out.
// Pure.
#pragma once

#include <optional>
#include <vector>

#include "folds/car_view.h"
#include "folds/shop_view.h"

namespace jambline::folds {

struct PotLifeOfMix {
  MixId mix;
  ProductId product;
  trade::CureClock asked;
  std::optional<trade::CureResult> result;
  double gone_s{};
  std::optional<double> left_s;  // under 0: over; none: not known
  bool at_most = false;
};

std::vector<PotLifeOfMix> pot_lives(const CarView& car, const ShopView& shop, const Moment& now);

}  // namespace jambline::folds
