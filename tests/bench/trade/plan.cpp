// plan_120_ms   120 marks on the 13 panels of a car's walk, planned.
// plan_growth   60, 120, 240 and 480 marks on the same panels: how much more time the most took
// than
//               the least, over what n log n would give; 1 or less: no worse than n log n.
#include <cmath>

#include "job/body_shape.h"
#include "tests/bench/figures.h"
#include "trade/correction_plan.h"
#include "trade/points.h"

namespace jambline::bench {
namespace {

trade::CorrectionPlan car_with(int marks) {
  constexpr std::size_t panels = 13;
  trade::CorrectionPlan out;
  trade::Draws draws(9);
  std::vector<trade::PointsInside> inside;
  for (const auto& one : job::pattern(job::BodyShape{}).panels) {
    if (out.panels.size() == panels) break;
    const auto& corners = one.shape.outline.corners;
    if (area_mm2(one.shape.outline) < 1e5) continue;  // no mirror caps or fuel doors
    trade::PlanPanel panel;
    panel.panel = std::to_string(static_cast<int>(one.panel));
    panel.outline = corners;
    for (const auto& line : one.shape.body_lines) panel.body_lines.push_back({line});
    panel.stands_at = one.place.shift;
    inside.emplace_back(one.shape.outline);
    out.panels.push_back(std::move(panel));
  }
  for (int i = 0; i < marks; ++i) {
    const std::size_t panel = draws.below(out.panels.size());
    const trade::Point_mm at = inside[panel].draw(draws);
    out.panels[panel].marks.push_back(
        {std::to_string(i), at.x_mm, at.y_mm, static_cast<trade::MarkWork>(draws.below(6)), {}});
  }
  return out;
}

double plan_ms(int marks) {
  const trade::CorrectionPlan plan = car_with(marks);
  std::vector<double> rounds;
  std::size_t stations = 0;
  for (int round = 0; round < 15; ++round)
    rounds.push_back(1000 *
                     seconds([&] { stations += trade::correction_plan(plan)->stations.size(); }));
  if (stations == 0) std::exit(1);
  return median(rounds);
}

void bench_plan() {
  figure("plan_120_ms", plan_ms(120), "ms");
  std::vector<std::pair<int, double>> times;
  for (const int marks : {60, 120, 240, 480}) times.emplace_back(marks, plan_ms(marks));
  const auto n_log_n = [](double n) { return n * std::log(n); };
  double growth = 0;
  for (const auto& [marks, ms] : times) {
    growth = ms / times.front().second / (n_log_n(marks) / n_log_n(times.front().first));
    std::printf("plan of %d marks %.2f ms, %.2f of n log n\n", marks, ms, growth);
  }
  figure("plan_growth", growth, "ratio");
}

const Part plan_part(bench_plan);

}  // namespace
}  // namespace jambline::bench
