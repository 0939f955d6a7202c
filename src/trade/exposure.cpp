#include "trade/exposure.h"

#include <algorithm>
#include <map>

#include "trade/refusal.h"

namespace jambline::trade {

namespace {
constexpr double shift_h = 8;
constexpr double short_h = 0.25;
constexpr std::size_t most_samples = 1000;
constexpr std::size_t most_limits = 200;

Status checked(const Exposure& in) {
  if (in.samples.empty()) return fail(refusal(Code::Missing, "samples", "no sample"));
  if (in.limits.empty()) return fail(refusal(Code::Missing, "limits", "no limit to compare with"));
  if (in.samples.size() > most_samples)
    return fail(refusal(Code::TooLarge, "samples", "1,000 at most"));
  if (in.limits.size() > most_limits) return fail(refusal(Code::TooLarge, "limits", "200 at most"));
  for (std::size_t i = 0; i < in.samples.size(); ++i) {
    const auto& one = in.samples[i];
    JAMBLINE_TRY(need(item("samples", i, "value"), one.value, 0, 1e9, "not negative"));
    JAMBLINE_TRY(need(item("samples", i, "from_h"), one.from_h, 0, 24, "0 to 24 h"));
    JAMBLINE_TRY(need(item("samples", i, "to_h"), one.to_h, one.from_h + 1e-9, 24,
                      "after from_h, 24 h at most"));
    for (std::size_t j = 0; j < i; ++j)
      if (in.samples[j].substance == one.substance && in.samples[j].from_h < one.to_h &&
          one.from_h < in.samples[j].to_h)
        return fail(refusal(Code::Malformed, item("samples", i, "from_h"),
                            "overlaps another sample of " + one.substance));
  }
  for (std::size_t i = 0; i < in.limits.size(); ++i) {
    const auto& one = in.limits[i];
    JAMBLINE_TRY(need(item("limits", i, "value"), one.value, 1e-12, 1e9, "over 0"));
    if (one.authority.empty())
      return fail(refusal(Code::Missing, item("limits", i, "authority"), "whose limit it is"));
    if (one.unit.empty())
      return fail(refusal(Code::Missing, item("limits", i, "unit"), "ppm or mg/m3"));
    JAMBLINE_TRY(need(item("limits", i, "year"), one.year, 1900, 2200, "the limit's year"));
    for (std::size_t j = 0; j < i; ++j) {
      const auto& other = in.limits[j];
      if (other.substance != one.substance) continue;
      if (other.unit != one.unit)
        return fail(refusal(Code::Malformed, item("limits", i, "unit"),
                            "another unit than the other limit of " + one.substance));
      if (other.kind == one.kind && other.authority == one.authority)
        return fail(refusal(Code::Malformed, item("limits", i, "kind"),
                            "twice from " + one.authority + " for " + one.substance));
    }
  }
  return {};
}

double hours_of(const ExposureSample& sample, double from_h, double to_h) {
  return std::max(0.0, std::min(sample.to_h, to_h) - std::max(sample.from_h, from_h));
}

// The worst 15 minutes begin where a sample begins, or end where one ends.
double worst_quarter(const std::vector<ExposureSample>& samples, const std::string& substance) {
  double worst = 0;
  for (const auto& edge : samples)
    for (const double from_h : {edge.from_h, edge.to_h - short_h}) {
      double sum = 0;
      for (const auto& one : samples)
        if (one.substance == substance) sum += one.value * hours_of(one, from_h, from_h + short_h);
      worst = std::max(worst, sum / short_h);
    }
  return worst;
}
}  // namespace

double molar_volume_l(double air_c, double pressure_kpa) {
  return 8.314462618 * (air_c - absolute_zero_c) / pressure_kpa;
}

double mg_m3_of_ppm(double ppm, double molar_mass_g, double volume_l) {
  return ppm * molar_mass_g / volume_l;
}

Result<ExposureResult> compare_exposure(const Exposure& in) {
  JAMBLINE_TRY(checked(in));
  ExposureResult out;
  struct Mixture {
    double sum = 0;
    int substances = 0;
  };
  std::map<std::string, Mixture> mixtures;  // by authority
  out.basis.method =
      "8 h: sum of value x hours over 8; 15 min: worst window; ceiling: highest sample. What was "
      "not sampled counts as nothing.";
  for (const auto& limit : in.limits) {
    double value = 0;
    double sampled_h = 0;
    for (const auto& one : in.samples) {
      if (one.substance != limit.substance) continue;
      sampled_h += one.to_h - one.from_h;
      if (limit.kind == LimitKind::EightHours)
        value += one.value * (one.to_h - one.from_h) / shift_h;
      if (limit.kind == LimitKind::Ceiling) value = std::max(value, one.value);
    }
    if (sampled_h <= 0)
      return fail(refusal(Code::Missing, "samples", "no sample of " + limit.substance));
    if (limit.kind == LimitKind::FifteenMinutes) value = worst_quarter(in.samples, limit.substance);
    out.against.push_back({limit.substance, limit.kind, value, limit.value, limit.unit,
                           limit.authority, limit.year, value > limit.value});
    if (limit.kind == LimitKind::EightHours) {
      mixtures[limit.authority].sum += value / limit.value;
      ++mixtures[limit.authority].substances;
    }
    const std::string source = limit.authority + " " + std::to_string(limit.year);
    out.basis.term(limit.substance + ", " + std::string(word_of(limit.kind)), value, limit.unit,
                   computed);
    out.basis.term(limit.substance + ", hours sampled", sampled_h, "h", measured);
    out.basis.term(limit.substance + ", limit", limit.value, limit.unit, source);
  }
  for (const auto& [authority, one] : mixtures) {
    if (one.substances < 2) continue;
    out.mixture = std::max(out.mixture.value_or(0), one.sum);
    out.basis.term("mixture by the limits of " + authority, one.sum, "",
                   "29 CFR 1910.1000(d)(2)(i), 1971");
  }
  return out;
}

}  // namespace jambline::trade
