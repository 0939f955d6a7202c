#include "folds/lesson.h"

#include <algorithm>
#include <map>

#include "folds/dirt_of_car.h"

namespace jambline::folds {

namespace {

std::int64_t least_of(job::DirtClass dirt) {
  switch (dirt) {
    case job::DirtClass::None:
      return 0;
    case job::DirtClass::From10To20:
      return 10;
    case job::DirtClass::From20To50:
      return 20;
    case job::DirtClass::Over50:
      return 50;
  }
  return 0;
}

void add_dirt(const CarView& car, Lesson& out) {
  const auto& pattern = job::pattern(car.body);
  bool all_looked_at = true;
  for (const auto& panel : car.panels) {
    const auto* placed = pattern.find(panel.plan.panel);
    if (!placed || !face_was_sprayed(panel.plan)) continue;
    all_looked_at = all_looked_at && panel.verdict != job::Verdict::NotLookedAt;
    const double area_m2 = trade::area_mm2(placed->shape.outline) / 1e6;
    const auto nibs =
        static_cast<std::int64_t>(std::count_if(panel.marks.begin(), panel.marks.end(), is_dirt));
    out.sprayed_m2 += area_m2;
    out.nibs += std::max(nibs, least_of(panel.dirt));
    if (panel.dirt != job::DirtClass::None) {
      out.all_over = true;
    } else if (placed->shape.attitude == trade::Attitude::Flat) {
      out.flat_nibs += nibs;
      out.flat_m2 += area_m2;
    } else if (placed->shape.attitude == trade::Attitude::Upright) {
      out.upright_nibs += nibs;
      out.upright_m2 += area_m2;
    }
  }
  out.counted = all_looked_at && out.sprayed_m2 > 0;
}

std::optional<std::int64_t> first_look_ms(const CarView& car) {
  std::optional<std::int64_t> out;
  const auto note = [&](std::int64_t ms) { out = out ? std::min(*out, ms) : ms; };
  for (const auto& panel : car.panels) {
    for (const auto& verdict : panel.verdicts) note(verdict.wall_ms);
    for (const auto& mark : panel.marks) note(mark.wall_ms);
  }
  return out;
}

void add_spraying(const CarView& car, Lesson& out) {
  std::optional<std::int64_t> end_ms;
  for (const auto& worked : car.worked) {
    const auto* operation = car.find(worked.operation);
    if (!operation || operation->stage != job::Stage::Spray) continue;
    end_ms = std::max(end_ms.value_or(worked.end_ms), worked.end_ms);
    out.painters.push_back(worked.person);
  }
  std::sort(out.painters.begin(), out.painters.end());
  out.painters.erase(std::unique(out.painters.begin(), out.painters.end()), out.painters.end());
  if (!end_ms) end_ms = first_look_ms(car);
  out.sprayed_ms = end_ms.value_or(0);
}

void add_rounds(const PanelView& panel,
                std::map<std::pair<job::Round, PersonId>, LessonRound>& out) {
  if (panel.dirt != job::DirtClass::None) return;  // worked on whole
  for (const auto& round : panel.rounds) {
    if (round.how == job::RoundHow::Skipped || !round.work_min || round.area_mm2 <= 0) continue;
    LessonRound& sum = out[{round.round, round.by}];
    sum.round = round.round;
    sum.by = round.by;
    sum.areas += round.areas;
    sum.area_mm2 += round.area_mm2;
    sum.work_min += *round.work_min;
  }
}

void add_ends(const PanelView& panel, std::map<job::DefectKind, LessonEnds>& out) {
  for (const auto& mark : panel.marks) {
    if (!mark.came_back && mark.end != job::MarkEnd::Gone) continue;
    LessonEnds& sum = out[mark.defect];
    sum.defect = mark.defect;
    ++sum.ended;
    sum.came_back += mark.came_back ? 1 : 0;
  }
}

// A stage that is done, with all its first-time operations; without an estimate it teaches nothing.
void add_durations(const CarView& car, Lesson& out) {
  for (const auto& stage : car.stages) {
    if (!stage.done) continue;
    LessonDuration sum{stage.stage, 0, 0};
    bool whole = true;
    for (const auto& operation : car.operations) {
      if (operation.stage != stage.stage || operation.work != job::WorkKind::FirstTime) continue;
      whole = whole && operation.estimate_min > 0;
      sum.estimate_min += operation.estimate_min;
      sum.clocked_min += static_cast<double>(operation.clocked_ms) / 60'000;
    }
    if (whole && sum.estimate_min > 0 && sum.clocked_min > 0) out.durations.push_back(sum);
  }
}

void add_films(const CarView& car, Lesson& out) {
  std::map<std::pair<ProductId, job::PanelGroup>, LessonFilm> films;
  for (const auto& check : car.air.thumbnails) {
    if (!check.product || !check.sheet_percent) continue;
    LessonFilm& film = films[{*check.product, check.group}];
    film.product = *check.product;
    film.group = check.group;
    film.checked_ms = check.at.wall_ms;
    if (!check.firm) {
      film.soft_percent = *check.sheet_percent;
      film.firm_percent = {};
    } else if (!film.firm_percent) {
      film.firm_percent = *check.sheet_percent;
    }
  }
  for (const auto& [key, film] : films) out.films.push_back(film);
}

}  // namespace

Lesson lesson_of(const CarView& car) {
  Lesson out;
  out.job = car.job;
  out.booth = car.booth;
  add_dirt(car, out);
  add_spraying(car, out);
  add_durations(car, out);
  add_films(car, out);
  if (car.cause && !car.cause->disputed) {
    out.cause_said = true;
    out.cause = car.cause->cause;
  }
  std::map<std::pair<job::Round, PersonId>, LessonRound> rounds;
  std::map<job::DefectKind, LessonEnds> ends;
  for (const auto& panel : car.panels) {
    add_rounds(panel, rounds);
    add_ends(panel, ends);
    for (const auto& film : panel.film)
      if (film.taken_um && !film.rounds.empty())
        out.sequences.push_back({film.rounds, *film.taken_um});
  }
  for (const auto& [key, sum] : rounds) out.rounds.push_back(sum);
  for (const auto& [defect, sum] : ends) out.ends.push_back(sum);
  return out;
}

}  // namespace jambline::folds
