// The parts of JobFold::view() that tell of the correction: film, rounds, checks and the cause.
#include <algorithm>
#include <numeric>

#include "folds/job_fold.h"

namespace jambline::folds {

namespace {

PanelView* panel_of(CarView& car, job::Panel panel) {
  for (auto& one : car.panels)
    if (one.plan.panel == panel) return &one;
  return nullptr;
}

FilmView film_view(const Write<entries::FilmRead>& head, const Write<entries::FilmRead>& first) {
  const entries::FilmRead& said = head.value;
  FilmView out;
  out.reading = said.reading;
  out.spot = said.spot;
  out.x_mm = said.x_mm;
  out.y_mm = said.y_mm;
  out.when = said.when;
  out.gauge = said.gauge;
  out.unit = said.unit;
  out.typed = said.typed;
  for (const double typed : said.typed) out.readings_um.push_back(job::in_um(typed, said.unit));
  if (!out.readings_um.empty())
    out.mean_um = std::accumulate(out.readings_um.begin(), out.readings_um.end(), 0.0) /
                  static_cast<double>(out.readings_um.size());
  out.before = said.before;
  out.rounds = said.rounds;
  out.by = head.person;
  out.wall_ms = first.wall_ms;
  out.order = first.order;
  return out;
}

// The one that made the reading, or the earliest that is known here: it replaces none of the
// others. A correction by a device whose clock is behind may stand before it.
const Write<entries::FilmRead>& made_by(
    const std::vector<const Write<entries::FilmRead>*>& writes) {
  const auto known = [&](const Hash& hash) {
    return std::any_of(writes.begin(), writes.end(),
                       [&](const auto* write) { return write->hash == hash; });
  };
  for (const auto* write : writes)
    if (std::none_of(write->replaces.begin(), write->replaces.end(), known)) return *write;
  return *writes.front();
}

template <class T>
bool differ(const std::vector<const Write<T>*>& heads) {
  return std::any_of(heads.begin(), heads.end(),
                     [&](const auto* head) { return !(head->value == heads.back()->value); });
}

}  // namespace

void JobFold::view_correction(CarView& out) const {
  std::map<ReadingId, double> means_um;
  for (const auto& [reading, writes] : film_.by_key()) {
    const auto heads = standing_heads(writes, withdrawals_);
    if (heads.empty()) continue;
    FilmView view = film_view(*heads.back(), made_by(writes));
    view.heads = hashes_of(heads);
    means_um[reading] = view.mean_um;
    if (auto* panel = panel_of(out, heads.back()->value.panel))
      panel->film.push_back(std::move(view));
  }
  for (const auto& [id, writes] : rounds_.by_key()) {
    const auto heads = standing_heads(writes, withdrawals_);
    if (heads.empty()) continue;
    const auto& head = *heads.front();
    const entries::RoundFinished& said = head.value;
    if (auto* panel = panel_of(out, said.panel))
      panel->rounds.push_back({id, said.round, said.how, said.stage, said.marks, said.areas,
                               said.area_mm2, said.work_min, head.person, head.wall_ms, head.order,
                               head.hash});
  }
  for (auto& panel : out.panels) {
    sort_by_order(panel.film);
    sort_by_order(panel.rounds);
    for (auto& film : panel.film)
      if (film.before)
        if (const auto before = means_um.find(*film.before); before != means_um.end())
          film.taken_um = before->second - film.mean_um;
  }
  for (const auto& [person, writes] : before_cut_.by_key()) {
    const auto heads = standing_heads(writes, withdrawals_);
    if (heads.empty()) continue;
    out.before_cut.push_back(
        {person, heads.back()->value, differ(heads), heads.back()->wall_ms, hashes_of(heads)});
  }
  if (const auto causes = cause_.heads(withdrawals_); !causes.empty())
    out.cause = CauseView{causes.back()->value, differ(causes), causes.back()->person,
                          causes.back()->wall_ms, hashes_of(causes)};
}

}  // namespace jambline::folds
