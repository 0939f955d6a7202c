// shortest_walk of trade/correction_plan.h: Held and Karp 1962 for few places.
#include <algorithm>
#include <limits>
#include <numeric>

#include "trade/correction_plan.h"

namespace jambline::trade {

namespace {
constexpr std::size_t most_exact = 12;

std::vector<std::size_t> exact(const std::vector<Point_mm>& places) {
  const std::size_t n = places.size();
  const std::size_t sets = std::size_t{1} << n;
  std::vector<double> best(sets * n, std::numeric_limits<double>::infinity());
  std::vector<std::uint8_t> from(sets * n, 0);
  std::vector<double> apart(n * n);
  for (std::size_t i = 0; i < n; ++i)
    for (std::size_t j = 0; j < n; ++j) apart[i * n + j] = distance_mm(places[i], places[j]);
  for (std::size_t i = 0; i < n; ++i) best[(std::size_t{1} << i) * n + i] = 0;
  for (std::size_t set = 1; set < sets; ++set)
    for (std::size_t last = 0; last < n; ++last) {
      const double so_far = best[set * n + last];
      if (so_far == std::numeric_limits<double>::infinity()) continue;
      for (std::size_t next = 0; next < n; ++next) {
        if (set >> next & 1U) continue;
        const std::size_t with = (set | std::size_t{1} << next) * n + next;
        const double length = so_far + apart[last * n + next];
        if (length < best[with]) {
          best[with] = length;
          from[with] = static_cast<std::uint8_t>(last);
        }
      }
    }
  std::size_t set = sets - 1;
  std::size_t at = 0;
  for (std::size_t i = 1; i < n; ++i)
    if (best[set * n + i] < best[set * n + at]) at = i;
  std::vector<std::size_t> out;
  while (set != 0) {
    out.push_back(at);
    const std::size_t before = from[set * n + at];
    set &= ~(std::size_t{1} << at);
    at = before;
  }
  // Either way round is as long: the one that begins nearer to the front of the list.
  if (out.front() > out.back()) std::reverse(out.begin(), out.end());
  return out;
}

std::vector<std::size_t> near_enough(const std::vector<Point_mm>& places) {
  std::vector<std::size_t> out{0};
  std::vector<bool> been(places.size(), false);
  been[0] = true;
  while (out.size() < places.size()) {
    std::size_t best = places.size();
    for (std::size_t i = 0; i < places.size(); ++i)
      if (!been[i] && (best == places.size() || distance_mm(places[out.back()], places[i]) <
                                                    distance_mm(places[out.back()], places[best])))
        best = i;
    been[best] = true;
    out.push_back(best);
  }
  const auto leg = [&](std::size_t i, std::size_t j) {
    return distance_mm(places[out[i]], places[out[j]]);
  };
  for (bool better = true; better;) {
    better = false;
    for (std::size_t i = 0; i + 1 < out.size(); ++i)
      for (std::size_t j = i + 1; j < out.size(); ++j) {
        double before = 0, after = 0;
        if (i > 0) before += leg(i - 1, i), after += leg(i - 1, j);
        if (j + 1 < out.size()) before += leg(j, j + 1), after += leg(i, j + 1);
        if (after + 1e-9 < before) {
          std::reverse(out.begin() + static_cast<std::ptrdiff_t>(i),
                       out.begin() + static_cast<std::ptrdiff_t>(j) + 1);
          better = true;
        }
      }
  }
  return out;
}
}  // namespace

std::vector<std::size_t> shortest_walk(const std::vector<Point_mm>& places) {
  if (places.empty()) return {};
  if (places.size() == 1) return {0};
  return places.size() <= most_exact ? exact(places) : near_enough(places);
}

}  // namespace jambline::trade
