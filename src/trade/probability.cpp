#include "trade/probability.h"

#include <algorithm>
#include <boost/math/distributions/binomial.hpp>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/students_t.hpp>
#include <boost/math/special_functions/beta.hpp>
#include <boost/math/special_functions/gamma.hpp>
#include <cmath>
#include <numeric>

namespace jambline::trade {

namespace {
namespace policies = boost::math::policies;
// The same steps on every machine: no detour over long double.
using Plain =
    policies::policy<policies::promote_double<false>, policies::discrete_quantile<policies::real>>;
using Binomial = boost::math::binomial_distribution<double, Plain>;
using Normal = boost::math::normal_distribution<double, Plain>;

double real(std::int64_t count) {
  return static_cast<double>(count);
}
}  // namespace

double normal_below(double z) {
  return boost::math::cdf(Normal(), z);
}

double normal_quantile(double chance) {
  return boost::math::quantile(Normal(), chance);
}

double normal_below(double value, double mean, double sd) {
  if (sd <= 0) return value < mean ? 0 : 1;
  return normal_below((value - mean) / sd);
}

double student_quantile(double chance, double freedom) {
  return boost::math::quantile(boost::math::students_t_distribution<double, Plain>(freedom),
                               chance);
}

double binomial_at_least(std::int64_t count, std::int64_t trials, double share) {
  if (count <= 0) return 1;
  return boost::math::cdf(boost::math::complement(Binomial(real(trials), share), real(count - 1)));
}

double binomial_at_most(std::int64_t count, std::int64_t trials, double share) {
  if (count >= trials) return 1;
  return boost::math::cdf(Binomial(real(trials), share), real(count));
}

double binomial_two_sided(std::int64_t count, std::int64_t trials, double share) {
  if (trials == 0) return 1;
  if (share <= 0) return count == 0 ? 1 : 0;
  if (share >= 1) return count == trials ? 1 : 0;
  const Binomial outcomes(real(trials), share);
  // Outcomes whose chance is equal but for rounding count as equal (R does the same).
  const double limit = boost::math::pdf(outcomes, real(count)) * (1 + 1e-7);
  const double middle = real(trials) * share;
  if (real(count) == middle) return 1;
  const auto likelier = [&](std::int64_t one) {
    return boost::math::pdf(outcomes, real(one)) > limit;
  };
  if (real(count) < middle) {
    // The least outcome above the middle that is no likelier: chances fall from there on.
    std::int64_t low = static_cast<std::int64_t>(std::ceil(middle));
    std::int64_t high = trials + 1;
    while (low < high) {
      const std::int64_t half = std::midpoint(low, high);
      if (half <= trials && likelier(half))
        low = half + 1;
      else
        high = half;
    }
    const double above = low > trials ? 0 : binomial_at_least(low, trials, share);
    return std::min(1.0, binomial_at_most(count, trials, share) + above);
  }
  std::int64_t low = -1;
  std::int64_t high = static_cast<std::int64_t>(std::floor(middle));
  while (low < high) {
    const std::int64_t half = low + (high - low + 1) / 2;
    if (likelier(half))
      high = half - 1;
    else
      low = half;
  }
  const double below = low < 0 ? 0 : binomial_at_most(low, trials, share);
  return std::min(1.0, below + binomial_at_least(count, trials, share));
}

double binomials_at_least(std::int64_t count, const std::vector<BinomialPart>& parts) {
  if (count <= 0) return 1;
  std::vector<double> sums{1};
  for (const BinomialPart& part : parts) {
    const Binomial one(real(part.trials), part.share);
    std::vector<double> next(sums.size() + static_cast<std::size_t>(part.trials), 0.0);
    for (std::int64_t i = 0; i <= part.trials; ++i) {
      const double chance = boost::math::pdf(one, real(i));
      for (std::size_t k = 0; k < sums.size(); ++k)
        next[static_cast<std::size_t>(i) + k] += chance * sums[k];
    }
    sums = std::move(next);
  }
  double out = 0;
  for (std::size_t i = sums.size(); i-- > static_cast<std::size_t>(count);) out += sums[i];
  return std::min(1.0, out);
}

double drawn_at_least(std::int64_t count, std::int64_t drawn, std::int64_t first,
                      std::int64_t second, double odds) {
  const std::int64_t least = std::max<std::int64_t>(0, drawn - second);
  const std::int64_t most = std::min(drawn, first);
  if (count <= least) return 1;
  if (count > most) return 0;
  // Each outcome's weight over that of the one before, summed in logarithms from the heaviest.
  std::vector<double> logs{0};
  for (std::int64_t one = least; one < most; ++one)
    logs.push_back(logs.back() + std::log(odds * real(first - one) * real(drawn - one) /
                                          (real(one + 1) * real(second - drawn + one + 1))));
  const double heaviest = *std::max_element(logs.begin(), logs.end());
  double all = 0;
  double those = 0;
  for (std::size_t i = logs.size(); i-- > 0;) {
    all += std::exp(logs[i] - heaviest);
    if (least + static_cast<std::int64_t>(i) == count) those = all;
  }
  return those / all;
}

Interval binomial_interval(std::int64_t count, std::int64_t trials, double confidence) {
  const double tail = (1 - confidence) / 2;
  if (trials == 0) return {0, 1};
  return {
      count == 0 ? 0 : boost::math::ibeta_inv(real(count), real(trials - count + 1), tail, Plain()),
      count == trials
          ? 1
          : boost::math::ibeta_inv(real(count + 1), real(trials - count), 1 - tail, Plain())};
}

double poisson_at_least(std::int64_t count, double mean) {
  if (count <= 0) return 1;
  return mean <= 0 ? 0 : boost::math::gamma_p(real(count), mean, Plain());
}

double poisson_at_most(std::int64_t count, double mean) {
  return mean <= 0 ? 1 : boost::math::gamma_q(real(count + 1), mean, Plain());
}

Interval poisson_interval(std::int64_t count, double confidence) {
  const double tail = (1 - confidence) / 2;
  return {count == 0 ? 0 : boost::math::gamma_p_inv(real(count), tail, Plain()),
          boost::math::gamma_p_inv(real(count + 1), 1 - tail, Plain())};
}

RateRatio rate_ratio(std::int64_t count_a, double exposure_a, std::int64_t count_b,
                     double exposure_b, double confidence) {
  RateRatio out;
  const std::int64_t both = count_a + count_b;
  const double share = exposure_a / (exposure_a + exposure_b);
  out.chance = binomial_two_sided(count_a, both, share);
  const Interval shares = binomial_interval(count_a, both, confidence);
  const auto ratio_of = [&](double part) { return part / (1 - part) * exposure_b / exposure_a; };
  out.interval.low = ratio_of(shares.low);
  out.unbounded = count_b == 0;
  if (!out.unbounded) {
    out.ratio = real(count_a) / exposure_a / (real(count_b) / exposure_b);
    out.interval.high = ratio_of(shares.high);
  }
  return out;
}

std::vector<double> holm(const std::vector<double>& chances) {
  std::vector<std::size_t> order(chances.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return chances[a] < chances[b]; });
  std::vector<double> out(chances.size());
  double largest = 0;
  for (std::size_t rank = 0; rank < order.size(); ++rank) {
    const double scaled = chances[order[rank]] * static_cast<double>(order.size() - rank);
    largest = std::max(largest, std::min(1.0, scaled));
    out[order[rank]] = largest;
  }
  return out;
}

}  // namespace jambline::trade
