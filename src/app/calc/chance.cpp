#include "app/calc/calculation.h"
#include "trade/probability.h"
#include "trade/refusal.h"

namespace jambline::app {

namespace {
using trade::Basis;
using trade::Interval;

double real(std::int64_t count) {
  return static_cast<double>(count);
}

struct Rates {
  std::int64_t count_a{};
  double exposure_a{};
  std::int64_t count_b{};
  double exposure_b{};
  double confidence = 0.95;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "count_a", .min = 0, .max = 1e9}, self.count_a);
    visit(Field{.name = "exposure_a", .min = 1e-6, .max = 1e9}, self.exposure_a);
    visit(Field{.name = "count_b", .min = 0, .max = 1e9}, self.count_b);
    visit(Field{.name = "exposure_b", .min = 1e-6, .max = 1e9}, self.exposure_b);
    visit(Field{.name = "confidence", .min = 0.5, .max = 0.999}, self.confidence);
  }
};

struct RatesResult {
  std::optional<double> ratio;  // none: nothing was counted on the b side
  double low{};
  std::optional<double> high;  // none: without end
  double chance{};
  Basis basis;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "ratio", .doc = "of rate a to rate b"}, self.ratio);
    visit(Field{.name = "low"}, self.low);
    visit(Field{.name = "high"}, self.high);
    visit(Field{.name = "chance", .doc = "of such a difference when the rates are equal"},
          self.chance);
    visit(Field{.name = "basis"}, self.basis);
  }
};

Result<RatesResult> rates(const Rates& in) {
  if (in.count_a + in.count_b == 0)
    return fail(trade::refusal(Code::Missing, "count_a", "nothing was counted on either side"));
  const trade::RateRatio found =
      trade::rate_ratio(in.count_a, in.exposure_a, in.count_b, in.exposure_b, in.confidence);
  RatesResult out;
  if (!found.unbounded) out.ratio = found.ratio;
  out.low = found.interval.low;
  if (!found.unbounded) out.high = found.interval.high;
  out.chance = found.chance;
  out.basis.method = "Two counts given their sum: exact binomial; interval of Clopper and Pearson.";
  out.basis.term("rate a", real(in.count_a) / in.exposure_a, "", trade::computed);
  out.basis.term("rate b", real(in.count_b) / in.exposure_b, "", trade::computed);
  out.basis.term("share of exposure a", in.exposure_a / (in.exposure_a + in.exposure_b), "",
                 trade::computed);
  out.basis.term("confidence", in.confidence, "", "Clopper and Pearson, 1934");
  return out;
}

Rates rates_example() {
  return {43, 36.5, 109, 36.1, 0.95};
}

struct Share {
  std::int64_t count{};
  std::int64_t trials{};
  double expected_share{};
  double confidence = 0.95;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "count", .min = 0, .max = 1e9}, self.count);
    visit(Field{.name = "trials", .min = 1, .max = 1e9}, self.trials);
    visit(Field{.name = "expected_share", .min = 1e-12, .max = 1}, self.expected_share);
    visit(Field{.name = "confidence", .min = 0.5, .max = 0.999}, self.confidence);
  }
};

struct ShareResult {
  double share{};
  Interval interval;
  double chance_at_least{};
  double chance_at_most{};
  double chance_two_sided{};
  Basis basis;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "share"}, self.share);
    visit(Field{.name = "interval"}, self.interval);
    visit(Field{.name = "chance_at_least"}, self.chance_at_least);
    visit(Field{.name = "chance_at_most"}, self.chance_at_most);
    visit(Field{.name = "chance_two_sided"}, self.chance_two_sided);
    visit(Field{.name = "basis"}, self.basis);
  }
};

Result<ShareResult> share(const Share& in) {
  if (in.count > in.trials)
    return fail(trade::refusal(Code::OutOfRange, "count", "more than there were trials"));
  ShareResult out;
  out.share = real(in.count) / real(in.trials);
  out.interval = trade::binomial_interval(in.count, in.trials, in.confidence);
  out.chance_at_least = trade::binomial_at_least(in.count, in.trials, in.expected_share);
  out.chance_at_most = trade::binomial_at_most(in.count, in.trials, in.expected_share);
  out.chance_two_sided = trade::binomial_two_sided(in.count, in.trials, in.expected_share);
  out.basis.method = "Exact binomial; two-sided: all outcomes that are no likelier than this one.";
  out.basis.term("count", real(in.count), "", trade::measured);
  out.basis.term("trials", real(in.trials), "", trade::measured);
  out.basis.term("expected share", in.expected_share, "", trade::entered);
  out.basis.term("confidence", in.confidence, "", "Clopper and Pearson, 1934");
  return out;
}

Share share_example() {
  return {7, 11, 0.22, 0.95};
}

struct Count {
  std::int64_t count{};
  double expected{};
  double confidence = 0.95;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "count", .min = 0, .max = 1e9}, self.count);
    visit(Field{.name = "expected", .min = 0, .max = 1e9}, self.expected);
    visit(Field{.name = "confidence", .min = 0.5, .max = 0.999}, self.confidence);
  }
};

struct CountResult {
  Interval interval;
  double chance_at_least{};
  double chance_at_most{};
  Basis basis;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "interval", .doc = "of the mean behind the count"}, self.interval);
    visit(Field{.name = "chance_at_least"}, self.chance_at_least);
    visit(Field{.name = "chance_at_most"}, self.chance_at_most);
    visit(Field{.name = "basis"}, self.basis);
  }
};

Result<CountResult> count(const Count& in) {
  CountResult out;
  out.interval = trade::poisson_interval(in.count, in.confidence);
  out.chance_at_least = trade::poisson_at_least(in.count, in.expected);
  out.chance_at_most = trade::poisson_at_most(in.count, in.expected);
  out.basis.method = "Exact Poisson.";
  out.basis.term("count", real(in.count), "", trade::measured);
  out.basis.term("expected", in.expected, "", trade::entered);
  out.basis.term("confidence", in.confidence, "", "Garwood, 1936");
  return out;
}

Count count_example() {
  return {14, 8.2, 0.95};
}

struct Chances {
  std::vector<double> chances;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "chances", .min = 0, .max = 1}, self.chances);
  }
};

struct ChancesResult {
  std::vector<double> corrected;
  Basis basis;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "corrected", .doc = "in the order given"}, self.corrected);
    visit(Field{.name = "basis"}, self.basis);
  }
};

Result<ChancesResult> several(const Chances& in) {
  if (in.chances.empty()) return fail(trade::refusal(Code::Missing, "chances", "none"));
  if (in.chances.size() > 10000)
    return fail(trade::refusal(Code::TooLarge, "chances", "10,000 at most"));
  ChancesResult out{trade::holm(in.chances), {}};
  out.basis.method = "Holm, 1979: the k-th smallest of n times n - k + 1, never falling.";
  out.basis.term("chances", static_cast<double>(in.chances.size()), "", trade::entered);
  return out;
}

Chances several_example() {
  return {{0.004, 0.03, 0.21, 0.012, 0.6}};
}
}  // namespace

std::vector<Calculation> chance_calculations() {
  return {
      calculation<&rates, &rates_example>("rate-ratio", "two rates: ratio, exact interval, chance"),
      calculation<&share, &share_example>(
          "share", "a share of so many: exact interval and chance against an expected share"),
      calculation<&count, &count_example>(
          "count", "a count: exact interval of its mean and chance against an expected one"),
      calculation<&several, &several_example>("several-chances",
                                              "chances of several tests, corrected by Holm"),
  };
}

}  // namespace jambline::app
