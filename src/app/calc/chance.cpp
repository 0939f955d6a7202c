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

Count chance_example() {
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

struct SharePart {
  std::int64_t trials{};
  double share{};

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "trials", .min = 0, .max = 500}, self.trials);
    visit(Field{.name = "share", .min = 1e-12, .max = 1}, self.share);
  }
};

struct ShareSum {
  std::int64_t count{};
  std::vector<SharePart> parts;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "count", .min = 0, .max = 1e6}, self.count);
    visit(Field{.name = "parts"}, self.parts);
  }
};

Result<Number> share_sum(const ShareSum& in) {
  if (in.parts.empty()) return fail(trade::refusal(Code::Missing, "parts", "none"));
  if (in.parts.size() > 40) return fail(trade::refusal(Code::TooLarge, "parts", "40 at most"));
  std::vector<trade::BinomialPart> parts;
  for (const SharePart& one : in.parts) parts.push_back({one.trials, one.share});
  Number out{trade::binomials_at_least(in.count, parts), {}};
  out.basis.method = "Chance of at least so many in all parts together: their binomials, added.";
  out.basis.term("count", real(in.count), "", trade::measured);
  for (const SharePart& one : in.parts) {
    out.basis.term("trials of a part", real(one.trials), "", trade::measured);
    out.basis.term("share of a part", one.share, "", trade::entered);
  }
  return out;
}

ShareSum share_sum_example() {
  return {9, {{11, 0.3}, {6, 0.45}}};
}

struct TwoKinds {
  std::int64_t count{};
  std::int64_t drawn{};
  std::int64_t first{};
  std::int64_t second{};
  double odds{};

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "count", .doc = "of the first kind among the drawn", .min = 0, .max = 1e6},
          self.count);
    visit(Field{.name = "drawn", .min = 0, .max = 1e6}, self.drawn);
    visit(Field{.name = "first", .doc = "all of the first kind", .min = 0, .max = 1e6}, self.first);
    visit(Field{.name = "second", .doc = "all of the second kind", .min = 0, .max = 1e6},
          self.second);
    visit(Field{.name = "odds",
                .doc = "one of the first kind is so many times as readily drawn",
                .min = 1e-6,
                .max = 1e6},
          self.odds);
  }
};

Result<Number> two_kinds(const TwoKinds& in) {
  if (in.drawn > in.first + in.second)
    return fail(trade::refusal(Code::OutOfRange, "drawn", "more than there are of both kinds"));
  if (in.count > in.drawn)
    return fail(trade::refusal(Code::OutOfRange, "count", "more than were drawn"));
  Number out{trade::drawn_at_least(in.count, in.drawn, in.first, in.second, in.odds), {}};
  out.basis.method = "Chance of at least so many of the first kind: Fisher's exact test with odds.";
  out.basis.term("count", real(in.count), "", trade::measured);
  out.basis.term("drawn", real(in.drawn), "", trade::measured);
  out.basis.term("first kind", real(in.first), "", trade::measured);
  out.basis.term("second kind", real(in.second), "", trade::measured);
  out.basis.term("odds", in.odds, "", trade::computed);
  return out;
}

// A car with 11 marks on flat panels of 14; the shop's history has 412 and 190.
TwoKinds two_kinds_example() {
  return {11, 14, 423, 193, 0.9};
}

struct Below {
  double value{};
  double mean{};
  double sd{};

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "value", .min = -1e9, .max = 1e9}, self.value);
    visit(Field{.name = "mean", .min = -1e9, .max = 1e9}, self.mean);
    visit(Field{.name = "sd", .doc = "0: a step at the mean", .min = 0, .max = 1e9}, self.sd);
  }
};

Result<Number> below(const Below& in) {
  Number out{trade::normal_below(in.value, in.mean, in.sd), {}};
  out.basis.method = "Chance of a normal value under the given one.";
  out.basis.term("value", in.value, "", trade::entered);
  out.basis.term("mean", in.mean, "", trade::entered);
  out.basis.term("spread (1 sd)", in.sd, "", trade::entered);
  return out;
}

Below below_example() {
  return {40, 46.6, 4.3};
}
}  // namespace

std::vector<Calculation> chance_calculations() {
  return {
      calculation<&rates, &rates_example>("rate-ratio", "two rates: ratio, exact interval, chance"),
      calculation<&share, &share_example>(
          "share", "a share of so many: exact interval and chance against an expected share"),
      calculation<&count, &chance_example>(
          "count", "a count: exact interval of its mean and chance against an expected one"),
      calculation<&share_sum, &share_sum_example>(
          "share-sum", "chance of a count over several parts with a share each"),
      calculation<&two_kinds, &two_kinds_example>(
          "two-kinds", "chance of so many of one kind among the drawn (Fisher, with odds)"),
      calculation<&below, &below_example>("normal", "chance of a normal value under a given one"),
      calculation<&several, &several_example>("several-chances",
                                              "chances of several tests, corrected by Holm"),
  };
}

}  // namespace jambline::app
