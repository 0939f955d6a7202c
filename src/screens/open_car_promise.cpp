// When the new car is promised for: two usual answers, or a day and an hour.
#include "base/zones.h"
#include "screens/open_car_view_model.h"
#include "screens/spans.h"

namespace jambline::screens {

namespace {
constexpr int close_min = 16 * 60 + 30;
constexpr int days_shown = 7;
constexpr int hours_min[] = {8 * 60, 10 * 60, noon_min, 14 * 60, close_min, 18 * 60};
}  // namespace

// From noon to noon, so that no change of the clocks moves the day.
std::optional<std::int64_t> OpenCarViewModel::at(int day, int minute_of_day) const {
  const std::string zone = session_.zone().toStdString();
  const auto today = local_date_at(zone, session_.now().wall_ms);
  if (!today) return std::nullopt;
  const auto noon = utc_of(zone, *today, noon_min);
  if (!noon) return std::nullopt;
  const auto date = local_date_at(zone, *noon + day * day_ms);
  if (!date) return std::nullopt;
  const auto when = utc_of(zone, *date, minute_of_day);
  return when ? std::optional(*when) : std::nullopt;
}

void OpenCarViewModel::choosePromise(const QString& key) {
  if (key == QLatin1String("today")) draft_.promised_ms = at(0, close_min);
  if (key == QLatin1String("tomorrow")) draft_.promised_ms = at(1, noon_min);
  if (key == QLatin1String("none")) draft_.promised_ms.reset();
  keep();
}

void OpenCarViewModel::chooseDay(const QString& key) {
  int minute = close_min;
  for (int day = 0; day < days_shown; ++day)
    for (const int hour : hours_min)
      if (draft_.promised_ms && at(day, hour) == draft_.promised_ms) minute = hour;
  draft_.promised_ms = at(key.toInt(), minute);
  keep();
}

void OpenCarViewModel::chooseTime(const QString& key) {
  int chosen = 0;
  for (int day = 0; day < days_shown; ++day) {
    const auto from = at(day, 0);
    const auto to = at(day + 1, 0);
    if (draft_.promised_ms && from && to && *draft_.promised_ms >= *from &&
        *draft_.promised_ms < *to)
      chosen = day;
  }
  draft_.promised_ms = at(chosen, key.toInt());
  keep();
}

void OpenCarViewModel::refresh_promise() {
  const QString zone = session_.zone();
  const auto same = [&](std::optional<std::int64_t> when) {
    return when && draft_.promised_ms && *when == *draft_.promised_ms;
  };
  const auto today = at(0, close_min);
  const auto tomorrow = at(1, noon_min);
  std::vector<QVariantList> promises;
  if (today && *today > session_.now().wall_ms)
    promises.push_back(
        {QStringLiteral("today"), tr("Today %1").arg(clock_words(*today, zone)), same(today)});
  if (tomorrow)
    promises.push_back({QStringLiteral("tomorrow"),
                        tr("Tomorrow %1").arg(clock_words(*tomorrow, zone)), same(tomorrow)});
  promises.push_back({QStringLiteral("none"), tr("Not promised"), !draft_.promised_ms});
  promises_.set(std::move(promises));
  std::vector<QVariantList> days;
  std::vector<QVariantList> times;
  const QString chosen_day = draft_.promised_ms ? day_words(*draft_.promised_ms, zone) : QString();
  for (int day = 0; day < days_shown; ++day) {
    const auto noon = at(day, noon_min);
    if (noon)
      days.push_back(
          {QString::number(day), day_words(*noon, zone), day_words(*noon, zone) == chosen_day});
  }
  for (const int hour : hours_min) {
    const auto when = at(0, hour);
    if (!when) continue;
    const QString words = clock_words(*when, zone);
    times.push_back({QString::number(hour), words,
                     draft_.promised_ms && clock_words(*draft_.promised_ms, zone) == words});
  }
  days_.set(std::move(days));
  times_.set(std::move(times));
}

QString OpenCarViewModel::promised() const {
  if (!draft_.promised_ms) return tr("Not promised");
  return day_words(*draft_.promised_ms, session_.zone()) + QStringLiteral(" ") +
         clock_words(*draft_.promised_ms, session_.zone());
}

}  // namespace jambline::screens
