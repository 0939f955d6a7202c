// dirt_200_ms         200 marks on one hood with its seams and masked edges, 999 patterns, one
// core. dirt_over_spatstat  how long the drawn patterns take us (spacing and clusters) over how
// long R's
//                     spatstat takes for envelope() of the nearest-neighbour distribution alone, on
//                     the same points in the same outline with as many patterns.
#include <fstream>
#include <sstream>

#include "job/body_shape.h"
#include "tests/bench/figures.h"
#include "trade/dirt_pattern.h"
#include "trade/dirt_scan.h"

namespace jambline::bench {
namespace {

constexpr int patterns = 999;

trade::DirtPanel hood_with(std::size_t marks) {
  const auto& hood = job::pattern(job::BodyShape{}).find(job::Panel::Hood)->shape;
  trade::DirtPanel out;
  out.panel = "hood";
  out.outline = hood.outline.corners;
  for (const auto& edge : hood.masked_edges) out.masked_edges.push_back({edge.line});
  for (const auto& seam : hood.seams) out.seams.push_back({seam});
  for (const auto& strip : hood.reach_over) out.reach_strips.push_back({strip.corners});
  trade::Draws draws(5);
  const trade::PointsInside inside(hood.outline);
  for (std::size_t i = 0; i < marks; ++i) out.marks.push_back(inside.draw(draws));
  return out;
}

bool spatstat_is_there() {
  return std::system("Rscript -e 'suppressMessages(library(spatstat.explore))' > /dev/null 2>&1") ==
         0;
}

// Seconds of five envelopes, the median; negative when R did not answer.
double spatstat_s(const trade::DirtPanel& panel) {
  const BenchFolder folder;
  const auto write = [&](const char* name, const std::vector<trade::Point_mm>& points) {
    std::ofstream out(folder.path() / name);
    out.precision(17);
    for (const auto& one : points) out << one.x_mm << ' ' << one.y_mm << '\n';
  };
  write("outline.txt", panel.outline);
  write("marks.txt", panel.marks);
  const auto answer = folder.path() / "seconds.txt";
  std::ostringstream command;
  command << "Rscript '" << JAMBLINE_SOURCE_DIR << "/tests/bench/trade/envelope.R' '"
          << folder.path().string() << "' " << patterns << " > '" << answer.string()
          << "' 2> /dev/null";
  if (std::system(command.str().c_str()) != 0) return -1;
  double out = -1;
  std::ifstream(answer) >> out;
  return out;
}

void bench_dirt() {
  trade::DirtPattern car;
  car.panels = {hood_with(200)};
  car.patterns = patterns;
  std::size_t signs = 0;
  figure("dirt_200_ms", median_ms([&] { signs += trade::dirt_pattern(car)->evidence.size(); }),
         "ms");
  if (signs == 0) std::exit(1);

  if (!spatstat_is_there()) {
    std::printf("dirt_over_spatstat: no Rscript with spatstat.explore here, not compared\n");
    return;
  }
  const trade::DirtPanel& panel = car.panels.front();
  double chance = 0;
  const double ours_ms = median_ms([&] {
    trade::Draws draws(5);
    chance += trade::scan_dirt({panel.outline}, panel.marks, patterns, draws).spacing_chance;
  });
  const double theirs_s = spatstat_s(panel);
  if (theirs_s <= 0 || chance <= 0) {
    std::fprintf(stderr, "bench-trade: envelope.R gave no time\n");
    std::exit(1);
  }
  std::printf("dirt scan %.1f ms, spatstat envelope(Gest) %.1f ms\n", ours_ms, 1000 * theirs_s);
  figure("dirt_over_spatstat", ours_ms / (1000 * theirs_s), "ratio");
}

const Part dirt_part(bench_dirt);

}  // namespace
}  // namespace jambline::bench
