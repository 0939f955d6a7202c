#include "folds/film_of_panel.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace jambline::folds {

namespace {
using trade::FilmSource;
using trade::Spread_um;

constexpr double edge_thinner_percent = 30;
constexpr double most_taken_um = 500;

Spread_um usual_removal(job::Round round) {
  static const std::vector<trade::RoundRule> rules = trade::usual_rounds();
  for (const auto& rule : rules)
    if (rule.round == round) return {rule.removal_um, rule.removal_sd_um};
  return {};
}

Spread_um sum_of(const std::vector<job::Round>& rounds) {
  double mean_um = 0;
  double variance = 0;
  for (const job::Round round : rounds) {
    const Spread_um one = usual_removal(round);
    mean_um += one.mean_um;
    variance += one.sd_um * one.sd_um;
  }
  return {mean_um, std::sqrt(variance)};
}

struct Removal {
  Spread_um whole;
  int learned_from = 0;
};

// Of one pass, coarse to fine.
Removal removal_of(const std::vector<job::Round>& pass,
                   const std::vector<LearnedSequence>& learned) {
  Removal out{sum_of(pass)};
  for (const auto& sequence : learned) {
    if (!sequence.shown() || sequence.rounds != pass) continue;
    trade::RemovalLearning in;
    in.prior = out.whole;
    in.taken_um = sequence.taken_um;
    const auto result = trade::learn_removal(in);
    if (!result || !result->shown) continue;
    out = {{std::max(0.0, result->learned.mean_um), result->learned.sd_um},
           static_cast<int>(sequence.taken_um.size())};
  }
  return out;
}

// Rounds of several passes, in the order of work: a coarser round begins a new pass.
Spread_um removal_of_all(const std::vector<job::Round>& rounds,
                         const std::vector<LearnedSequence>& learned) {
  double mean_um = 0;
  double variance = 0;
  for (std::size_t from = 0; from < rounds.size();) {
    std::size_t to = from + 1;
    while (to < rounds.size() && rounds[to] > rounds[to - 1]) ++to;
    const std::vector<job::Round> pass(rounds.begin() + static_cast<std::ptrdiff_t>(from),
                                       rounds.begin() + static_cast<std::ptrdiff_t>(to));
    const Spread_um one = removal_of(pass, learned).whole;
    mean_um += one.mean_um;
    variance += one.sd_um * one.sd_um;
    from = to;
  }
  return {mean_um, std::sqrt(variance)};
}

class FilmReader {
 public:
  FilmReader(const PanelView& view, const std::vector<LearnedSequence>& learned)
      : view_(view), learned_(learned) {
    for (const auto& film : view.film)
      if (film.when == job::FilmWhen::BeforeBase && any_round_before(film.order))
        began_ = film.order;
  }

  FilmOfPanel film() const {
    FilmOfPanel out;
    out.budget.substrate = view_.plan.substrate;
    out.budget.may_be_cut = job::may_be_cut(view_.plan.finish);
    under_the_clear(out);
    if (best_clear(out) || best_total(out)) return out;
    if (view_.plan.treatment == job::Treatment::NotRefinished ||
        view_.plan.treatment == job::Treatment::EdgeOrJambOnly) {
      out.old_clear = true;
      out.budget.coats = 1;
      out.budget.build_per_coat = trade::usual_factory_clear;
    }
    out.budget.taken_since = taken_between(began_, std::nullopt);
    return out;
  }

 private:
  using When = std::optional<entries::Order>;

  bool any_round_before(const entries::Order& order) const {
    return std::any_of(view_.rounds.begin(), view_.rounds.end(), [&](const RoundView& round) {
      return round.how != job::RoundHow::Skipped && round.order < order;
    });
  }

  bool of_this_clear(const entries::Order& order) const { return !began_ || !(order < *began_); }

  void under_the_clear(FilmOfPanel& out) const {
    const bool one_paint = view_.plan.treatment == job::Treatment::ClearOnly ||
                           view_.plan.finish == job::Finish::SingleStageSolid ||
                           view_.plan.finish == job::Finish::SingleStageMetallic;
    if (one_paint)
      out.budget.base = {};
    else if (view_.plan.finish == job::Finish::TriCoat)
      out.budget.base = trade::usual_tri_coat_base;
  }

  // From the mark that most was taken from; none: no round in that time.
  std::optional<Spread_um> taken_between(const When& from, const When& to) const {
    std::vector<job::Round> everywhere;
    std::map<MarkId, std::vector<job::Round>> at;
    for (const auto& round : view_.rounds)
      for (const MarkId& mark : round.marks) at[mark];
    bool any = false;
    for (const auto& round : view_.rounds) {
      if (round.how == job::RoundHow::Skipped) continue;
      if ((from && round.order < *from) || (to && !(round.order < *to))) continue;
      any = true;
      if (round.marks.empty()) {
        everywhere.push_back(round.round);
        for (auto& [mark, rounds] : at) rounds.push_back(round.round);
      }
      for (const MarkId& mark : round.marks) at[mark].push_back(round.round);
    }
    if (!any) return std::nullopt;
    Spread_um most = removal_of_all(everywhere, learned_);
    for (const auto& [mark, rounds] : at) {
      const Spread_um one = removal_of_all(rounds, learned_);
      if (one.mean_um > most.mean_um) most = one;
    }
    most.mean_um = std::min(most.mean_um, most_taken_um);
    return most;
  }

