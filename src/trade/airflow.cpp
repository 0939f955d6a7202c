#include "trade/airflow.h"

#include <cmath>
#include <numeric>

#include "trade/probability.h"
#include "trade/refusal.h"

namespace jambline::trade {

namespace {
constexpr std::size_t most_readings = 10000;
}

Result<AirflowResult> compare_airflow(const Airflow& in) {
  if (in.velocities_m_s.empty())
    return fail(refusal(Code::Missing, "velocities_m_s", "no reading"));
  if (in.velocities_m_s.size() > most_readings)
    return fail(refusal(Code::TooLarge, "velocities_m_s", "10,000 readings at most"));
  for (std::size_t i = 0; i < in.velocities_m_s.size(); ++i) {
    const std::string field = "velocities_m_s[" + std::to_string(i) + ']';
    JAMBLINE_TRY(need(field, in.velocities_m_s[i], 0, 20, "0 to 20 m/s"));
  }
  JAMBLINE_TRY(need("wanted_m_s", in.wanted_m_s, 0.01, 10, "0.01 to 10 m/s"));
  JAMBLINE_TRY(need("instrument_percent", in.instrument_percent, 0, 50, "0 to 50 %"));
  if (in.area_m2) JAMBLINE_TRY(need("area_m2", *in.area_m2, 0.1, 1000, "0.1 to 1000 m2"));

  AirflowResult out;
  const double count = static_cast<double>(in.velocities_m_s.size());
  out.mean_m_s = std::accumulate(in.velocities_m_s.begin(), in.velocities_m_s.end(), 0.0) / count;
  double squares = 0;
  for (const double one : in.velocities_m_s) squares += (one - out.mean_m_s) * (one - out.mean_m_s);
  const double of_mean = count > 1 ? std::sqrt(squares / (count - 1) / count) : 0;
  const double of_instrument = out.mean_m_s * in.instrument_percent / 100 / 2;
  const double expanded = 2 * std::hypot(of_mean, of_instrument);
  out.low_m_s = out.mean_m_s - expanded;
  out.high_m_s = out.mean_m_s + expanded;
  out.word = out.low_m_s > in.wanted_m_s    ? AirflowWord::Over
             : out.high_m_s < in.wanted_m_s ? AirflowWord::Under
                                            : AirflowWord::TooNearToCall;
  if (in.area_m2) out.flow_m3_h = out.mean_m_s * *in.area_m2 * 3600;

  out.basis.method = "Mean of the readings against the wanted velocity, with k = 2 uncertainty.";
  out.basis.term("readings", count, "", measured);
  out.basis.term("mean", out.mean_m_s, "m/s", computed);
  out.basis.term("wanted", in.wanted_m_s, "m/s", in.wanted_from.empty() ? entered : in.wanted_from);
  out.basis.term("instrument", in.instrument_percent, "% of reading", entered);
  out.basis.term("standard uncertainty of the mean", of_mean, "m/s", computed);
  out.basis.term("standard uncertainty of the instrument", of_instrument, "m/s", computed);
  out.basis.term("expanded uncertainty", expanded, "m/s", "JCGM 100:2008, k = 2");
  if (in.area_m2) out.basis.term("cross-section", *in.area_m2, "m2", measured);
  if (out.flow_m3_h) out.basis.term("flow", *out.flow_m3_h, "m3/h", computed);
  return out;
}

Result<FilterTrendResult> filter_due(const FilterTrend& in) {
  const std::size_t n = in.readings.size();
  if (n < 3)
    return fail(refusal(Code::Missing, "readings", "a trend wants three readings at least"));
  if (n > most_readings)
    return fail(refusal(Code::TooLarge, "readings", "10,000 readings at most"));
  JAMBLINE_TRY(need("limit_pa", in.limit_pa, 1, 5000, "1 to 5000 Pa"));
  for (std::size_t i = 0; i < n; ++i) {
    JAMBLINE_TRY(need(item("readings", i, "pressure_pa"), in.readings[i].pressure_pa, 0, 5000,
                      "0 to 5000 Pa"));
    JAMBLINE_TRY(need(item("readings", i, "day"), in.readings[i].day, -1e6, 1e6, "a day"));
    if (i > 0 && in.readings[i].day <= in.readings[i - 1].day)
      return fail(refusal(Code::Malformed, item("readings", i, "day"), "not after the one before"));
  }
  double mean_day = 0, mean_pa = 0;
  for (const auto& one : in.readings) {
    mean_day += one.day / static_cast<double>(n);
    mean_pa += one.pressure_pa / static_cast<double>(n);
  }
  double across = 0, along = 0;
  for (const auto& one : in.readings) {
    across += (one.day - mean_day) * (one.day - mean_day);
    along += (one.day - mean_day) * (one.pressure_pa - mean_pa);
  }
  FilterTrendResult out;
  out.rise_pa_d = along / across;
  double squares = 0;
  for (const auto& one : in.readings) {
    const double off = one.pressure_pa - mean_pa - out.rise_pa_d * (one.day - mean_day);
    squares += off * off;
  }
  const double freedom = static_cast<double>(n - 2);
  const double scatter = std::sqrt(squares / freedom);
  const double t = student_quantile(0.975, freedom);
  out.basis.method = "Straight line by least squares; the day by inverting it (Fieller, 95 %).";
  out.basis.term("readings", static_cast<double>(n), "", measured);
  out.basis.term("rise", out.rise_pa_d, "Pa/d", computed);
  out.basis.term("scatter about the line", scatter, "Pa", computed);
  out.basis.term("mean day", mean_day, "d", computed);
  out.basis.term("mean pressure", mean_pa, "Pa", computed);
  out.basis.term("Student's t, 95 %", t, "", computed);
  out.basis.term("limit", in.limit_pa, "Pa", entered);
  if (out.rise_pa_d <= 0) return out;
  // Fieller's limits of the day at which the line meets the limit.
  const double ahead = (in.limit_pa - mean_pa) / out.rise_pa_d;
  out.due_day = mean_day + ahead;
  const double g = t * t * scatter * scatter / (out.rise_pa_d * out.rise_pa_d * across);
  if (g >= 1) return out;
  const double half = t * scatter / out.rise_pa_d *
                      std::sqrt((1 - g) / static_cast<double>(n) + ahead * ahead / across);
  out.due_early_day = mean_day + (ahead - half) / (1 - g);
  out.due_late_day = mean_day + (ahead + half) / (1 - g);
  return out;
}

Result<DilutionResult> dilution_air(const Dilution& in) {
  JAMBLINE_TRY(need("vapor_ft3_gal", in.vapor_ft3_gal, 1, 200, "1 to 200 ft3/gal"));
  JAMBLINE_TRY(need("lel_percent", in.lel_percent, 0.1, 50, "0.1 to 50 %"));
  JAMBLINE_TRY(need("share_of_lel", in.share_of_lel, 0.01, 1, "0.01 to 1"));
  DilutionResult out;
  out.air_ft3_gal = (100 - in.lel_percent) * in.vapor_ft3_gal / in.lel_percent / in.share_of_lel;
  out.basis.method = "Air to thin the vapor of one gallon to a share of its lower explosive limit.";
  out.basis.term("vapor of a gallon", in.vapor_ft3_gal, "ft3/gal", entered);
  out.basis.term("lower explosive limit", in.lel_percent, "%", entered);
  out.basis.term(
      "share of it", in.share_of_lel, "",
      in.share_of_lel == Dilution{}.share_of_lel ? "29 CFR 1910.94(c)(6)(ii), 1971" : entered);
  out.basis.term("air", out.air_ft3_gal, "ft3/gal", computed);
  return out;
}

}  // namespace jambline::trade
