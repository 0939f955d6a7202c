// trade/probability.h: exact tests and intervals for counts, and the normal distribution.
//
// Source:  Clopper and Pearson 1934 for shares; Garwood 1936 for counts; the conditional binomial
//          test for two rates (as R's binom.test and poisson.test); Fisher's exact test with an
//          odds ratio (as R's fisher.test); Holm 1979. Boost.Math computes.
// Asks:    counts of at least 0, trials of at least the count, exposures over 0, shares in [0, 1],
//          confidence in (0, 1). The callers check.
// Threads: pure functions.
#pragma once

#include <cstdint>
#include <vector>

#include "base/describe.h"

namespace jambline::trade {

struct Interval {
  double low{};
  double high{};

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "low"}, self.low);
    visit(Field{.name = "high"}, self.high);
  }
  friend bool operator==(const Interval&, const Interval&) = default;
};

double normal_below(double z);          // chance of a standard normal value under z
double normal_quantile(double chance);  // in (0, 1)
double normal_below(double value, double mean, double sd);  // sd 0: a step at the mean

double student_quantile(double chance, double freedom);  // freedom over 0

double binomial_at_least(std::int64_t count, std::int64_t trials, double share);
double binomial_at_most(std::int64_t count, std::int64_t trials, double share);
// The chance of all outcomes that are no likelier than this one.
double binomial_two_sided(std::int64_t count, std::int64_t trials, double share);
// The same for the sum of several, each with trials and a share of its own.
struct BinomialPart {
  std::int64_t trials{};
  double share{};
};
double binomials_at_least(std::int64_t count, const std::vector<BinomialPart>& parts);
Interval binomial_interval(std::int64_t count, std::int64_t trials, double confidence);

// Fisher's noncentral hypergeometric: `drawn` of `first` + `second`, at least `count` of the first
// kind, where one of the first kind is `odds` times as readily drawn (odds over 0).
double drawn_at_least(std::int64_t count, std::int64_t drawn, std::int64_t first,
                      std::int64_t second, double odds);

double poisson_at_least(std::int64_t count, double mean);
double poisson_at_most(std::int64_t count, double mean);
// Of the mean behind a count; high is infinite only for a confidence of 1.
Interval poisson_interval(std::int64_t count, double confidence);

struct RateRatio {
  double ratio{};     // of a to b; 0 when a has no count
  Interval interval;  // high is 0 when b has no count: see `unbounded`
  bool unbounded = false;
  double chance{};  // two-sided p of equal rates
};
RateRatio rate_ratio(std::int64_t count_a, double exposure_a, std::int64_t count_b,
                     double exposure_b, double confidence);

// The same order as given; each at most 1 and never smaller than a more extreme one's.
std::vector<double> holm(const std::vector<double>& chances);

}  // namespace jambline::trade
