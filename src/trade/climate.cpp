#include "trade/climate.h"

#include <cmath>

#include "trade/refusal.h"

namespace jambline::trade {

namespace {
constexpr double magnus_a = 17.62;
constexpr double magnus_b_c = 243.12;
constexpr double vapor_at_zero_hpa = 6.112;

double saturation_hpa(double air_c) {
  return vapor_at_zero_hpa * std::exp(magnus_a * air_c / (magnus_b_c + air_c));
}

Status checked(const Climate& in) {
  const char* range = "from -45 to 60 C";
  JAMBLINE_TRY(need("air_c", in.air_c, -45, 60, range));
  JAMBLINE_TRY(need("surface_c", in.surface_c, -45, 60, range));
  JAMBLINE_TRY(need("humidity_percent", in.humidity_percent, 0.1, 100, "from 0.1 to 100 %"));
  JAMBLINE_TRY(need("dew_margin_min_c", in.dew_margin_min_c, 0, 20, "from 0 to 20 C"));
  JAMBLINE_TRY(need("surface_min_c", in.surface_min_c, -45, 60, range));
  JAMBLINE_TRY(need("surface_from_air_max_c", in.surface_from_air_max_c, 0, 40, "from 0 to 40 C"));
  if (in.air_min_c) JAMBLINE_TRY(need("air_min_c", *in.air_min_c, -45, 60, range));
  if (in.air_max_c) JAMBLINE_TRY(need("air_max_c", *in.air_max_c, -45, 60, range));
  if (in.humidity_min_percent)
    JAMBLINE_TRY(need("humidity_min_percent", *in.humidity_min_percent, 0, 100, "from 0 to 100 %"));
  if (in.humidity_max_percent)
    JAMBLINE_TRY(need("humidity_max_percent", *in.humidity_max_percent, 0, 100, "from 0 to 100 %"));
  if (in.air_min_c && in.air_max_c && *in.air_min_c > *in.air_max_c)
    return fail(refusal(Code::OutOfRange, "air_max_c", "under air_min_c"));
  if (in.humidity_min_percent && in.humidity_max_percent &&
      *in.humidity_min_percent > *in.humidity_max_percent)
    return fail(refusal(Code::OutOfRange, "humidity_max_percent", "under humidity_min_percent"));
  return {};
}
}  // namespace

double dew_point_c(double air_c, double humidity_percent) {
  const double gamma = std::log(humidity_percent / 100) + magnus_a * air_c / (magnus_b_c + air_c);
  return magnus_b_c * gamma / (magnus_a - gamma);
}

// From the vapor's pressure as an ideal gas: R_v = 461.5 J/(kg K).
double vapor_g_m3(double air_c, double humidity_percent) {
  const double pressure_pa = saturation_hpa(air_c) * humidity_percent;
  return pressure_pa / (461.5 * (air_c - absolute_zero_c)) * 1000;
}

Result<ClimateResult> check_climate(const Climate& in) {
  JAMBLINE_TRY(checked(in));
  ClimateResult out;
  out.dew_point_c = dew_point_c(in.air_c, in.humidity_percent);
  out.dew_margin_c = in.surface_c - out.dew_point_c;
  out.vapor_g_m3 = vapor_g_m3(in.air_c, in.humidity_percent);
  const auto check = [&](ClimateGate gate, double value, std::optional<double> low,
                         std::optional<double> high) {
    const bool passes = (!low || value >= *low) && (!high || value <= *high);
    out.checks.push_back({gate, passes, value, low, high});
  };
  check(ClimateGate::DewMargin, out.dew_margin_c, in.dew_margin_min_c, {});
  check(ClimateGate::Surface, in.surface_c, in.surface_min_c, {});
  check(ClimateGate::SurfaceNearAir, std::abs(in.surface_c - in.air_c), {},
        in.surface_from_air_max_c);
  check(ClimateGate::Air, in.air_c, in.air_min_c, in.air_max_c);
  check(ClimateGate::Humidity, in.humidity_percent, in.humidity_min_percent,
        in.humidity_max_percent);
  out.go = true;
  for (const auto& one : out.checks) out.go = out.go && one.passes;

  out.basis.method = "Dew point by the Magnus form; go when every gate is passed.";
  out.basis.term("air", in.air_c, "C", measured);
  out.basis.term("relative humidity", in.humidity_percent, "%", measured);
  out.basis.term("surface", in.surface_c, "C", measured);
  out.basis.term("Magnus a", magnus_a, "", "WMO CIMO guide, annex 4.B, 2008");
  out.basis.term("Magnus b", magnus_b_c, "C", "WMO CIMO guide, annex 4.B, 2008");
  out.basis.term("dew point", out.dew_point_c, "C", computed);
  out.basis.term("margin over dew point", out.dew_margin_c, "C", computed);
  const Climate usually;
  out.basis.term("water in the air", out.vapor_g_m3, "g/m3", computed);
  out.basis.term("least margin", in.dew_margin_min_c, "C",
                 usual(in.dew_margin_min_c, usually.dew_margin_min_c));
  out.basis.term("least surface temperature", in.surface_min_c, "C",
                 usual(in.surface_min_c, usually.surface_min_c));
  out.basis.term("most between surface and air", in.surface_from_air_max_c, "C",
                 usual(in.surface_from_air_max_c, usually.surface_from_air_max_c));
  if (in.air_min_c) out.basis.term("least air temperature", *in.air_min_c, "C", entered);
  if (in.air_max_c) out.basis.term("most air temperature", *in.air_max_c, "C", entered);
  if (in.humidity_min_percent)
    out.basis.term("least humidity", *in.humidity_min_percent, "%", entered);
  if (in.humidity_max_percent)
    out.basis.term("most humidity", *in.humidity_max_percent, "%", entered);
  return out;
}

}  // namespace jambline::trade
