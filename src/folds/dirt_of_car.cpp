#include "folds/dirt_of_car.h"

#include <algorithm>
#include <tuple>

namespace jambline::folds {

namespace {

trade::Lie lie_of(trade::Attitude attitude) {
  switch (attitude) {
    case trade::Attitude::Flat:
      return trade::Lie::Flat;
    case trade::Attitude::Sloped:
      return trade::Lie::Sloped;
    case trade::Attitude::Upright:
      break;
  }
  return trade::Lie::Upright;
}

std::uint64_t seed_of(const JobId& job) {
  std::uint64_t out = 0;
  for (std::size_t i = JobId::size - 4; i < JobId::size; ++i) out = out << 8U | job.bytes[i];
  return out;
}

std::vector<trade::Point_mm> dirt_on(const PanelView& panel, const trade::Polygon& outline) {
  std::vector<trade::Point_mm> out;
  for (const auto& mark : panel.marks) {
    const trade::Point_mm at{mark.x_mm, mark.y_mm};
    if (is_dirt(mark) && trade::contains(outline, at)) out.push_back(at);
  }
  std::sort(out.begin(), out.end(), [](const auto& a, const auto& b) {
    return std::tie(a.x_mm, a.y_mm) < std::tie(b.x_mm, b.y_mm);
  });
  return out;
}

trade::DirtPanel dirt_panel(const PanelView& panel, const trade::PanelShape& shape) {
  trade::DirtPanel out;
  out.panel = std::string(word_of(panel.plan.panel));
  out.outline = shape.outline.corners;
  out.lie = lie_of(shape.attitude);
  out.plastic = panel.plan.substrate == trade::Substrate::Plastic;
  for (const auto& edge : shape.masked_edges) out.masked_edges.push_back({edge.line});
  for (const auto& seam : shape.seams) out.seams.push_back({seam});
  for (const auto& strip : shape.reach_over) out.reach_strips.push_back({strip.corners});
  out.all_over = panel.dirt != job::DirtClass::None;
  if (!out.all_over) out.marks = dirt_on(panel, shape.outline);
  return out;
}

}  // namespace

bool is_dirt(const MarkView& mark) {
  return mark.stage == job::Stage::Inspect &&
         (mark.defect == job::DefectKind::Nib || mark.defect == job::DefectKind::Crater);
}

bool face_was_sprayed(const job::PanelPlan& plan) {
  return plan.treatment != job::Treatment::NotRefinished &&
         plan.treatment != job::Treatment::EdgeOrJambOnly;
}

std::optional<trade::FlatHistory> flat_history(const std::vector<Lesson>& lessons,
                                               const JobId& but) {
  std::optional<trade::FlatHistory> out;
  for (const auto& lesson : lessons) {
    if (!lesson.counted || lesson.job == but) continue;
    if (!out) out.emplace();
    out->flat_marks += lesson.flat_nibs;
    out->flat_m2 += lesson.flat_m2;
    out->upright_marks += lesson.upright_nibs;
    out->upright_m2 += lesson.upright_m2;
  }
  return out;
}

trade::DirtPattern dirt_of_car(const CarView& car, const job::CarPattern& body,
                               std::optional<trade::FlatHistory> history) {
  trade::DirtPattern out;
  for (const auto& placed : body.panels) {
    const auto* panel = car.find(placed.panel);
    if (!panel || !face_was_sprayed(panel->plan) || panel->verdict == job::Verdict::NotLookedAt)
      continue;
    out.panels.push_back(dirt_panel(*panel, placed.shape));
  }
  out.history = history;
  out.seed = seed_of(car.job);
  return out;
}

}  // namespace jambline::folds
