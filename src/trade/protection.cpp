#include "trade/protection.h"

#include <numeric>

#include "trade/refusal.h"

namespace jambline::trade {

namespace {
constexpr double pass_half = 100;
constexpr double pass_full = 500;
constexpr double rounding = 1e-12;  // the mean of equal factors is that factor
constexpr double year_days = 365;

const char* source_of_factor(const MaximumUse& in) {
  if (in.factor_scheme == FactorScheme::Uk) return "UK scheme, entered by the shop";
  for (const double listed : {5, 10, 25, 50, 1000, 10000})
    if (in.assigned_factor == listed) return "29 CFR 1910.134 table 1, 2006";
  return "entered by the shop; not a factor of 29 CFR 1910.134 table 1, 2006";
}
}  // namespace

Result<MaximumUseResult> maximum_use(const MaximumUse& in) {
  JAMBLINE_TRY(need("assigned_factor", in.assigned_factor, 1, 10000, "1 to 10,000"));
  JAMBLINE_TRY(need("limit", in.limit, 1e-12, 1e9, "over 0"));
  if (in.dangerous) JAMBLINE_TRY(need("dangerous", *in.dangerous, 1e-12, 1e9, "over 0"));
  if (in.device_most) JAMBLINE_TRY(need("device_most", *in.device_most, 1e-12, 1e9, "over 0"));
  JAMBLINE_TRY(need("year", in.year, 1900, 2200, "the limit's year"));
  if (in.authority.empty()) return fail(refusal(Code::Missing, "authority", "whose limit it is"));
  if (in.factor_scheme != in.limit_scheme)
    return fail(refusal(Code::Malformed, "factor_scheme",
                        "a factor of one country's scheme does not go with another's limit"));
  MaximumUseResult out;
  out.most = in.assigned_factor * in.limit;
  out.bound_by = "factor x limit";
  if (in.dangerous && *in.dangerous < out.most) {
    out.most = *in.dangerous;
    out.bound_by = "immediately dangerous";
  }
  if (in.device_most && *in.device_most < out.most) {
    out.most = *in.device_most;
    out.bound_by = "device";
  }
  out.basis.method =
      "Assigned protection factor x limit, not over what is dangerous at once or the device's "
      "most.";
  out.basis.term("assigned protection factor", in.assigned_factor, "", source_of_factor(in));
  out.basis.term("limit", in.limit, in.unit, in.authority + " " + std::to_string(in.year));
  out.basis.term("factor x limit", in.assigned_factor * in.limit, in.unit,
                 "29 CFR 1910.134(b), 2006");
  if (in.dangerous) out.basis.term("immediately dangerous", *in.dangerous, in.unit, entered);
  if (in.device_most) out.basis.term("device's most", *in.device_most, in.unit, entered);
  out.basis.term("most", out.most, in.unit, computed);
  return out;
}

Result<FitTestResult> fit_test(const FitTest& in) {
  if (in.exercise_factors.empty())
    return fail(refusal(Code::Missing, "exercise_factors", "no exercise"));
  if (in.exercise_factors.size() > 100)
    return fail(refusal(Code::TooLarge, "exercise_factors", "100 at most"));
  double inverses = 0;
  for (std::size_t i = 0; i < in.exercise_factors.size(); ++i) {
    const std::string field = "exercise_factors[" + std::to_string(i) + ']';
    JAMBLINE_TRY(need(field, in.exercise_factors[i], 1, 1e7, "1 or more"));
    inverses += 1 / in.exercise_factors[i];
  }
  JAMBLINE_TRY(need("age_days", in.age_days, 0, 36500, "not negative"));
  JAMBLINE_TRY(need("valid_days", in.valid_days, 1, 36500, "a day at least"));
  FitTestResult out;
  const double count = static_cast<double>(in.exercise_factors.size());
  out.overall_factor = count / inverses;
  out.pass_mark = in.facepiece == Facepiece::Half ? pass_half : pass_full;
  out.passes = out.overall_factor >= out.pass_mark * (1 - rounding);
  out.due_in_days = in.valid_days - in.age_days;
  out.in_date = out.due_in_days >= 0;
  out.basis.method = "Harmonic mean of the exercises without the grimace, against the pass mark.";
  out.basis.term("exercises", count, "", measured);
  out.basis.term("overall fit factor", out.overall_factor, "",
                 "29 CFR 1910.134 appendix A, part I.C, 1998");
  out.basis.term("pass mark", out.pass_mark, "", "29 CFR 1910.134(f)(7), 1998");
  out.basis.term("age", in.age_days, "d", measured);
  out.basis.term("valid for", in.valid_days, "d",
                 in.valid_days == year_days ? "29 CFR 1910.134(f)(2), 1998" : entered);
  return out;
}

Result<CartridgeResult> cartridge_left(const Cartridge& in) {
  JAMBLINE_TRY(need("schedule_h", in.schedule_h, 0.1, 10000, "0.1 to 10,000 h"));
  if (in.schedule_basis.empty())
    return fail(refusal(Code::Missing, "schedule_basis",
                        "a change schedule rests on data: 29 CFR 1910.134(d)(3)(iii)(B)(2)"));
  if (in.used_h.size() > 10000)
    return fail(refusal(Code::TooLarge, "used_h", "10,000 uses at most"));
  for (std::size_t i = 0; i < in.used_h.size(); ++i)
    JAMBLINE_TRY(need("used_h[" + std::to_string(i) + ']', in.used_h[i], 0, 24, "0 to 24 h a use"));
  CartridgeResult out;
  const double used = std::accumulate(in.used_h.begin(), in.used_h.end(), 0.0);
  out.left_h = in.schedule_h - used;
  out.change = out.left_h <= 0;
  out.basis.method = "The shop's schedule less the counted hours.";
  out.basis.term("schedule", in.schedule_h, "h", in.schedule_basis);
  out.basis.term("used", used, "h", measured);
  out.basis.term("left", out.left_h, "h", computed);
  return out;
}

}  // namespace jambline::trade
