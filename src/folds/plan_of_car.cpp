#include "folds/plan_of_car.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "job/body_shape.h"

namespace jambline::folds {

namespace {
using job::DefectKind;
using trade::MarkWork;

constexpr double plan_area_mm2 = 300.0 * 300.0;
constexpr double areas_a_pad = 2.5;  // as trade/correction_plan.cpp counts them
constexpr double areas_a_towel = 4;

std::string name_of(job::Panel panel) {
  return std::string(word_of(panel));
}

trade::Point_mm middle_of(const job::PatternPanel& drawn) {
  const trade::Box_mm box = trade::bounds(drawn.shape.outline.corners);
  return drawn.place.apply(
      {(box.low.x_mm + box.high.x_mm) / 2, (box.low.y_mm + box.high.y_mm) / 2});
}

// Why nothing on this panel is worked on; none: marks are looked at one by one.
std::optional<NotPlanned> why_not(const PanelView& panel, const PlanChoice& choice) {
  if (!job::may_be_cut(panel.plan.finish)) return NotPlanned::DoNotCut;
  const auto film = choice.film.find(panel.plan.panel);
  if (film != choice.film.end() && film->second == trade::FilmWord::DoNotCut)
    return NotPlanned::FilmSaysNo;
  if (panel.disputed || panel.verdict != job::Verdict::ToCorrect) return NotPlanned::PanelWaits;
  if (panel.plan.treatment == job::Treatment::SpotWithClearFade) return NotPlanned::ClearFade;
  return std::nullopt;
}

std::vector<trade::RoundRule> rules_with(const std::vector<LearnedTime>& own) {
  std::vector<trade::RoundRule> rules = trade::usual_rounds();
  for (auto& rule : rules)
    for (const auto& time : own) {
      const auto min_per_area = time.min_per_area();
      if (time.round != rule.round || !time.shown() || !min_per_area) continue;
      rule.own_min_per_area = std::clamp(*min_per_area, 0.01, 600.0);
      rule.own_areas = time.areas;
    }
  return rules;
}

trade::PlanPanel plan_panel(const PanelView& panel, const job::PatternPanel& drawn) {
  trade::PlanPanel out;
  out.panel = name_of(panel.plan.panel);
  out.outline = drawn.shape.outline.corners;
  for (const auto& line : drawn.shape.body_lines) out.body_lines.push_back({line});
  out.stands_at = middle_of(drawn);
  out.may_be_cut = job::may_be_cut(panel.plan.finish);
  out.plastic = panel.plan.substrate == trade::Substrate::Plastic;
  return out;
}

bool any_to_look_at(const CarView& car) {
  return std::any_of(car.panels.begin(), car.panels.end(),
                     [](const auto& panel) { return panel.verdict != job::Verdict::NotLookedAt; });
}

const MarkView* find_mark(const PanelView& panel, const MarkId& mark) {
  for (const auto& one : panel.marks)
    if (one.mark == mark) return &one;
  return nullptr;
}

NotPlanned why_of(trade::LeftOut why) {
  switch (why) {
    case trade::LeftOut::DoNotCut:
      return NotPlanned::DoNotCut;
    case trade::LeftOut::ClearFade:
      return NotPlanned::ClearFade;
    case trade::LeftOut::NoRound:
      break;
  }
  return NotPlanned::NoRound;
}

bool holds(const std::vector<MarkId>& marks, const MarkId& mark) {
  return std::find(marks.begin(), marks.end(), mark) != marks.end();
}

bool worked_on(const PanelView& panel, const MarkId& mark, job::Round round) {
  const MarkView* view = find_mark(panel, mark);
  return std::any_of(panel.rounds.begin(), panel.rounds.end(), [&](const RoundView& one) {
    if (one.round != round || !holds(one.marks, mark)) return false;
    return !view || view->end != job::MarkEnd::CameBack || !view->end_order ||
           *view->end_order < one.order;
  });
}

WalkStation whole_station(const PanelView& panel, const WholePanel& whole,
                          const trade::RoundRule& rule, double plastic_speed, job::Stage stage) {
  WalkStation out;
  out.panel = whole.panel;
  out.whole = true;
  out.marks = whole.marks;
  for (const MarkId& mark : whole.marks)
    if (!worked_on(panel, mark, rule.round)) out.left.push_back(mark);
  const bool round_done = std::any_of(
      panel.rounds.begin(), panel.rounds.end(),
      [&](const RoundView& one) { return one.round == rule.round && one.stage == stage; });
  out.done = round_done && out.left.empty();
  out.area_mm2 = whole.area_mm2;
  out.minutes = rule.min_per_area * whole.area_mm2 / plan_area_mm2;  // own ones are of spots
  if (whole.plastic) out.minutes /= plastic_speed;
  out.tape_edges = rule.round == job::Round::Compound;
  out.clean_down = rule.round == job::Round::Refine;
  return out;
}

WalkStation station_of(const PanelView& panel, const trade::PlanStation& planned) {
  WalkStation out;
  out.panel = panel.plan.panel;
  out.tape_edges = planned.tape_edges;
  out.clean_down = planned.clean_down;
  const auto ids = [](const trade::PlanArea& area) {
    std::vector<MarkId> marks;
    for (const auto& mark : area.marks)
      if (const auto id = MarkId::parse(mark)) marks.push_back(MarkId{*id});
    return marks;
  };
  for (const auto& area : planned.areas)
    for (const MarkId& mark : ids(area)) {
      out.marks.push_back(mark);
      if (!worked_on(panel, mark, planned.round)) out.left.push_back(mark);
    }
  out.done = out.left.empty();
  for (const auto& area : planned.areas) {
    const auto marks = ids(area);
    const bool open = std::any_of(marks.begin(), marks.end(),
                                  [&](const MarkId& mark) { return holds(out.left, mark); });
    if (!open && !out.done) continue;
    out.areas.push_back(area);
    out.area_mm2 += area.area_mm2;
    out.minutes += area.minutes;
  }
  return out;
}

void count(WalkStep& step, double clean_down_min) {
  step.done = true;
  for (const auto& station : step.stations) {
    step.done = step.done && station.done;
    const bool shown = !station.done;
    if (!shown) continue;
    step.marks += static_cast<int>(station.left.size());
    step.areas += station.whole ? static_cast<int>(std::ceil(station.area_mm2 / plan_area_mm2))
                                : static_cast<int>(station.areas.size());
    step.area_mm2 += station.area_mm2;
    step.minutes += station.minutes + (station.clean_down ? clean_down_min : 0);
  }
  step.pads = static_cast<int>(std::ceil(step.areas / areas_a_pad));
  step.towels = static_cast<int>(std::ceil(step.areas / areas_a_towel));
}
}  // namespace

WorkOnKind work_on(DefectKind kind, int size, job::Layer layer) {
  const bool below = layer == job::Layer::UnderClear;
  switch (kind) {
    case DefectKind::Nib:
      if (below) return {std::nullopt, NotPlanned::Redo};
      return {MarkWork::Nib};
    case DefectKind::RunOrSag:
      return {MarkWork::Run, {}, true};
    case DefectKind::Fisheye:
    case DefectKind::Crater:
      if (size > job::smallest_size || below) return {std::nullopt, NotPlanned::Redo};
      return {MarkWork::Nib};
    case DefectKind::OrangePeel:
      return {MarkWork::Peel};
    case DefectKind::DrySpray:
      if (below) return {std::nullopt, NotPlanned::Redo};
      return {MarkWork::Peel};
    case DefectKind::OversprayOnFinish:
    case DefectKind::OversprayPastMasking:
    case DefectKind::TapeBleed:
    case DefectKind::HandlingScratch:
      return {MarkWork::Overspray};
    case DefectKind::TapeLine:
    case DefectKind::SandingScratch:
      return {MarkWork::Scratch};
    case DefectKind::ScratchSwelling:
      return {MarkWork::Peel, {}, true};
    case DefectKind::DieBack:
    case DefectKind::WhiteBlush:
      return {MarkWork::Overspray, {}, true};
    case DefectKind::Haze:
      return {MarkWork::Haze};
    case DefectKind::Pinhole:
      return {std::nullopt, NotPlanned::BackToPrep};
    case DefectKind::ColorMismatch:
      return {std::nullopt, NotPlanned::Tint};
    case DefectKind::SoftFilm:
      return {std::nullopt, NotPlanned::StripIfSoft};
    case DefectKind::RunInBase:
    case DefectKind::SolventPop:
    case DefectKind::Mottle:
    case DefectKind::PrimerShowing:
    case DefectKind::BurnThrough:
    case DefectKind::Wrinkle:
    case DefectKind::AdhesionLoss:
      break;
  }
  return {std::nullopt, NotPlanned::Redo};
}

Result<PlanOfCar> plan_of_car(const CarView& car, const std::vector<LearnedTime>& own,
                              const PlanChoice& choice) {
  const char* const operation = "plan the correction";
  if (!any_to_look_at(car))
    return fail(Error{Code::NotYet, operation, car.plate, {{"what", "verdict"}}});
  PlanOfCar out;
  out.stage = choice.stage;
  out.plan.rounds = rules_with(own);
  out.plan.one_panel_at_a_time = choice.one_panel_at_a_time;
  const job::CarPattern& pattern = job::pattern(car.body);
  for (const PanelView& panel : car.panels) {
    const job::PatternPanel* drawn = pattern.find(panel.plan.panel);
    if (!drawn) continue;
    const auto not_at_all = why_not(panel, choice);
    trade::PlanPanel planned = plan_panel(panel, *drawn);
    std::vector<MarkId> in;
    for (const MarkView& mark : panel.marks) {
      if (!mark.open()) continue;
      const WorkOnKind kind = work_on(mark.defect, mark.size, mark.layer);
      if (not_at_all) {
        out.left_out.push_back({panel.plan.panel, mark.mark, *not_at_all});
      } else if (!kind.work) {
        out.left_out.push_back({panel.plan.panel, mark.mark, kind.why});
      } else if (kind.rests_longer && !choice.heavy_film_is_hard) {
        out.left_out.push_back({panel.plan.panel, mark.mark, NotPlanned::LongerRest});
      } else {
        const auto proved = choice.proved_start.find(mark.defect);
        planned.marks.push_back({mark.mark.hex(), mark.x_mm, mark.y_mm, *kind.work,
                                 proved == choice.proved_start.end()
                                     ? std::nullopt
                                     : std::optional<job::Round>(proved->second)});
        in.push_back(mark.mark);
      }
    }
    if (!not_at_all && panel.dirt != job::DirtClass::None)
      out.whole.push_back({panel.plan.panel, trade::area_mm2(drawn->shape.outline), planned.plastic,
                           planned.stands_at, std::move(in)});
    else if (!planned.marks.empty())
      out.plan.panels.push_back(std::move(planned));
  }
  if (out.plan.panels.empty() && out.whole.empty() && out.left_out.empty())
    return fail(Error{Code::NotYet, operation, car.plate, {{"what", "marks"}}});
  return out;
}

Result<trade::CorrectionPlanResult> work_out(const PlanOfCar& of) {
  if (of.plan.panels.empty()) return trade::CorrectionPlanResult{};
  return trade::correction_plan(of.plan);
}

Walk walk_of(const CarView& car, const PlanOfCar& of, const trade::CorrectionPlanResult& plan) {
  Walk out;
  const auto panel_named = [&](const std::string& name) -> const PanelView* {
    const auto panel = from_word<job::Panel>(name);
    return panel ? car.find(*panel) : nullptr;
  };
  const auto step_of = [&](job::Round round) -> WalkStep& {
    for (auto& step : out.steps)
      if (step.round == round) return step;
    WalkStep fresh;
    fresh.round = round;
    const auto at = std::find_if(out.steps.begin(), out.steps.end(),
                                 [&](const WalkStep& step) { return step.round > round; });
    return *out.steps.insert(at, std::move(fresh));
  };
  const bool by_panel = of.plan.one_panel_at_a_time;
  const auto add = [&](job::Round round, WalkStation station) {
    if (by_panel) {
      out.steps.emplace_back();
      out.steps.back().round = round;
      out.steps.back().stations.push_back(std::move(station));
    } else {
      step_of(round).stations.push_back(std::move(station));
    }
  };
  for (const auto& planned : plan.stations)
    if (const PanelView* panel = panel_named(planned.panel))
      add(planned.round, station_of(*panel, planned));
  for (const auto& whole : of.whole)
    if (const PanelView* panel = car.find(whole.panel))
      for (const auto& rule : of.plan.rounds)
        add(rule.round, whole_station(*panel, whole, rule, of.plan.plastic_speed, of.stage));
  std::set<MarkId> waits;
  std::vector<MarkId> all;
  const WalkStep* before = nullptr;
  for (auto& step : out.steps) {
    count(step, of.plan.clean_down_min);
    if (before && before->round != step.round && !step.done) step.minutes += of.plan.change_min;
    before = &step;
    for (const auto& station : step.stations) {
      for (const MarkId& mark : station.marks)
        if (!holds(all, mark)) all.push_back(mark);
      waits.insert(station.left.begin(), station.left.end());
    }
  }
  for (const MarkId& mark : all)
    if (waits.count(mark) == 0) out.asked.push_back(mark);
  out.left_out = of.left_out;
  for (const auto& left : plan.left_out) {
    const auto panel = from_word<job::Panel>(left.panel);
    const auto mark = MarkId::parse(left.mark);
    if (panel && mark) out.left_out.push_back({*panel, MarkId{*mark}, why_of(left.why)});
  }
  return out;
}

}  // namespace jambline::folds
