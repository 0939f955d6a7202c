#include "app/demo/correction.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "app/demo/invented.h"
#include "job/body_shape.h"
#include "trade/correction_plan.h"

namespace jambline::demo {

namespace {

using job::CutItem;
using job::DefectKind;
using job::MarkEnd;
using job::Panel;
using job::Round;

constexpr double one_area_mm2 = 300.0 * 300.0;
constexpr double handling_min = 0.2;  // to take up a tool and to wipe, an area

const std::vector<trade::RoundRule>& rules() {
  static const std::vector<trade::RoundRule> all = trade::usual_rounds();
  return all;
}

std::optional<Round> starts_at(const folds::MarkView& mark) {
  switch (mark.defect) {
    case DefectKind::Nib:
    case DefectKind::RunOrSag:
    case DefectKind::Fisheye:
      if (mark.layer == job::Layer::UnderClear) return std::nullopt;
      return Round::Level;
    case DefectKind::TapeLine:
      return Round::Refine;
    case DefectKind::OversprayOnFinish:
    case DefectKind::HandlingScratch:
      return Round::Polish;
    default:
      return std::nullopt;
  }
}

bool may_be_worked_on(const folds::PanelView& panel) {
  return job::may_be_cut(panel.plan.finish) && panel.verdict != job::Verdict::Redo;
}

double tenth(double minutes) {
  return std::max(0.1, std::round(minutes * 10) / 10);
}

// Circles that touch are one area.
int areas_of(const std::vector<trade::Circle_mm>& circles) {
  std::vector<std::size_t> group(circles.size());
  int groups = 0;
  for (std::size_t i = 0; i < circles.size(); ++i) {
    group[i] = i;
    ++groups;
    for (std::size_t j = 0; j < i; ++j) {
      const double apart_mm = std::hypot(circles[i].center.x_mm - circles[j].center.x_mm,
                                         circles[i].center.y_mm - circles[j].center.y_mm);
      if (apart_mm > circles[i].radius_mm + circles[j].radius_mm || group[i] == group[j]) continue;
      const std::size_t old = group[j];
      for (std::size_t k = 0; k <= i; ++k)
        if (group[k] == old) group[k] = group[i];
      --groups;
    }
  }
  return groups;
}

// The work of one round on a panel; nothing when it has no mark for it.
std::optional<acts::FinishRound> work_of(const folds::CarView& car, const folds::PanelView& panel,
                                         Round round, double slower) {
  const auto& rule = rules()[static_cast<std::size_t>(round)];
  acts::FinishRound out{car.job, panel.plan.panel, round, job::RoundHow::AsPlanned, {}};
  std::vector<trade::Circle_mm> circles;
  for (const auto& mark : panel.marks) {
    const auto start = starts_at(mark);
    if (!mark.open() || !start || *start > round) continue;
    out.marks.push_back(mark.mark);
    circles.push_back({{mark.x_mm, mark.y_mm}, rule.radius_mm});
  }
  if (panel.dirt != job::DirtClass::None) {
    const auto* drawn = job::pattern(car.body).find(panel.plan.panel);
    out.area_mm2 = drawn ? trade::area_mm2(drawn->shape.outline) : one_area_mm2;
    out.areas = static_cast<int>(std::ceil(out.area_mm2 / one_area_mm2));
  } else if (!out.marks.empty()) {
    out.area_mm2 = trade::circles_union_area_mm2(circles);
    out.areas = areas_of(circles);
  } else {
    return std::nullopt;
  }
  out.area_mm2 = std::round(out.area_mm2);
  out.work_min =
      tenth(slower * rule.min_per_area * out.area_mm2 / one_area_mm2 + handling_min * out.areas);
  return out;
}

Commands film(const folds::CarView& car, Panel panel, job::FilmWhen when,
              const std::vector<double>& typed) {
  const auto* one = car.find(panel);
  if (!one || !may_be_worked_on(*one)) return {};
  acts::ReadFilm read{.job = car.job, .panel = panel, .when = when};
  read.gauge = one->plan.substrate == trade::Substrate::Plastic ? job::FilmGauge::Clear
                                                                : job::FilmGauge::Total;
  // Of plastic the clear alone is read, which is about a quarter of what lies on metal.
  for (const double um : typed)
    read.typed.push_back(read.gauge == job::FilmGauge::Clear ? um - 125 : um);
  return {read};
}

CarAct burn_through(Panel panel) {
  return [panel](const folds::CarView& car) {
    Commands out;
    if (const auto* one = car.find(panel))
      for (const auto& mark : one->marks)
        if (mark.open() && out.empty() && may_be_worked_on(*one))
          out.push_back(acts::EndMark{car.job, mark.mark, MarkEnd::BurnThrough});
    return out;
  };
}

CarAct skip_round(Panel panel, Round round) {
  return [panel, round](const folds::CarView& car) {
    Commands out;
    const auto* one = car.find(panel);
    auto work = one && may_be_worked_on(*one) ? work_of(car, *one, round, 1) : std::nullopt;
    if (!work) return out;
    work->how = job::RoundHow::Skipped;
    out.push_back(*work);
    return out;
  };
}
}  // namespace

Correction invented_correction(SeededRandom& random) {
  Correction out;
  out.by = chance(random, 0.15) ? Who::Ivo : Who::Ana;
  out.battery_tools = chance(random, 0.6);
  out.no_gloves = chance(random, 0.04);
  out.skips_refine = chance(random, 0.2);
  out.reads_film = chance(random, 0.3);
  out.slower = (out.by == Who::Ana ? 1.1 : 1.35) + 0.4 * (random.unit() - 0.5);
  const int film_um = between(random, 168, 190);
  for (int i = 0; i < 3; ++i) out.before_um.push_back(film_um + between(random, -3, 3));
  out.taken_um = (out.skips_refine ? 5.0 : 6.5) + 3 * (random.unit() - 0.5);
  return out;
}

CarAct answer_before_cut(const Correction& correction) {
  return [correction](const folds::CarView& car) {
    acts::AnswerBeforeCut out{car.job, {}};
    for (std::size_t i = 0; i < enum_words<CutItem>.size(); ++i)
      out.checks.push_back({static_cast<CutItem>(i), job::CutAnswer::Yes});
    if (correction.battery_tools)
      out.checks[static_cast<std::size_t>(CutItem::CordAndOutlet)].answer =
          job::CutAnswer::DoesNotApply;
    if (correction.no_gloves)
      out.checks[static_cast<std::size_t>(CutItem::Gloves)] = {CutItem::Gloves, job::CutAnswer::No,
                                                               job::OverrideReason::NoneAtHand};
    return Commands{out};
  };
}

CarAct finish_round(const Correction& correction, Panel panel, Round round) {
  return [slower = correction.slower, panel, round](const folds::CarView& car) {
    Commands out;
    const auto* one = car.find(panel);
    const auto work =
        one && may_be_worked_on(*one) ? work_of(car, *one, round, slower) : std::nullopt;
    if (!work) return out;
    out.push_back(*work);
    if (round == Round::Finish)
      for (const auto& mark : work->marks)
        out.push_back(acts::EndMark{car.job, mark, MarkEnd::Gone});
    return out;
  };
}

std::vector<CarAct> correction_acts(const Correction& correction,
                                    const std::vector<Panel>& panels) {
  std::vector<CarAct> out{answer_before_cut(correction)};
  const Panel read = panels.back();
  if (correction.reads_film)
    out.push_back([read, correction](const folds::CarView& car) {
      return film(car, read, job::FilmWhen::BeforeCutting, correction.before_um);
    });
  for (const auto& rule : rules())
    for (const Panel panel : panels) {
      if (correction.burns_through && rule.round == Round::Compound && panel == panels.front())
        out.push_back(burn_through(panel));
      else if (correction.skips_refine && rule.round == Round::Refine)
        out.push_back(skip_round(panel, rule.round));
      else
        out.push_back(finish_round(correction, panel, rule.round));
    }
  if (correction.reads_film)
    out.push_back([read, correction](const folds::CarView& car) {
      std::vector<double> after_um;
      for (const double um : correction.before_um)
        after_um.push_back(std::round(um - correction.taken_um));
      return film(car, read, job::FilmWhen::AfterSequence, after_um);
    });
  return out;
}

Commands end_open_marks(const folds::CarView& car, Panel panel) {
  Commands out;
  if (const auto* one = car.find(panel))
    for (const auto& mark : one->marks)
      if (mark.open()) out.push_back(acts::EndMark{car.job, mark.mark, MarkEnd::Gone});
  return out;
}

CarAct comes_back(Panel panel) {
  return [panel](const folds::CarView& car) {
    if (const auto* one = car.find(panel); one && may_be_worked_on(*one))
      for (const auto& mark : one->marks)
        if (mark.end == MarkEnd::Gone && starts_at(mark))
          return Commands{acts::EndMark{car.job, mark.mark, MarkEnd::CameBack}};
    return Commands{};
  };
}

CarAct polish_again(const Correction& correction, Panel panel) {
  return [slower = correction.slower, panel](const folds::CarView& car) {
    Commands out;
    const auto* one = car.find(panel);
    auto work =
        one && may_be_worked_on(*one) ? work_of(car, *one, Round::Polish, slower) : std::nullopt;
    if (!work || work->marks.empty()) return out;
    work->how = job::RoundHow::Added;
    out.push_back(*work);
    for (const auto& mark : work->marks) out.push_back(acts::EndMark{car.job, mark, MarkEnd::Gone});
    return out;
  };
}

}  // namespace jambline::demo
