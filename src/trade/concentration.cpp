#include "trade/concentration.h"

#include "trade/exposure.h"
#include "trade/refusal.h"

namespace jambline::trade {

Result<ConcentrationResult> convert_concentration(const Concentration& in) {
  JAMBLINE_TRY(need("molar_mass_g", in.molar_mass_g, 1, 1e5, "1 to 100,000 g/mol"));
  JAMBLINE_TRY(need("air_c", in.air_c, -100, 500, "-100 to 500 C"));
  JAMBLINE_TRY(need("pressure_kpa", in.pressure_kpa, 10, 1000, "10 to 1000 kPa"));
  if (in.ppm) JAMBLINE_TRY(need("ppm", *in.ppm, 0, 1e6, "0 to 1,000,000"));
  if (in.mg_m3) JAMBLINE_TRY(need("mg_m3", *in.mg_m3, 0, 1e9, "not negative"));
  if (!in.ppm && !in.mg_m3) return fail(refusal(Code::Missing, "ppm", "neither it nor mg_m3"));
  if (in.ppm && in.mg_m3)
    return fail(refusal(Code::Malformed, "mg_m3", "given together with ppm: one of the two"));
  ConcentrationResult out;
  out.molar_volume_l = molar_volume_l(in.air_c, in.pressure_kpa);
  out.ppm = in.ppm ? *in.ppm : *in.mg_m3 * out.molar_volume_l / in.molar_mass_g;
  out.mg_m3 = in.mg_m3 ? *in.mg_m3 : mg_m3_of_ppm(*in.ppm, in.molar_mass_g, out.molar_volume_l);
  out.basis.method = "mg/m3 = ppm x molar mass / molar volume of an ideal gas.";
  out.basis.term("molar mass", in.molar_mass_g, "g/mol", entered);
  out.basis.term("air", in.air_c, "C", measured);
  out.basis.term("pressure", in.pressure_kpa, "kPa", measured);
  out.basis.term("gas constant", 8.314462618, "J/(mol K)", "CODATA, 2018");
  out.basis.term("molar volume", out.molar_volume_l, "L/mol", computed);
  out.basis.term("ppm", out.ppm, "ppm", in.ppm ? measured : computed);
  out.basis.term("mg/m3", out.mg_m3, "mg/m3", in.mg_m3 ? measured : computed);
  return out;
}

}  // namespace jambline::trade
