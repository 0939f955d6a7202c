#include "trade/film.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "trade/refusal.h"

namespace jambline::trade {

namespace {
constexpr double room_chance = 0.025;
constexpr double light_chance = 0.5;
constexpr std::size_t least_to_learn = 5;
constexpr std::size_t least_to_show = 10;
constexpr double rounding_um = 1e-9;  // a spot on a limit is within it, in mils too
constexpr std::size_t most_film_readings = 10000;

double mean_of(const std::vector<double>& values) {
  return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

Status check_list(const char* field, const std::vector<double>& values, double low, double high,
                  const char* cause) {
  if (values.size() > most_film_readings)
    return fail(refusal(Code::TooLarge, field, "10,000 readings at most"));
  for (std::size_t i = 0; i < values.size(); ++i)
    JAMBLINE_TRY(
        need(std::string(field) + '[' + std::to_string(i) + ']', values[i], low, high, cause));
  return {};
}

Status check_spread(const std::string& field, const Spread_um& spread, double most) {
  JAMBLINE_TRY(
      need(field + ".mean_um", spread.mean_um, 0, most, "not negative, and a film's size"));
  return need(field + ".sd_um", spread.sd_um, 0, 500, "not negative");
}

Status checked(const FilmBudget& in) {
  JAMBLINE_TRY(check_list("clear_um", in.clear_um, 1, 500, "1 to 500 um"));
  JAMBLINE_TRY(check_list("total_after_um", in.total_after_um, 1, 3000, "1 to 3000 um"));
  JAMBLINE_TRY(
      check_list("total_before_base_um", in.total_before_base_um, 0, 3000, "0 to 3000 um"));
  JAMBLINE_TRY(check_spread("base", in.base, 500));
  if (in.sealer) JAMBLINE_TRY(check_spread("sealer", *in.sealer, 500));
  JAMBLINE_TRY(check_spread("build_per_coat", in.build_per_coat, 500));
  JAMBLINE_TRY(check_spread("valleys", in.valleys, 100));
  JAMBLINE_TRY(need("coats", in.coats, 1, 6, "1 to 6"));
  JAMBLINE_TRY(need("gauge_sd_um", in.gauge_sd_um, 0.1, 20, "0.1 to 20 um"));
  JAMBLINE_TRY(need("edge_thinner_percent", in.edge_thinner_percent, 0, 90, "0 to 90 %"));
  JAMBLINE_TRY(need("taken_before_um", in.taken_before_um, 0, 500, "0 to 500 um"));
  JAMBLINE_TRY(need("leave_um", in.leave_um, 1, 500, "1 to 500 um"));
  JAMBLINE_TRY(need("take_at_most_um", in.take_at_most_um, 0.1, 500, "0.1 to 500 um"));
  if (in.steps.size() > 20) return fail(refusal(Code::TooLarge, "steps", "20 at most"));
  for (std::size_t i = 0; i < in.steps.size(); ++i)
    JAMBLINE_TRY(
        check_spread("steps[" + std::to_string(i) + "].removal", in.steps[i].removal, 200));
  if (in.taken_since) JAMBLINE_TRY(check_spread("taken_since", *in.taken_since, 500));
  if (!is_metal(in.substrate) && (!in.total_after_um.empty() || !in.total_before_base_um.empty()))
    return fail(
        refusal(Code::Malformed, "substrate", "such a gauge reads no film on plastic or carbon"));
  if (in.total_after_um.empty() != in.total_before_base_um.empty())
    return fail(refusal(Code::Missing,
                        in.total_after_um.empty() ? "total_after_um" : "total_before_base_um",
                        "one total says nothing without the other"));
  return {};
}

// A variance with the name of what makes it.
struct Part {
  const char* name;
  double variance;
};

constexpr const char* three_a_spot = "SSPC-PA 2, 1996: three in a spot";

// With `other`: usual as well, of another kind of paint.
void spread_terms(Basis& basis, const std::string& name, const Spread_um& spread,
                  const Spread_um& usual_spread, const Spread_um& other) {
  const bool of_other = spread.mean_um == other.mean_um && spread.sd_um == other.sd_um;
  const Spread_um& known = of_other ? other : usual_spread;
  basis.term(name, spread.mean_um, "um", usual(spread.mean_um, known.mean_um));
  basis.term(name + ", spread (1 sd)", spread.sd_um, "um", usual(spread.sd_um, known.sd_um));
}
void spread_terms(Basis& basis, const std::string& name, const Spread_um& spread,
                  const Spread_um& usual_spread) {
  spread_terms(basis, name, spread, usual_spread, usual_spread);
}

struct Clear {
  FilmSource source{};
  double mean_um{};
  std::vector<Part> parts;
};

const FilmBudget usual_film;

Result<Clear> clear_from(const FilmBudget& in, Basis& basis) {
  Clear out;
  const double reading = in.gauge_sd_um * in.gauge_sd_um;
  if (!in.clear_um.empty()) {
    out.source = FilmSource::Ultrasonic;
    out.mean_um = mean_of(in.clear_um);
    out.parts.push_back({"gauge", reading / static_cast<double>(in.clear_um.size())});
    basis.term("clear by ultrasound", out.mean_um, "um", measured);
    basis.term("readings of it", static_cast<double>(in.clear_um.size()), "", three_a_spot);
  } else if (!in.total_after_um.empty()) {
    out.source = FilmSource::TotalLessBase;
    const double after = mean_of(in.total_after_um);
    const double before = mean_of(in.total_before_base_um);
    out.mean_um = after - before - in.base.mean_um - (in.sealer ? in.sealer->mean_um : 0);
    if (out.mean_um <= 0)
      return fail(refusal(Code::Malformed, "total_after_um",
                          "not more than what lies under the clear: the readings do not fit"));
    out.parts.push_back(
        {"gauge", reading / static_cast<double>(in.total_after_um.size()) +
                      reading / static_cast<double>(in.total_before_base_um.size())});
    out.parts.push_back({"base", in.base.sd_um * in.base.sd_um});
    basis.term("total after", after, "um", measured);
    basis.term("readings after", static_cast<double>(in.total_after_um.size()), "", three_a_spot);
    basis.term("total before base", before, "um", measured);
    basis.term("readings before base", static_cast<double>(in.total_before_base_um.size()), "",
               three_a_spot);
    spread_terms(basis, "base", in.base, usual_base, usual_tri_coat_base);
    if (in.sealer) {
      out.parts.push_back({"sealer", in.sealer->sd_um * in.sealer->sd_um});
      spread_terms(basis, "sealer", *in.sealer, {22, 4});
    }
  } else {
    out.source = FilmSource::CoatsTimesBuild;
    out.mean_um = in.coats * in.build_per_coat.mean_um;
    // The coats of one painter and one gun go up and down together.
    out.parts.push_back({"build per coat", std::pow(in.coats * in.build_per_coat.sd_um, 2)});
    const bool new_car = in.build_per_coat.mean_um == usual_factory_clear.mean_um;
    basis.term("coats", in.coats, "",
               new_car ? common_practice : usual(in.coats, usual_film.coats));
    spread_terms(basis, "build per coat", in.build_per_coat, usual_build_per_coat,
                 usual_factory_clear);
  }
  if (out.source != FilmSource::CoatsTimesBuild)
    basis.term("spread of one reading (1 sd)", in.gauge_sd_um, "um",
               usual(in.gauge_sd_um, usual_film.gauge_sd_um));
  const double share = 1 - in.edge_thinner_percent / 100;
  out.mean_um = out.mean_um * share - in.valleys.mean_um;
  for (Part& part : out.parts) part.variance *= share * share;
  out.parts.push_back({"valleys", in.valleys.sd_um * in.valleys.sd_um});
  if (in.taken_since) {
    out.mean_um -= in.taken_since->mean_um;
    out.parts.push_back({"taken since", in.taken_since->sd_um * in.taken_since->sd_um});
    basis.term("taken since it was read", in.taken_since->mean_um, "um", common_practice);
    basis.term("taken since, spread (1 sd)", in.taken_since->sd_um, "um", common_practice);
  }
  if (in.edge_thinner_percent > 0)
    basis.term("thinner near the edge", in.edge_thinner_percent, "%", common_practice);
  spread_terms(basis, "valleys of the surface", in.valleys, usual_film.valleys);
  return out;
}

double variance_of(const std::vector<Part>& parts) {
  double sum = 0;
  for (const Part& part : parts) sum += part.variance;
  return sum;
}

struct Chances {
  double left = 0;   // of ending under the clear to be left
  double taken = 0;  // of having taken more than a panel's life allows
  double worse() const { return std::max(left, taken); }
};

Chances chances(const FilmBudget& in, const Spread_um& left, const Spread_um& taken) {
  return {normal_below(in.leave_um, left.mean_um, left.sd_um),
          1 - normal_below(in.take_at_most_um, taken.mean_um, taken.sd_um)};
}

Spread_um after_taking(double mean, double variance, const Spread_um& removal) {
  return {mean - removal.mean_um, std::sqrt(variance + removal.sd_um * removal.sd_um)};
}
}  // namespace

Result<FilmBudgetResult> film_budget(const FilmBudget& in) {
  JAMBLINE_TRY(checked(in));
  FilmBudgetResult out;
  JAMBLINE_ASSIGN(const Clear clear, clear_from(in, out.basis));
  const double variance = variance_of(clear.parts);
  out.source = clear.source;
  out.clear = {clear.mean_um, std::sqrt(variance)};
  const double wide = normal_quantile(0.95) * out.clear.sd_um;
  out.likely_low_um = clear.mean_um - wide;
  out.likely_high_um = clear.mean_um + wide;

  const Spread_um since = in.taken_since.value_or(Spread_um{});
  const double before_um = in.taken_before_um + since.mean_um;
  const auto in_life = [&](const Spread_um& removal) {
    return Spread_um{before_um + removal.mean_um, std::hypot(since.sd_um, removal.sd_um)};
  };
  Spread_um all{};
  Chances last = chances(in, out.clear, in_life({}));
  double step_variance = 0;
  for (const CutStep& step : in.steps) {
    all.mean_um += step.removal.mean_um;
    step_variance += step.removal.sd_um * step.removal.sd_um;
    all.sd_um = std::sqrt(step_variance);
    const Spread_um left = after_taking(clear.mean_um, variance, all);
    const Spread_um taken = in_life(all);
    last = chances(in, left, taken);
    out.after.push_back({step.name, left, taken, 100 * last.worse()});
    out.basis.term("taken by " + step.name, step.removal.mean_um, "um", common_practice);
    out.basis.term("taken by " + step.name + ", spread (1 sd)", step.removal.sd_um, "um",
                   common_practice);
  }
  out.chance_percent = 100 * last.worse();
  out.bound_by = last.left >= last.taken ? FilmBound::ClearLeft : FilmBound::TakenInLife;

  const auto lightest = std::min_element(
      in.steps.begin(), in.steps.end(),
      [](const auto& a, const auto& b) { return a.removal.mean_um < b.removal.mean_um; });
  double light = last.worse();
  if (lightest != in.steps.end())
    light = chances(in, after_taking(clear.mean_um, variance, lightest->removal),
                    in_life(lightest->removal))
                .worse();
  if (!in.may_be_cut) {
    out.word = FilmWord::DoNotCut;
    out.bound_by = FilmBound::Surface;
  } else if (last.worse() <= room_chance) {
    out.word = FilmWord::Room;
  } else if (light <= room_chance || last.worse() < light_chance) {
    out.word = FilmWord::OneLightPass;
  } else {
    out.word = FilmWord::DoNotCut;
  }

  std::vector<Part> parts = clear.parts;
  parts.push_back({"steps", step_variance});
  out.widest = std::max_element(parts.begin(), parts.end(), [](const Part& a, const Part& b) {
                 return a.variance < b.variance;
               })->name;
  out.basis.method =
      "Clear from the best source given, less what the steps take; the stricter of two limits.";
  out.basis.term("clear", out.clear.mean_um, "um", computed);
  out.basis.term("its spread (1 sd)", out.clear.sd_um, "um", computed);
  out.basis.term("taken before", in.taken_before_um, "um", entered);
  out.basis.term("clear to be left", in.leave_um, "um", usual(in.leave_um, usual_film.leave_um));
  out.basis.term("most in the panel's life", in.take_at_most_um, "um",
                 usual(in.take_at_most_um, usual_film.take_at_most_um));
  out.basis.term("chance of leaving less", 100 * last.left, "%", computed);
  out.basis.term("chance of having taken more", 100 * last.taken, "%", computed);
  out.basis.term("chance of the lightest step alone", 100 * light, "%", computed);
  out.basis.term("room up to a chance of", 100 * room_chance, "%", common_practice);
  out.basis.term("one light pass under a chance of", 100 * light_chance, "%", common_practice);
  return out;
}

Result<RemovalLearningResult> learn_removal(const RemovalLearning& in) {
  JAMBLINE_TRY(need("prior.mean_um", in.prior.mean_um, 0, 200, "0 to 200 um"));
  JAMBLINE_TRY(need("prior.sd_um", in.prior.sd_um, 0.01, 200, "over 0"));
  JAMBLINE_TRY(need("gauge_sd_um", in.gauge_sd_um, 0.1, 20, "0.1 to 20 um"));
  JAMBLINE_TRY(need("readings_a_mean", in.readings_a_mean, 1, 100, "1 to 100"));
  JAMBLINE_TRY(check_list("taken_um", in.taken_um, -20, 200, "-20 to 200 um"));
  RemovalLearningResult out;
  out.learned = in.prior;
  const std::size_t n = in.taken_um.size();
  // Two means, each of so many readings, stand behind one difference.
  const double noise = in.gauge_sd_um * std::sqrt(2.0 / in.readings_a_mean);
  out.basis.method = "Normal prior and normal readings; never surer than the gauge.";
  out.basis.term("prior", in.prior.mean_um, "um", common_practice);
  out.basis.term("prior spread (1 sd)", in.prior.sd_um, "um", common_practice);
  out.basis.term("differences", static_cast<double>(n), "", measured);
  out.basis.term("spread of one reading (1 sd)", in.gauge_sd_um, "um",
                 usual(in.gauge_sd_um, RemovalLearning{}.gauge_sd_um));
  out.basis.term("readings a mean", in.readings_a_mean, "", measured);
  out.basis.term("noise of one difference (1 sd)", noise, "um", computed);
  out.basis.term("learns from", least_to_learn, "differences", common_practice);
  out.basis.term("shown from", least_to_show, "differences", common_practice);
  out.updated = n >= least_to_learn;
  out.shown = n >= least_to_show;
  if (!out.updated) return out;
  const double count = static_cast<double>(n);
  const double mean = mean_of(in.taken_um);
  double squares = 0;
  for (const double one : in.taken_um) squares += (one - mean) * (one - mean);
  const double seen = std::max(noise * noise, squares / (count - 1));
  const double prior_weight = 1 / (in.prior.sd_um * in.prior.sd_um);
  const double data_weight = count / seen;
  out.learned.mean_um =
      (prior_weight * in.prior.mean_um + data_weight * mean) / (prior_weight + data_weight);
  out.learned.sd_um = std::max(std::sqrt(1 / (prior_weight + data_weight)), in.gauge_sd_um);
  out.basis.term("mean of the differences", mean, "um", measured);
  out.basis.term("spread of the differences (1 sd)", std::sqrt(seen), "um", computed);
  out.basis.term("learned", out.learned.mean_um, "um", computed);
  out.basis.term("learned, spread (1 sd)", out.learned.sd_um, "um", computed);
  return out;
}

Result<FilmAcceptanceResult> accept_film(const FilmAcceptance& in) {
  if (in.spots_um.empty()) return fail(refusal(Code::Missing, "spots_um", "no spot"));
  JAMBLINE_TRY(check_list("spots_um", in.spots_um, 0, 5000, "0 to 5000 um"));
  JAMBLINE_TRY(need("least_um", in.least_um, 0.1, 5000, "over 0"));
  JAMBLINE_TRY(need("most_um", in.most_um, in.least_um, 5000, "not under least_um"));
  FilmAcceptanceResult out;
  out.mean_um = mean_of(in.spots_um);
  out.spot_least_um = 0.8 * in.least_um;
  out.spot_most_um = 1.2 * in.most_um;
  for (std::size_t i = 0; i < in.spots_um.size(); ++i)
    if (in.spots_um[i] < out.spot_least_um - rounding_um ||
        in.spots_um[i] > out.spot_most_um + rounding_um)
      out.bad_spots.push_back(static_cast<int>(i));
  out.accepted = out.bad_spots.empty() && out.mean_um >= in.least_um - rounding_um &&
                 out.mean_um <= in.most_um + rounding_um;
  out.basis.method =
      "The area's mean within limits, each spot within 80 % of the least and 120 % of the most.";
  out.basis.term("mean", out.mean_um, "um", computed);
  out.basis.term("least", in.least_um, "um", entered);
  out.basis.term("most", in.most_um, "um", entered);
  out.basis.term("a spot at least", out.spot_least_um, "um", "SSPC-PA 2, 1996");
  out.basis.term("a spot at most", out.spot_most_um, "um", "SSPC-PA 2, 1996");
  return out;
}

}  // namespace jambline::trade
