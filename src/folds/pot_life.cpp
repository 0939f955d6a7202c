#include "folds/pot_life.h"

#include <algorithm>
#include <cmath>

namespace jambline::folds {

namespace {
constexpr double ms_per_s = 1000;

// None: the mix is from the future.
std::optional<double> gone_s(const MixView& mix, const Moment& now) {
  const bool same_boot = mix.at.boot == now.boot;
  if (same_boot ? mix.at.since_boot_ms > now.since_boot_ms : mix.at.wall_ms > now.wall_ms)
    return std::nullopt;
  const std::int64_t before_ms =
      mix.mixed_ms ? std::max<std::int64_t>(0, mix.at.wall_ms - *mix.mixed_ms) : 0;
  return static_cast<double>(elapsed_ms(mix.at, now) + before_ms) / ms_per_s;
}

std::optional<double> warmest_air_c(const CarView& car, const MixView& mix) {
  std::optional<double> out;
  for (const auto& read : car.air.climates)
    if (mix.at.order < read.at.order) out = std::max(out.value_or(read.air_c), read.air_c);
  return out;
}

const trade::CureStep* pot_life_of(const job::Product& product) {
  for (const auto& step : product.steps)
    if (step.milestone == trade::CureMilestone::PotLife && !step.points.empty()) return &step;
  return nullptr;
}
}  // namespace

std::vector<PotLifeOfMix> pot_lives(const CarView& car, const ShopView& shop, const Moment& now) {
  std::vector<PotLifeOfMix> out;
  for (const auto& mix : car.air.mixes) {
    const auto* product = shop.air.find(mix.product);
    const auto* step = product ? pot_life_of(product->said) : nullptr;
    if (!step) continue;
    const auto hottest =
        std::max_element(step->points.begin(), step->points.end(),
                         [](const auto& a, const auto& b) { return a.at_c < b.at_c; });
    PotLifeOfMix one;
    one.mix = mix.mix;
    one.product = mix.product;
    const double air_c = warmest_air_c(car, mix).value_or(hottest->at_c);
    one.at_most = air_c > hottest->at_c;
    const auto gone = gone_s(mix, now);
    one.gone_s = gone.value_or(0);
    one.asked.kind = product->said.cure;
    one.asked.steps = {*step};
    one.asked.readings = {{0, std::min(air_c, hottest->at_c)}};
    one.asked.now_min = one.gone_s / 60;
    const auto result = trade::cure_clock(one.asked);
    if (!result || !result->computed || result->standings.empty()) continue;
    const auto& ends = result->standings.front().reached_min;
    if (gone && ends && std::isfinite(*ends)) one.left_s = *ends * 60 - *gone;
    one.result = *result;
    out.push_back(std::move(one));
  }
  return out;
}

}  // namespace jambline::folds
