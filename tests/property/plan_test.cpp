// For any car: every open mark is in the plan once in each of its rounds, or it is named as left
// out with one reason; nothing that must not be cut is ever in it.
#include <gtest/gtest.h>
#include <map>
#include <rapidcheck.h>
#include <set>

#include "base/random.h"
#include "folds/planned_car.h"
#include "job/body_shape.h"

namespace jambline {
namespace {

folds::CarView any_car(std::uint64_t seed) {
  SeededRandom random(seed);
  const auto pick = [&](std::size_t most) {
    return static_cast<std::size_t>(random.unit() * static_cast<double>(most)) % most;
  };
  folds::CarView car;
  car.opened = true;
  car.body = static_cast<job::BodyShape>(pick(5));
  for (const auto& drawn : job::pattern(car.body).panels) {
    if (pick(3) == 0) continue;
    folds::PanelView panel;
    panel.plan.panel = drawn.panel;
    panel.plan.substrate = static_cast<trade::Substrate>(pick(3));
    panel.plan.finish = static_cast<job::Finish>(pick(enum_words<job::Finish>.size()));
    panel.plan.treatment = static_cast<job::Treatment>(pick(enum_words<job::Treatment>.size()));
    panel.verdict = pick(4) == 0 ? static_cast<job::Verdict>(pick(6)) : job::Verdict::ToCorrect;
    panel.dirt = pick(6) == 0 ? job::DirtClass::From10To20 : job::DirtClass::None;
    const trade::Box_mm box = trade::bounds(drawn.shape.outline.corners);
    for (std::size_t i = pick(12); i > 0; --i) {
      const trade::Point_mm at{box.low.x_mm + random.unit() * box.width_mm(),
                               box.low.y_mm + random.unit() * box.height_mm()};
      if (!trade::contains(drawn.shape.outline, at)) continue;
      folds::MarkView mark;
      mark.mark = random.make<MarkId>();
      mark.x_mm = at.x_mm;
      mark.y_mm = at.y_mm;
      mark.defect = static_cast<job::DefectKind>(pick(enum_words<job::DefectKind>.size()));
      mark.size = 1 + static_cast<int>(pick(4));
      mark.layer = static_cast<job::Layer>(pick(4));
      if (pick(5) == 0) mark.end = static_cast<job::MarkEnd>(pick(3));
      panel.marks.push_back(mark);
    }
    car.panels.push_back(std::move(panel));
  }
  return car;
}

// Done on the way of a real car: rounds, their order, and the marks that come back.
folds::WalkStep* next_of(folds::Walk& walk) {
  for (auto& step : walk.steps)
    if (!step.done) return &step;
  return nullptr;
}

void every_mark_is_in_or_named(std::uint64_t seed, bool by_panel) {
  const folds::CarView car = any_car(seed);
  folds::PlanChoice choice;
  choice.one_panel_at_a_time = by_panel;
  const auto planned = folds::planned_car(car, {}, choice);
  std::set<MarkId> open;
  std::map<MarkId, const folds::PanelView*> on;
  bool looked_at = false;
  for (const auto& panel : car.panels) {
    looked_at = looked_at || panel.verdict != job::Verdict::NotLookedAt;
    for (const auto& mark : panel.marks) {
      on[mark.mark] = &panel;
      if (mark.open()) open.insert(mark.mark);
    }
  }
  if (!planned) {
    RC_ASSERT(planned.error().code == Code::NotYet);
    RC_ASSERT(open.empty() || !looked_at);
    return;
  }
  std::map<MarkId, std::map<job::Round, int>> times;
  for (const auto& step : planned->walk.steps)
    for (const auto& station : step.stations)
      for (const auto& mark : station.marks) {
        ++times[mark][step.round];
        RC_ASSERT(on.at(mark)->plan.panel == station.panel);
      }
  std::set<MarkId> left;
  for (const auto& one : planned->walk.left_out) RC_ASSERT(left.insert(one.mark).second);
  for (const MarkId& mark : open) RC_ASSERT((times.count(mark) == 1) != (left.count(mark) == 1));
  for (const auto& [mark, rounds] : times) {
    RC_ASSERT(open.count(mark) == 1);
    for (const auto& [round, count] : rounds) RC_ASSERT(count == 1);
    const auto& panel = *on.at(mark);
    RC_ASSERT(panel.plan.finish != job::Finish::Matte);
    RC_ASSERT(panel.plan.finish != job::Finish::Textured);
    RC_ASSERT(panel.plan.finish != job::Finish::Film);
    RC_ASSERT(panel.plan.treatment != job::Treatment::SpotWithClearFade);
    RC_ASSERT(panel.verdict == job::Verdict::ToCorrect);
  }
}

void work_comes_to_its_end(std::uint64_t seed, bool by_panel) {
  folds::CarView car = any_car(seed);
  folds::PlanChoice choice;
  choice.one_panel_at_a_time = by_panel;
  auto of = folds::plan_of_car(car, {}, choice);
  if (!of) return;
  const auto result = folds::work_out(*of);
  RC_ASSERT(result.has_value());
  folds::Walk walk = folds::walk_of(car, *of, *result);
  const std::size_t steps = walk.steps.size();
  std::set<MarkId> planned;
  std::uint64_t order = 0;
  for (std::size_t i = 0; i <= steps; ++i) {
    const folds::WalkStep* step = next_of(walk);
    if (!step) break;
    RC_ASSERT(i < steps);
    for (const auto& station : step->stations) {
      planned.insert(station.marks.begin(), station.marks.end());
      for (auto& panel : car.panels)
        if (panel.plan.panel == station.panel)
          panel.rounds.push_back({{},
                                  step->round,
                                  job::RoundHow::AsPlanned,
                                  job::Stage::Correct,
                                  station.left,
                                  1,
                                  1,
                                  {},
                                  {},
                                  0,
                                  {++order, {}, order},
                                  {}});
    }
    walk = folds::walk_of(car, *of, *result);
  }
  RC_ASSERT(next_of(walk) == nullptr);
  RC_ASSERT(std::set<MarkId>(walk.asked.begin(), walk.asked.end()) == planned);
}

TEST(PlanOfAnyCar, HasEveryOpenMarkOnceARoundOrNamesItAsLeftOut) {
  EXPECT_TRUE(rc::check(every_mark_is_in_or_named));
}

TEST(PlanOfAnyCar, ComesToItsEndForWhoDoesRoundAfterRound) {
  EXPECT_TRUE(rc::check(work_comes_to_its_end));
}

}  // namespace
}  // namespace jambline
