#include "folds/dirt_question.h"

#include <map>
#include <unordered_map>

namespace jambline::folds {

namespace {

struct DirtSums {
  DirtRow row;
  std::vector<double> rates;
  void add(const Lesson& car, const std::string& plate) {
    const double rate = static_cast<double>(car.nibs) / car.sprayed_m2;
    ++row.cars;
    row.nibs += car.nibs;
    row.sprayed_m2 += car.sprayed_m2;
    rates.push_back(rate);
    row.cases.push_back({car.job, plate, car.sprayed_ms, rate});
  }
  DirtRow finished() {
    if (row.sprayed_m2 > 0) row.nibs_per_m2 = static_cast<double>(row.nibs) / row.sprayed_m2;
    row.of_cars = quartiles(std::move(rates));
    most_first(row.cases);
    return std::move(row);
  }
};

template <class Key>
std::vector<DirtRow> finished_rows(std::map<Key, DirtSums>& rows, bool most_area_first) {
  std::vector<DirtRow> out;
  out.reserve(rows.size());
  for (auto& [key, sums] : rows) out.push_back(sums.finished());
  if (most_area_first)
    std::stable_sort(out.begin(), out.end(),
                     [](const auto& a, const auto& b) { return a.sprayed_m2 > b.sprayed_m2; });
  return out;
}

}  // namespace

DirtAnswer dirt_question(const std::vector<Lesson>& lessons, const std::vector<Account>& accounts,
                         const Period& period, const std::string& zone) {
  std::unordered_map<JobId, const std::string*> plates;
  for (const auto& car : accounts) plates.emplace(car.job, &car.plate);
  DirtAnswer out;
  DirtSums all;
  std::map<std::string, DirtSums> months;
  std::map<std::optional<BoothId>, DirtSums> booths;
  std::map<PersonId, DirtSums> painters;
  Months names(zone);
  for (const auto& car : lessons) {
    if (!period.holds(car.sprayed_ms) || car.sprayed_m2 <= 0) continue;
    if (!car.counted) {
      ++out.left_out;
      continue;
    }
    const auto known = plates.find(car.job);
    const std::string plate = known == plates.end() ? std::string() : *known->second;
    all.add(car, plate);
    auto& month = months[names.of(car.sprayed_ms)];
    month.row.month = names.of(car.sprayed_ms);
    month.add(car, plate);
    auto& booth = booths[car.booth];
    booth.row.booth = car.booth;
    booth.add(car, plate);
    for (const auto& painter : car.painters) {
      painters[painter].row.painter = painter;
      painters[painter].add(car, plate);
    }
  }
  out.all = all.finished();
  out.months = finished_rows(months, false);
  out.booths = finished_rows(booths, true);
  out.painters = finished_rows(painters, true);
  return out;
}

}  // namespace jambline::folds
