#include "screens/forecast_words.h"

#include <QCoreApplication>
#include <cmath>

#include "base/spans.h"
#include "screens/sum_rows.h"
#include "screens/visit_words.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
constexpr double careful_under_percent = 50;  // design, no source

struct Forecasts {
  Q_DECLARE_TR_FUNCTIONS(Forecast)
};

// "1 h 15 min", "18 h", "3 days": whole quarters, from three hours on whole hours.
QString length_words(std::int64_t ms) {
  const std::int64_t step_ms = ms < 3 * hour_ms ? quarter_ms : hour_ms;
  const std::int64_t whole_ms = (ms + step_ms / 2) / step_ms * step_ms;
  if (whole_ms < day_ms) return duration_words(whole_ms);
  const auto days = ms / day_ms;
  return days == 1 ? Forecasts::tr("1 day") : Forecasts::tr("%1 days").arg(days);
}

QString slack_words(std::int64_t ms) {
  if (std::abs(ms) < quarter_ms / 2) return Forecasts::tr("nothing to spare");
  return ms >= 0 ? Forecasts::tr("%1 to spare").arg(length_words(ms))
                 : Forecasts::tr("%1 short").arg(length_words(-ms));
}

QString name_of(const folds::HoldView& hold) {
  const QString name = QString::fromStdString(hold.name);
  if (name.isEmpty()) return words_of(hold.reason);
  switch (hold.reason) {
    case job::WaitReason::Approval:
      return Forecasts::tr("approval: %1").arg(name);
    case job::WaitReason::Sublet:
      return Forecasts::tr("%1, outside").arg(name);
    default:
      return name;
  }
}

std::int64_t work_left_ms(const folds::Forecast& forecast) {
  double min = 0;
  if (forecast.asked)
    for (const auto& one : forecast.asked->work)
      if (!one.wait) min += one.likely_min;
  return static_cast<std::int64_t>(min * minute_ms);
}
}  // namespace

std::int64_t whole_quarter(std::int64_t wall_ms) {
  return (wall_ms + quarter_ms - 1) / quarter_ms * quarter_ms;
}

QString late_words(std::int64_t ms) {
  return Forecasts::tr("%1 late").arg(length_words(std::max(ms, quarter_ms)));
}

QString on_time_words(double percent) {
  return percent >= 95 ? Forecasts::tr("over 19 in 20") : chance_words(percent);
}

QString words_of(const folds::HoldView& hold, std::int64_t now_ms, const QString& zone) {
  const QString name = name_of(hold);
  if (!hold.until_ms) return Forecasts::tr("waits for %1, no date").arg(name);
  const QString at = time_words(*hold.until_ms, now_ms, zone);
  return *hold.until_ms > now_ms ? Forecasts::tr("waits for %1, %2").arg(name, at)
                                 : Forecasts::tr("waits for %1, was due %2").arg(name, at);
}

ForecastWords words_of(const FloorForecasts::Known& known, std::int64_t now_ms,
                       const QString& zone) {
  ForecastWords out;
  const auto promised_ms = known.row.promised_ms;
  if (promised_ms && *promised_ms < now_ms) {
    out.chance = late_words(now_ms - *promised_ms);
    out.about = Forecasts::tr("so far");
    out.outlook = Outlook::Trouble;
  }
  if (!known.forecast) {
    if (known.refused == Code::AlreadyDone)
      out.holds = known.row.operations.empty() ? Forecasts::tr("no work is planned")
                                               : Forecasts::tr("no work is left");
    if (known.refused != Code::NotYet) return out;
    out.holds = Forecasts::tr("the open hours end before the work does");
    out.outlook = Outlook::Trouble;
    return out;
  }
  const auto& said = *known.forecast;
  out.waits = said.held_by.has_value();
  out.holds = said.held_by ? words_of(*said.held_by, now_ms, zone)
                           : Forecasts::tr("%1 of work left").arg(hours_words(work_left_ms(said)));
  if (!said.likely_ms) {
    if (!promised_ms || out.outlook == Outlook::Trouble) return out;
    out.chance = Forecasts::tr("no date");
    out.about = Forecasts::tr("yet");
    out.outlook = Outlook::Careful;
    return out;
  }
  out.likely = time_words(whole_quarter(*said.likely_ms), now_ms, zone);
  out.earliest = time_words(whole_quarter(*said.earliest_ms), now_ms, zone);
  const bool same_day = day_words(whole_quarter(*said.likely_ms), zone) ==
                        day_words(whole_quarter(*said.earliest_ms), zone);
  out.span = Forecasts::tr("likely %1, earliest %2")
                 .arg(out.likely, same_day ? clock_words(whole_quarter(*said.earliest_ms), zone)
                                           : out.earliest);
  if (said.slack_ms) out.slack = slack_words(*said.slack_ms);
  if (promised_ms && *said.earliest_ms > *promised_ms) {
    out.chance = late_words(*said.earliest_ms - *promised_ms);
    out.about = Forecasts::tr("at best");
    out.outlook = Outlook::Trouble;
    return out;
  }
  if (!said.promise_percent) return out;
  out.chance = on_time_words(*said.promise_percent);
  out.about = Forecasts::tr("on time");
  const auto whole = std::lround(*said.promise_percent);
  out.percent = whole < 1    ? Forecasts::tr("under 1 %")
                : whole > 99 ? Forecasts::tr("over 99 %")
                             : Forecasts::tr("%1 %").arg(whole);
  if (*said.promise_percent < careful_under_percent) out.outlook = Outlook::Careful;
  return out;
}

}  // namespace jambline::screens
