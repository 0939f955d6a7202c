#include "screens/calendar_view_model.h"

#include <QLocale>
#include <algorithm>

#include "screens/typed_times.h"

namespace jambline::screens {

namespace {
constexpr int day_min = 1440;
constexpr int weekdays = 7;
constexpr int workdays = 5;

bool is_open(const job::OpenDay& day) {
  return day.to_min > day.from_min;
}

QString minute_words(int minute) {
  return QStringLiteral("%1:%2")
      .arg(minute / 60, 2, 10, QChar('0'))
      .arg(minute % 60, 2, 10, QChar('0'));
}

std::optional<int> typed_end(const QString& text) {
  static const QStringList midnight{QStringLiteral("24:00"), QStringLiteral("24.00"),
                                    QStringLiteral("2400")};
  return midnight.contains(text.trimmed()) ? std::optional(day_min) : typed_minute(text);
}

QString title_of(int weekday) {
  return QLocale().standaloneDayName(weekday + 1, QLocale::LongFormat);
}

QString words_of(const job::OpenDay& day) {
  return is_open(day) ? CalendarViewModel::tr("%1 to %2")
                            .arg(minute_words(day.from_min), minute_words(day.to_min))
                      : CalendarViewModel::tr("closed");
}

std::size_t at(int weekday) {
  return static_cast<std::size_t>(weekday);
}

// Nobody works then, nor up to then on that day.
bool is_shut(const job::Calendar& calendar, int day, int minute) {
  if (std::find(calendar.holidays.begin(), calendar.holidays.end(), day) != calendar.holidays.end())
    return true;
  const auto& hours = calendar.week[at((day + 3) % weekdays)];  // 1970-01-01 was a Thursday
  return !is_open(hours) || minute < hours.from_min;
}
}  // namespace

CalendarViewModel::CalendarViewModel(Session& session, QObject* parent)
    : QObject(parent),
      session_(session),
      week_({"key", "title", "words", "chosen"}, this),
      closed_({"key", "title", "words"}, this) {
  connect(&session, &Session::snapshotChanged, this, &CalendarViewModel::refresh);
  refresh();
}

bool CalendarViewModel::manager() const {
  const auto* one = session_.shop().find(session_.person());
  return one && one->role == job::Role::Manager;
}

void CalendarViewModel::refresh() {
  if (!manager()) {
    draft_.reset();
    day_ = -1;
  }
  std::vector<QVariantList> week;
  for (int i = 0; i < weekdays; ++i)
    week.push_back({i, title_of(i), words_of(now().week[at(i)]), i == day_});
  std::vector<QVariantList> closed;
  const int today = today_of(session_.now().wall_ms, session_.zone());
  for (const int day : now().holidays)
    if (day >= today)
      closed.push_back(
          {day, date_of_day(day),
           tr("%1, %2").arg(title_of((day + 3) % weekdays), days_apart_words(day, today))});
  week_.set(std::move(week));
  closed_.set(std::move(closed));
  emit changed();
}

QString CalendarViewModel::summary() const {
  int open_min = 0;
  for (const auto& day : now().week) open_min += day.to_min - day.from_min;
  const QString hours = tr("%1 a week").arg(hours_words(open_min * 60'000LL));
  if (closedCount() == 0) return hours;
  return closedCount() == 1 ? tr("%1, 1 day closed").arg(hours)
                            : tr("%1, %2 days closed").arg(hours).arg(closedCount());
}

job::OpenDay CalendarViewModel::chosen() const {
  return day_ < 0 ? job::OpenDay{} : now().week[at(day_)];
}

QString CalendarViewModel::dayTitle() const {
  return day_ < 0 ? QString() : title_of(day_);
}

bool CalendarViewModel::dayOpen() const {
  return is_open(chosen());
}

QString CalendarViewModel::opens() const {
  return dayOpen() ? minute_words(chosen().from_min) : QString();
}

QString CalendarViewModel::closes() const {
  return dayOpen() ? minute_words(chosen().to_min) : QString();
}

QString CalendarViewModel::waitsFor() const {
  if (!draft_) return tr("nothing is changed");
  if (!wrong_hours_.isEmpty()) return wrong_hours_;
  if (std::none_of(draft_->week.begin(), draft_->week.end(), is_open)) return tr("no day is open");
  return {};
}

QStringList CalendarViewModel::promised() const {
  QStringList out;
  const QString zone = session_.zone();
  const std::int64_t now_ms = session_.now().wall_ms;
  for (const auto& car : *session_.snapshot().floor) {
    if (car.delivered_ms || !car.promised_ms || *car.promised_ms < now_ms) continue;
    const int day = today_of(*car.promised_ms, zone);
    const auto from = wall_of(day, 0, zone);
    const auto minute = from ? static_cast<int>((*car.promised_ms - *from) / 60'000) : 0;
    if (!is_shut(now(), day, minute)) continue;
    const QString plate = QString::fromStdString(car.plate.empty() ? car.vin : car.plate);
    out << tr("%1 is promised for %2").arg(plate, time_words(*car.promised_ms, now_ms, zone));
  }
  return out;
}

void CalendarViewModel::open() {
  draft_.reset();
  day_ = -1;
  wrong_hours_.clear();
  wrong_day_.clear();
  refresh();
}

void CalendarViewModel::choose(int weekday) {
  if (!manager() || weekday < 0 || weekday >= weekdays) return;
  day_ = day_ == weekday ? -1 : weekday;
  wrong_hours_.clear();
  refresh();
}

void CalendarViewModel::set(job::Calendar next) {
  draft_ = next == session_.shop().calendar ? std::nullopt : std::optional(std::move(next));
  refresh();
}

void CalendarViewModel::setHours(const QString& opens, const QString& closes) {
  if (day_ < 0) return;
  const auto from = typed_minute(opens);
  const auto to = typed_end(closes);
  wrong_hours_ = !from || !to   ? tr("type a time like 8:00")
                 : *to <= *from ? tr("it closes before it opens")
                                : QString();
  if (!wrong_hours_.isEmpty()) {
    emit changed();
    return;
  }
  job::Calendar next = now();
  next.week[at(day_)] = {*from, *to};
  set(std::move(next));
}

void CalendarViewModel::closeDay() {
  if (day_ < 0) return;
  job::Calendar next = now();
  next.week[at(day_)] = {};
  wrong_hours_.clear();
  set(std::move(next));
}

void CalendarViewModel::openDay() {
  if (day_ < 0 || dayOpen()) return;
  job::Calendar next = now();
  job::OpenDay hours = job::usual_calendar().week.front();
  for (int back = 1; back < weekdays; ++back) {
    const auto& before = next.week[at((day_ - back + weekdays) % weekdays)];
    if (!is_open(before)) continue;
    hours = before;
    break;
  }
  next.week[at(day_)] = hours;
  set(std::move(next));
}

void CalendarViewModel::sameOnWeekdays() {
  if (day_ < 0) return;
  job::Calendar next = now();
  std::fill_n(next.week.begin(), workdays, chosen());
  set(std::move(next));
}

bool CalendarViewModel::addClosed(const QString& text) {
  const auto day = typed_day(text);
  const int today = today_of(session_.now().wall_ms, session_.zone());
  wrong_day_ = !day           ? tr("type a day like 12/25/2026")
               : *day < today ? tr("that day is over")
                              : QString();
  if (!wrong_day_.isEmpty()) {
    emit changed();
    return false;
  }
  job::Calendar next = now();
  const auto place = std::lower_bound(next.holidays.begin(), next.holidays.end(), *day);
  if (place == next.holidays.end() || *place != *day) next.holidays.insert(place, *day);
  set(std::move(next));
  return true;
}

void CalendarViewModel::takeClosed(int day) {
  job::Calendar next = now();
  std::erase(next.holidays, day);
  set(std::move(next));
}

void CalendarViewModel::keep() {
  if (!waitsFor().isEmpty()) return;
  session_.post(acts::SetCalendar{*draft_}, [this](const Result<engine::Wrote>& wrote) {
    if (!wrote) return;
    draft_.reset();
    day_ = -1;
    refresh();
  });
}

}  // namespace jambline::screens
