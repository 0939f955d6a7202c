#include "trade/draws.h"

#include <boost/math/special_functions/gamma.hpp>
#include <cmath>
#include <numbers>

namespace jambline::trade {

std::uint64_t seed_of(std::uint64_t seed, std::string_view name) {
  std::uint64_t mixed = 0xcbf29ce484222325U ^ seed;
  for (const char one : name) {
    mixed ^= static_cast<unsigned char>(one);
    mixed *= 0x100000001b3U;
  }
  mixed += 0x9e3779b97f4a7c15U;
  mixed = (mixed ^ mixed >> 30U) * 0xbf58476d1ce4e5b9U;
  mixed = (mixed ^ mixed >> 27U) * 0x94d049bb133111ebU;
  return mixed ^ mixed >> 31U;
}

std::size_t Draws::below(std::size_t count) {
  const std::uint64_t whole = count;
  const std::uint64_t least = (0 - whole) % whole;  // what would make the low values too frequent
  for (;;) {
    const std::uint64_t drawn = bits_();
    if (drawn >= least) return static_cast<std::size_t>(drawn % whole);
  }
}

double Draws::normal(double mean, double sd) {
  if (has_spare_) {
    has_spare_ = false;
    return mean + sd * spare_;
  }
  const double radius = std::sqrt(-2 * std::log(1 - unit()));
  const double turn = 2 * std::numbers::pi * unit();
  spare_ = radius * std::sin(turn);
  has_spare_ = true;
  return mean + sd * radius * std::cos(turn);
}

double Draws::triangular(double low, double likely, double high) {
  const double width = high - low;
  if (width <= 0) return low;
  const double drawn = unit();
  const double rise = (likely - low) / width;
  if (drawn < rise) return low + std::sqrt(drawn * width * (likely - low));
  return high - std::sqrt((1 - drawn) * width * (high - likely));
}

double Draws::exponential(double mean) {
  return -mean * std::log(1 - unit());
}

std::uint64_t Draws::poisson(double mean) {
  if (mean <= 0) return 0;
  if (mean < 30) {
    std::uint64_t count = 0;
    double time = exponential(1);
    while (time < mean) {
      ++count;
      time += exponential(1);
    }
    return count;
  }
  // Hoermann 1993, transformed rejection PTRS.
  const double log_mean = std::log(mean);
  const double b = 0.931 + 2.53 * std::sqrt(mean);
  const double a = -0.059 + 0.02483 * b;
  const double inverse_alpha = 1.1239 + 1.1328 / (b - 3.4);
  const double fit = 0.9277 - 3.6224 / (b - 2);
  for (;;) {
    const double u = unit() - 0.5;
    const double v = 1 - unit();
    const double edge = 0.5 - std::abs(u);
    const double k = std::floor((2 * a / edge + b) * u + mean + 0.43);
    if (edge >= 0.07 && v <= fit) return static_cast<std::uint64_t>(k);
    if (k < 0 || (edge < 0.013 && v > edge)) continue;
    if (std::log(v) + std::log(inverse_alpha) - std::log(a / (edge * edge) + b) <=
        -mean + k * log_mean - boost::math::lgamma(k + 1))
      return static_cast<std::uint64_t>(k);
  }
}

}  // namespace jambline::trade
