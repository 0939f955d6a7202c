#include "screens/floor_forecasts.h"

#include <algorithm>

#include "base/spans.h"
#include "screens/clocks.h"

namespace jambline::screens {

namespace {
constexpr std::size_t cars_at_once = 6;

std::shared_ptr<const folds::ShopView> with_zone(std::shared_ptr<const folds::ShopView> shop,
                                                 const std::string& zone) {
  if (shop->zone == zone) return shop;
  auto filled = std::make_shared<folds::ShopView>(*shop);
  filled->zone = zone;
  return filled;
}

// As if every clock had been stopped now.
folds::FloorRow as_of(const folds::FloorRow& row, const Moment& now) {
  folds::FloorRow out = row;
  for (auto& operation : out.operations) operation.clocked_ms = used_ms(row, operation, now);
  return out;
}
}  // namespace

struct FloorForecasts::Round {
  std::uint64_t number{};
  std::shared_ptr<const folds::ShopView> shop;
  folds::LearnedDurations learned;
  Moment now;
  std::vector<Known> cars;
  std::size_t worked_out = 0;
};

FloorForecasts::FloorForecasts(Session& session, QObject* parent)
    : QObject(parent), session_(session), asked_(std::make_shared<std::atomic<std::uint64_t>>(0)) {
  connect(&session, &Session::snapshotChanged, this, &FloorForecasts::follow);
  connect(&session, &Session::secondPassed, this, &FloorForecasts::look);
}

const FloorForecasts::Known* FloorForecasts::of(const JobId& job) const {
  const auto found = known_.find(job);
  return found == known_.end() ? nullptr : &found->second;
}

void FloorForecasts::look() {
  if (!wanted_) session_.engine().want_lessons();
  wanted_ = true;
  follow();
}

void FloorForecasts::learn() {
  lessons_ = session_.snapshot().lessons;
  session_.calculate(this, [this, lessons = lessons_]() -> std::function<void()> {
    folds::LearnedDurations learned;
    for (const auto& lesson : *lessons) learned.add(lesson);
    return [this, lessons, learned = std::move(learned)] {
      if (lessons != lessons_) return;
      if (!begun_ || learned != learned_) {
        learned_ = learned;
        quarter_ = -1;
      }
      begun_ = true;
      follow();
    };
  });
}

void FloorForecasts::follow() {
  if (!wanted_) return;
  const auto& now = session_.snapshot();
  if (now.lessons && now.lessons != lessons_) learn();
  if (!begun_) return;
  const std::int64_t quarter = session_.now().wall_ms / quarter_ms;
  const std::string zone = session_.zone().toStdString();
  const bool all = quarter != quarter_ || zone != zone_ || now.shop->calendar != calendar_;
  if (!all && now.floor == floor_) return;
  if (all) ++of_all_;
  quarter_ = quarter;
  zone_ = zone;
  calendar_ = now.shop->calendar;
  floor_ = now.floor;
  std::erase_if(known_, [&](const auto& known) {
    return std::none_of(floor_->begin(), floor_->end(),
                        [&](const auto& row) { return row.job == known.first; });
  });
  std::vector<folds::FloorRow> cars;
  for (const auto& row : *floor_) {
    if (row.delivered_ms) continue;
    const Known* known = of(row.job);
    if (!known || known->of_all != of_all_ || known->row != row) cars.push_back(row);
  }
  ask(std::move(cars));
}

void FloorForecasts::ask(std::vector<folds::FloorRow> cars) {
  const std::uint64_t number = ++*asked_;
  waiting_ = !cars.empty();
  if (!waiting_) {
    emit changed();
    return;
  }
  auto round = std::make_shared<Round>();
  round->number = number;
  round->shop = with_zone(session_.snapshot().shop, zone_);
  round->learned = learned_;
  round->now = session_.now();
  for (auto& row : cars)
    round->cars.push_back({std::move(row), round->now.wall_ms, {}, {}, of_all_});
  go_on(round);
}

void FloorForecasts::go_on(const std::shared_ptr<Round>& round) {
  session_.calculate(this, [this, round, newest = asked_]() -> std::function<void()> {
    if (*newest != round->number) return [] {};
    const std::size_t end = std::min(round->cars.size(), round->worked_out + cars_at_once);
    for (; round->worked_out < end; ++round->worked_out) {
      Known& car = round->cars[round->worked_out];
      auto forecast = folds::forecast_of(as_of(car.row, round->now), *round->shop, round->learned,
                                         round->now.wall_ms);
      if (forecast)
        car.forecast = std::move(*forecast);
      else
        car.refused = forecast.error().code;
    }
    return [this, round] { take(round); };
  });
}

void FloorForecasts::take(const std::shared_ptr<Round>& round) {
  if (round->number != *asked_) return;
  if (round->worked_out < round->cars.size()) {
    go_on(round);
    return;
  }
  for (auto& car : round->cars) {
    const JobId job = car.row.job;
    known_.insert_or_assign(job, std::move(car));
  }
  waiting_ = false;
  emit changed();
}

}  // namespace jambline::screens
