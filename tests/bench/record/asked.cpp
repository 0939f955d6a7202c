// questions_year_ms  the cars of one year at the engine, and every question answered of them.
// questions_all_ms   the same over all years; with questions_all_mb, what the cars take in memory.
#include "folds/due_question.h"
#include "folds/first_time_question.h"
#include "folds/flow_question.h"
#include "folds/hours_question.h"
#include "folds/late_question.h"
#include "folds/pictures_question.h"
#include "folds/spray_question.h"
#include "tests/bench/figures.h"
#include "tests/bench/log_rows.h"
#include "tests/bench/record/record_parts.h"

namespace jambline::bench {

namespace {
std::size_t answer_all(const OpenShop& shop, const folds::Period& period, std::size_t& cars) {
  std::vector<folds::Account> accounts;
  shop.engine->accounts(period.from_ms, period.to_ms, {},
                        [&](auto read) { accounts = read ? std::move(*read) : accounts; });
  shop.engine->drain();
  cars = accounts.size();
  const auto view = shop.engine->snapshot()->shop;
  const std::int64_t now_ms = shop.clock.now().wall_ms;
  std::size_t rows = 0;
  for (const auto by : {folds::HoursBy::Operation, folds::HoursBy::Person, folds::HoursBy::Month})
    rows += folds::hours_question(accounts, by, period, view->zone).rows.size();
  rows += folds::flow_question(accounts, period, view->zone).months.size();
  rows += folds::first_time_question(accounts, period, view->zone).months.size();
  rows += folds::spray_question(accounts, period, view->zone).people.size();
  rows += folds::due_question(accounts, *view, period, now_ms).rows.size();
  rows += folds::late_question(accounts, period, view->zone, now_ms).rows.size();
  rows += folds::pictures_question(accounts, *view, period).stages.size();
  return rows;
}
}  // namespace

void bench_questions(const std::filesystem::path& folder) {
  const OpenShop shop(folder);
  std::int64_t last_ms = 0;
  for (const auto& car : shop.find({}).cars) last_ms = std::max(last_ms, car.row.opened_ms);
  const folds::Period year{last_ms - 365 * 86'400'000LL, last_ms};
  std::vector<double> of_year, of_all;
  std::size_t cars = 0;
  for (int round = 0; round < 5; ++round) {
    std::size_t rows = 0;
    of_year.push_back(1000 * seconds([&] { rows = answer_all(shop, year, cars); }));
    must_be(rows > 0 && cars > 0, "no answer");
  }
  std::printf("questions of a year: %zu cars\n", cars);
  figure("questions_year_ms", median(of_year), "ms");
  const std::int64_t before_kb = memory_kb("VmRSS:");
  for (int round = 0; round < 3; ++round) {
    std::size_t rows = 0;
    of_all.push_back(1000 * seconds([&] { rows = answer_all(shop, {}, cars); }));
    must_be(rows > 0, "no answer");
  }
  std::printf("questions of all years: %zu cars\n", cars);
  figure("questions_all_ms", median(of_all), "ms");
  figure("questions_all_mb", static_cast<double>(memory_kb("VmHWM:") - before_kb) / 1024, "MB");
}

}  // namespace jambline::bench
