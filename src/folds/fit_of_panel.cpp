#include "folds/fit_of_panel.h"

#include <algorithm>
#include <cmath>

namespace jambline::folds {

namespace {
std::string point_name(std::size_t i) {
  return std::to_string(i + 1);
}

double left_of(double travel_mm, double moved_mm) {
  return std::max(0.0, travel_mm - std::abs(moved_mm));
}

using Counts = bool (*)(const FastenersMovedView& moved, const FitView& fit);

std::vector<trade::FitFastener> fasteners(const CarView& car, const FitView& fit, Counts counts,
                                          bool flush) {
  std::vector<trade::FitFastener> out;
  for (const auto& fastener : job::fasteners_of(car.body, fit.panel)) {
    // A bump stop holds nothing in the plane of the panel, and not everything sets its height.
    const bool holds =
        flush ? fastener.travel_lift_mm > 0 : fastener.travel_x_mm > 0 || fastener.travel_y_mm > 0;
    if (!holds) continue;
    double x_mm = 0;
    double y_mm = 0;
    double lift_mm = 0;
    for (const auto& moved : car.assembly.moves) {
      if (moved.panel != fit.panel || !counts(moved, fit)) continue;
      for (const auto& move : moved.moves) {
        if (move.fastener != fastener.fastener_name) continue;
        x_mm += move.x_mm;
        y_mm += move.y_mm;
        lift_mm += move.lift_mm;
      }
    }
    out.push_back(
        {fastener.fastener_name, fastener.x_mm, fastener.y_mm,
         flush ? left_of(fastener.travel_lift_mm, lift_mm) : left_of(fastener.travel_x_mm, x_mm),
         flush ? 0 : left_of(fastener.travel_y_mm, y_mm)});
  }
  return out;
}
}  // namespace

const FitView* last_fit(const CarView& car, job::Panel panel, std::optional<job::FitRound> round) {
  const FitView* out = nullptr;
  for (const auto& fit : car.assembly.fits)
    if (fit.panel == panel && (!round || fit.round == *round)) out = &fit;
  return out;
}

WantedGap wanted_at(const CarView& car, job::Panel panel, double x_mm, double y_mm) {
  WantedGap out;
  const auto* trial = last_fit(car, panel, job::FitRound::TrialFit);
  if (!trial) return out;
  double nearest_mm = same_point_mm;
  for (const auto& point : trial->points) {
    const double away_mm = std::hypot(point.x_mm - x_mm, point.y_mm - y_mm);
    if (away_mm > nearest_mm) continue;
    nearest_mm = away_mm;
    // What was not right yet is not wanted again.
    const bool right =
        std::abs(point.gap_mm - point.wanted_gap_mm) <= trade::PanelFit{}.tolerance_mm;
    out = {right ? point.gap_mm : point.wanted_gap_mm, point.flush_mm.value_or(0), right};
  }
  return out;
}

namespace {
FitOfPanel answer(const CarView& car, const FitView& fit, Counts counts) {
  FitOfPanel out;
  const std::string datum(fit.datum ? word_of(*fit.datum) : "structure");
  out.gaps_asked.datum = datum;
  trade::PanelFit flush;
  flush.datum = datum;
  flush.flush = true;
  for (std::size_t i = 0; i < fit.points.size(); ++i) {
    const auto& point = fit.points[i];
    out.gaps_asked.points.push_back({point_name(i), point.x_mm, point.y_mm, point.direction_deg,
                                     point.gap_mm, point.wanted_gap_mm, 1});
    if (point.flush_mm)
      flush.points.push_back(
          {point_name(i), point.x_mm, point.y_mm, 0, *point.flush_mm, point.wanted_flush_mm, 1});
  }
  out.gaps_asked.fasteners = fasteners(car, fit, counts, false);
  flush.fasteners = fasteners(car, fit, counts, true);
  if (out.gaps_asked.points.size() >= 2) out.gaps = trade::panel_fit(out.gaps_asked);
  if (flush.points.size() >= 2) {
    out.flush = trade::panel_fit(flush);
    out.flush_asked = std::move(flush);
  }
  return out;
}
}  // namespace

std::optional<FitOfPanel> fit_of_panel(const CarView& car, job::Panel panel) {
  const auto* fit = last_fit(car, panel);
  if (!fit) return std::nullopt;
  return answer(car, *fit, [](const auto&, const auto&) { return true; });
}

FitOfPanel fit_as_measured(const CarView& car, const FitView& fit) {
  return answer(car, fit,
                [](const auto& moved, const auto& then) { return moved.order < then.order; });
}

bool moved_since(const CarView& car, const FitView& fit) {
  return std::any_of(car.assembly.moves.begin(), car.assembly.moves.end(), [&](const auto& moved) {
    return moved.panel == fit.panel && fit.order < moved.order;
  });
}

bool latch_to_check(const CarView& car) {
  const auto* checked = car.assembly.find(job::Step::LatchAndCatchChecked);
  return std::any_of(car.assembly.moves.begin(), car.assembly.moves.end(), [&](const auto& moved) {
    if (checked && checked->done && moved.order < checked->order) return false;
    const auto& fasteners = job::fasteners_of(car.body, moved.panel);
    return std::any_of(moved.moves.begin(), moved.moves.end(), [&](const auto& move) {
      return std::any_of(fasteners.begin(), fasteners.end(), [&](const auto& fastener) {
        return fastener.latch && fastener.fastener_name == move.fastener;
      });
    });
  });
}

}  // namespace jambline::folds