  // The readings of this clear that one gauge made on one spot with the paint on, in their order.
  std::vector<const FilmView*> painted(int spot, job::FilmGauge gauge) const {
    std::vector<const FilmView*> out;
    for (const auto& film : view_.film)
      if (film.spot == spot && film.gauge == gauge && film.when != job::FilmWhen::BeforeBase &&
          of_this_clear(film.order))
        out.push_back(&film);
    return out;
  }

  const FilmView* before_base(int spot) const {
    const FilmView* out = nullptr;
    for (const auto& film : view_.film)
      if (film.spot == spot && film.when == job::FilmWhen::BeforeBase && of_this_clear(film.order))
        out = &film;
    return out;
  }

  void count_taken(const std::vector<const FilmView*>& readings, FilmOfPanel& out) const {
    When from = began_;
    double before_um = 0;
    for (const FilmView* film : readings) {
      if (film->taken_um)
        before_um += std::max(0.0, *film->taken_um);
      else if (const auto taken = taken_between(from, film->order))
        before_um += taken->mean_um;
      from = film->order;
    }
    out.budget.taken_before_um = std::min(before_um, most_taken_um);
    out.budget.taken_since = taken_between(from, std::nullopt);
  }

  std::vector<int> spots() const {
    std::vector<int> out;
    for (const auto& film : view_.film)
      if (std::find(out.begin(), out.end(), film.spot) == out.end()) out.push_back(film.spot);
    return out;
  }

  double since_um(const FilmView& film) const {
    const auto taken = taken_between(film.order, std::nullopt);
    return taken ? taken->mean_um : 0;
  }

  bool best_clear(FilmOfPanel& out) const {
    double least_um = 0;
    for (const int spot : spots()) {
      const auto readings = painted(spot, job::FilmGauge::Clear);
      if (readings.empty()) continue;
      const double left_um = readings.back()->mean_um - since_um(*readings.back());
      if (out.spot != 0 && left_um >= least_um) continue;
      least_um = left_um;
      out.spot = spot;
      out.budget.clear_um = readings.back()->readings_um;
      count_taken(readings, out);
    }
    if (out.spot != 0) out.source = FilmSource::Ultrasonic;
    return out.spot != 0;
  }

  bool best_total(FilmOfPanel& out) const {
    const bool metal = trade::is_metal(view_.plan.substrate);
    double least_um = 0;
    for (const int spot : spots()) {
      const auto readings = painted(spot, job::FilmGauge::Total);
      const FilmView* before = before_base(spot);
      if (readings.empty() && !before) continue;
      if (!metal) {
        out.note = FilmNote::NoMetal;
        continue;
      }
      if (readings.empty() || !before) {
        out.note = FilmNote::OneTotalOnly;
        continue;
      }
      const double left_um =
          readings.back()->mean_um - before->mean_um - since_um(*readings.back());
      if (out.spot != 0 && left_um >= least_um) continue;
      least_um = left_um;
      out.spot = spot;
      out.budget.total_after_um = readings.back()->readings_um;
      out.budget.total_before_base_um = before->readings_um;
      count_taken(readings, out);
    }
    if (out.spot != 0) {
      out.source = FilmSource::TotalLessBase;
      out.note = FilmNote::None;
    }
    return out.spot != 0;
  }

  const PanelView& view_;
  const std::vector<LearnedSequence>& learned_;
  When began_;  // the clear that is on now; none: nobody said otherwise
};
}  // namespace

std::vector<job::Round> whole_sequence() {
  std::vector<job::Round> out;
  for (const auto& rule : trade::usual_rounds()) out.push_back(rule.round);
  return out;
}

FilmOfPanel film_of_panel(const PanelView& panel, const FilmQuestion& question,
                          const std::vector<LearnedSequence>& learned) {
  FilmOfPanel out = FilmReader(panel, learned).film();
  if (question.near_edge) out.budget.edge_thinner_percent = edge_thinner_percent;
  const Removal removal = removal_of(question.steps, learned);
  const Spread_um usual = sum_of(question.steps);
  const double mean_share = usual.mean_um > 0 ? removal.whole.mean_um / usual.mean_um : 1;
  const double sd_share = usual.sd_um > 0 ? removal.whole.sd_um / usual.sd_um : 1;
  for (const job::Round round : question.steps) {
    const Spread_um one = usual_removal(round);
    out.budget.steps.push_back(
        {std::string(word_of(round)), {one.mean_um * mean_share, one.sd_um * sd_share}});
  }
  out.learned_from = removal.learned_from;
  return out;
}

}  // namespace jambline::folds
