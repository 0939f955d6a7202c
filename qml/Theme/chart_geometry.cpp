#include "chart_geometry.h"

#include <QDate>
#include <QLocale>
#include <algorithm>
#include <array>
#include <cmath>
#include <initializer_list>
#include <numeric>

namespace jambline::theme {

namespace {
constexpr double least_view_days = 3;

QDate date_of(double day) {
  return QDate(1970, 1, 1).addDays(static_cast<qint64>(std::floor(day)));
}
double day_of(const QDate& date) {
  return static_cast<double>(QDate(1970, 1, 1).daysTo(date));
}
QString month_of(const QDate& date) {
  return QLocale().standaloneMonthName(date.month(), QLocale::ShortFormat);
}

std::vector<DayTick> by_days(double from, double to, int step) {
  std::vector<DayTick> out;
  double day = std::ceil(from);
  if (step == 7)
    while (date_of(day).dayOfWeek() != 1) ++day;
  for (; day <= to; day += step) {
    const QDate date = date_of(day);
    out.push_back({day, month_of(date) + QChar(' ') + QString::number(date.day())});
  }
  return out;
}

std::vector<DayTick> by_months(double from, double to, int step) {
  std::vector<DayTick> out;
  const QDate start = date_of(from);
  for (QDate date(start.year(), 1, 1); day_of(date) <= to; date = date.addMonths(step)) {
    if (day_of(date) < from) continue;
    out.push_back(
        {day_of(date), date.month() == 1 ? QString::number(date.year()) : month_of(date)});
  }
  return out;
}

// The first of a few steps in the unit 10^n whose ticks are few enough.
double round_step(double high, int most) {
  double unit = std::pow(10.0, std::floor(std::log10(high)) - 1);
  while (true) {
    for (const double part : {1.0, 2.0, 5.0})
      if (std::ceil(high / (part * unit) - 1e-9) + 1 <= most) return part * unit;
    unit *= 10;
  }
}
}  // namespace

std::vector<double> round_ticks(double high, int most) {
  if (!(high > 0) || !std::isfinite(high)) high = 1;
  const double step = round_step(high, std::max(2, most));
  const int count = static_cast<int>(std::ceil(high / step - 1e-9));
  std::vector<double> out;
  for (int i = 0; i <= count; ++i) out.push_back(i * step);
  return out;
}

QString tick_words(double value, double step) {
  const int places =
      step > 0 ? std::max(0, -static_cast<int>(std::floor(std::log10(step) + 1e-9))) : 0;
  return QLocale::c().toString(value, 'f', places);
}

std::vector<DayTick> day_ticks(double from_day, double to_day, int most) {
  if (!(to_day > from_day) || most < 1) return {};
  const auto few = [&](const std::vector<DayTick>& ticks) {
    return static_cast<int>(ticks.size()) <= most;
  };
  const double length = to_day - from_day;
  for (const int step : {1, 7})
    if (length / step <= most + 1)
      if (auto ticks = by_days(from_day, to_day, step); few(ticks)) return ticks;
  for (int step = 1;; step = step == 1 ? 3 : step == 3 ? 6 : step * 2)
    if (length / (28 * step) <= most + 2)
      if (auto ticks = by_months(from_day, to_day, step); few(ticks)) return ticks;
}

double chart_top(std::vector<double> values, std::vector<double> limits) {
  if (values.empty()) return 1;
  std::sort(values.begin(), values.end());
  const double most = values.back();
  const double usual = values[(values.size() - 1) * 98 / 100];
  double out = usual > 0 && most > 2.5 * usual ? 1.5 * usual : most;
  if (!limits.empty()) {
    const auto middle = limits.begin() + static_cast<std::ptrdiff_t>(limits.size() / 2);
    std::nth_element(limits.begin(), middle, limits.end());
    out = std::max(out, *middle);
  }
  return out > 0 ? out : 1;
}

DayView zoomed(const DayView& view, const DayView& whole, double factor, double at_day) {
  const double length =
      std::clamp(view.length_days() / factor, std::min(least_view_days, whole.length_days()),
                 whole.length_days());
  const double part = view.length_days() > 0 ? (at_day - view.from_day) / view.length_days() : 0.5;
  const double from = at_day - std::clamp(part, 0.0, 1.0) * length;
  return moved({from, from + length}, whole, 0);
}

DayView moved(const DayView& view, const DayView& whole, double by_days) {
  const double length = std::min(view.length_days(), whole.length_days());
  const double from = std::clamp(view.from_day + by_days, whole.from_day, whole.to_day - length);
  return {from, from + length};
}

namespace {
// One way to try: from the lowest lane or from the highest.
std::vector<LabelPlace> places_from(const std::vector<LabelWish>& wishes,
                                    const std::vector<std::size_t>& order, int lanes, double room,
                                    double gap, bool lowest_first) {
  std::vector<LabelPlace> out(wishes.size());
  // A label needs its own span in its lane, and its line needs its place in all lanes below.
  const auto free = [&](std::size_t self, int lane, double left) {
    const double right = left + wishes[self].width;
    for (std::size_t other = 0; other < wishes.size(); ++other) {
      const int its_lane = out[other].lane;
      if (other == self || its_lane < 0) continue;
      const double its_left = out[other].left;
      const double its_right = its_left + wishes[other].width;
      if (its_lane == lane && left < its_right + gap && its_left < right + gap) return false;
      if (its_lane > lane && wishes[other].at > left - gap && wishes[other].at < right + gap)
        return false;
      if (its_lane < lane && wishes[self].at > its_left - gap && wishes[self].at < its_right + gap)
        return false;
    }
    return true;
  };
  const auto try_at = [&](std::size_t self, std::initializer_list<double> lefts) {
    for (int i = 0; i < lanes && out[self].lane < 0; ++i) {
      const int lane = lowest_first ? i : lanes - 1 - i;
      for (const double left : lefts) {
        if (left < 0 || left + wishes[self].width > room || !free(self, lane, left)) continue;
        out[self] = {lane, left};
        break;
      }
    }
  };
  for (const std::size_t self : order) {
    const double at = wishes[self].at;
    const double width = wishes[self].width;
    try_at(self, {at, at - width});
    try_at(self, {std::min(at, room - width)});
  }
  return out;
}
}  // namespace

std::vector<LabelPlace> place_labels(const std::vector<LabelWish>& wishes, int lanes, double room,
                                     double gap) {
  std::vector<std::size_t> order(wishes.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return wishes[a].first > wishes[b].first; });
  const auto placed = [](const std::vector<LabelPlace>& places) {
    return std::count_if(places.begin(), places.end(),
                         [](const LabelPlace& place) { return place.lane >= 0; });
  };
  auto out = places_from(wishes, order, lanes, room, gap, true);
  auto other = places_from(wishes, order, lanes, room, gap, false);
  return placed(other) > placed(out) ? other : out;
}

int nearest(const std::vector<double>& xs, const std::vector<double>& ys, double x, double y,
            double reach) {
  int out = -1;
  double best = reach;
  for (std::size_t i = 0; i < std::min(xs.size(), ys.size()); ++i) {
    const double away = std::hypot(xs[i] - x, ys[i] - y);
    if (away > best) continue;
    best = away;
    out = static_cast<int>(i);
  }
  return out;
}

double log_place(double value, double reach) {
  if (!(value > 0)) return 0;
  return std::clamp(0.5 + std::log(value) / (2 * std::log(reach)), 0.0, 1.0);
}

}  // namespace jambline::theme
