// forecast_14_ms    14 cars of 16 operations each, 10,000 trials a car, on a shop's opening hours.
// forecast_growth   10 to 1,000 operations, 1,000 trials: how much more time the most took than the
//                   least, over what n log n would give; 1 or less: no worse than n log n.
#include <cmath>

#include "tests/bench/figures.h"
#include "trade/ready_by.h"

namespace jambline::bench {
namespace {

// Two lanes that meet again and again, every seventh a wait, over a year of working days.
trade::ReadyBy car_of(int items, int trials, std::uint64_t seed) {
  trade::ReadyBy out;
  out.trials = trials;
  out.seed = seed;
  out.promised_min = 5 * 1440;
  for (int i = 0; i < items; ++i) {
    trade::WorkItem one{std::to_string(i), 10, 20.0 + i % 5, 60, i % 7 == 6, {}};
    if (i >= 2) one.after.push_back(std::to_string(i - 2));
    if (i >= 3 && i % 3 == 0) one.after.push_back(std::to_string(i - 3));
    out.work.push_back(std::move(one));
  }
  for (int day = 0; day < 365; ++day)
    if (day % 7 < 5) out.hours.push_back({day * 1440.0 + 450, day * 1440.0 + 1020});
  return out;
}

void must_answer(const trade::ReadyBy& in) {
  if (!trade::ready_by(in)) {
    std::fprintf(stderr, "bench-trade: no forecast\n");
    std::exit(1);
  }
}

void bench_forecast() {
  figure("forecast_14_ms", median_ms([] {
           for (std::uint64_t car = 1; car <= 14; ++car) must_answer(car_of(16, 10000, car));
         }),
         "ms");
  std::vector<std::pair<int, double>> times;
  for (const int items : {10, 30, 100, 300, 1000}) {
    const trade::ReadyBy in = car_of(items, 1000, 1);
    times.emplace_back(items, median_ms([&] { must_answer(in); }));
  }
  const auto n_log_n = [](double n) { return n * std::log(n); };
  double growth = 0;
  for (const auto& [items, ms] : times) {
    growth = ms / times.front().second / (n_log_n(items) / n_log_n(times.front().first));
    std::printf("forecast of %d operations %.2f ms, %.2f of n log n\n", items, ms, growth);
  }
  figure("forecast_growth", growth, "ratio");
}

const Part forecast_part(bench_forecast);

}  // namespace
}  // namespace jambline::bench
