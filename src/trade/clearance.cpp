#include "trade/clearance.h"

#include <algorithm>
#include <cmath>

#include "trade/refusal.h"

namespace jambline::trade {

namespace {
Status checked(const Clearance& in) {
  if (in.smoke_test) {
    JAMBLINE_TRY(
        need("smoke_test.clear_min", in.smoke_test->clear_min, 0.1, 600, "0.1 to 600 min"));
    JAMBLINE_TRY(need("smoke_test.age_days", in.smoke_test->age_days, 0, 36500, "not negative"));
    JAMBLINE_TRY(
        need("smoke_test.valid_days", in.smoke_test->valid_days, 1, 36500, "a day at least"));
  }
  if (in.volume_m3) JAMBLINE_TRY(need("volume_m3", *in.volume_m3, 1, 1e5, "1 to 100,000 m3"));
  if (in.exhaust_m3_h)
    JAMBLINE_TRY(
        need("exhaust_m3_h", *in.exhaust_m3_h, 1, 1e7, "over 0: without exhaust nothing clears"));
  if (in.fixed_min) JAMBLINE_TRY(need("fixed_min", *in.fixed_min, 1, 1440, "1 to 1440 min"));
  JAMBLINE_TRY(need("mixing_factor", in.mixing_factor, 1, 10, "1 to 10"));
  JAMBLINE_TRY(need("removed_percent", in.removed_percent, 50, 99.9999, "50 to 99.9999 %"));
  return need("extra_factor", in.extra_factor, 1, 10, "1 to 10: it may only add time");
}

std::optional<double> formula_min(const Clearance& in, Basis& basis) {
  if (in.place != SprayPlace::Booth || !in.volume_m3 || !in.exhaust_m3_h) return std::nullopt;
  const double changes = *in.exhaust_m3_h / *in.volume_m3;
  const double minutes = purge_min(changes, in.removed_percent) * in.mixing_factor;
  basis.term("volume", *in.volume_m3, "m3", entered);
  basis.term("exhaust on fresh air", *in.exhaust_m3_h, "m3/h",
             in.exhaust_measured ? measured : "rated by the maker");
  basis.term("air changes", changes, "1/h", computed);
  basis.term("removed", in.removed_percent, "%", "CDC 2003, appendix B, table B.1");
  basis.term("mixing factor", in.mixing_factor, "",
             usual(in.mixing_factor, Clearance{}.mixing_factor));
  basis.term("formula", minutes, "min", computed);
  return minutes;
}
}  // namespace

double purge_min(double air_changes_1_h, double removed_percent) {
  return -std::log(1 - removed_percent / 100) / air_changes_1_h * 60;
}

Result<ClearanceResult> clearance_time(const Clearance& in) {
  JAMBLINE_TRY(checked(in));
  ClearanceResult out;
  const auto formula = formula_min(in, out.basis);
  if (in.smoke_test) {
    out.basis.term("smoke test", in.smoke_test->clear_min, "min", measured);
    out.basis.term("age of the test", in.smoke_test->age_days, "d", measured);
    out.basis.term("test valid for", in.smoke_test->valid_days, "d", entered);
  }
  const bool in_date = in.smoke_test && in.smoke_test->age_days <= in.smoke_test->valid_days;
  if (in_date) {
    out.rule = ClearanceRule::SmokeTest;
    out.minutes = in.smoke_test->clear_min;
    out.basis.method = "The measured smoke test governs.";
  } else if (in.smoke_test && formula) {
    out.rule = ClearanceRule::LongerOfBoth;
    out.minutes = std::max(in.smoke_test->clear_min, *formula);
    out.basis.method = "The smoke test is overdue: the longer of the old test and the formula.";
  } else if (formula) {
    out.rule = ClearanceRule::Formula;
    out.minutes = *formula;
    out.basis.method = "No smoke test: the purge formula with its mixing factor, a weaker basis.";
  } else if (in.fixed_min) {
    out.rule = ClearanceRule::FixedTime;
    out.minutes = std::max(*in.fixed_min, in.smoke_test ? in.smoke_test->clear_min : 0);
    out.basis.method = "The shop's fixed time, not shorter than an old test.";
    out.basis.term("fixed time", *in.fixed_min, "min", entered);
  } else {
    return fail(refusal(Code::Missing, in.place == SprayPlace::Booth ? "smoke_test" : "fixed_min",
                        "no measured test, no fixed time and nothing to compute from"));
  }
  out.weaker = !in_date;
  out.minutes *= in.extra_factor;
  if (in.extra_factor > 1) out.basis.term("the shop's extra factor", in.extra_factor, "", entered);
  out.basis.term("time to wait", out.minutes, "min", computed);
  return out;
}

Result<ClearanceCountResult> clearance_count(const ClearanceCount& in) {
  JAMBLINE_TRY(need("gun_down_s", in.gun_down_s, -1e12, 1e12, "a time"));
  JAMBLINE_TRY(need("now_s", in.now_s, in.gun_down_s, 1e12, "not before gun down"));
  JAMBLINE_TRY(need("needed_min", in.needed_min, 0.1, 1e5, "over 0"));
  if (in.changes.size() > 10000) return fail(refusal(Code::TooLarge, "changes", "10,000 at most"));
  for (std::size_t i = 0; i < in.changes.size(); ++i) {
    const std::string field = item("changes", i, "at_s");
    JAMBLINE_TRY(need(field, in.changes[i].at_s, -1e12, 1e12, "a time"));
    if (i > 0 && in.changes[i].at_s <= in.changes[i - 1].at_s)
      return fail(refusal(Code::Malformed, field, "not after the one before"));
  }

  ClearanceCountResult out;
  const double needed_s = in.needed_min * 60;
  bool fresh = false;
  double since_s = in.gun_down_s;
  for (const ExhaustChange& change : in.changes) {
    if (change.at_s > in.now_s) break;
    if (fresh && std::max(since_s, in.gun_down_s) + needed_s <= change.at_s) out.over = true;
    const bool now_fresh = change.event == ExhaustEvent::FreshAirDoorsShut;
    if (change.at_s > in.gun_down_s && fresh && !now_fresh && !out.over) ++out.restarts;
    if (now_fresh && !fresh) since_s = change.at_s;
    fresh = now_fresh;
  }
  const double from_s = std::max(since_s, in.gun_down_s);
  if (fresh && from_s + needed_s <= in.now_s) out.over = true;
  out.counting = fresh && !out.over;
  out.left_s = out.over ? 0 : fresh ? from_s + needed_s - in.now_s : needed_s;
  out.basis.method =
      "Counted in one piece on fresh air with doors shut; anything else starts it anew.";
  out.basis.term("gun down", in.gun_down_s, "s", measured);
  out.basis.term("time to wait", in.needed_min, "min", entered);
  out.basis.term("now", in.now_s, "s", measured);
  out.basis.term("counted from", from_s, "s", measured);
  out.basis.term("starts anew", out.restarts, "", measured);
  return out;
}

}  // namespace jambline::trade
