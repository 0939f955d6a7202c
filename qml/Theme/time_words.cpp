#include "time_words.h"

#include <QDateTime>
#include <QLocale>
#include <algorithm>
#include <cmath>

namespace {

QString two(qint64 n) {
  return QStringLiteral("%1").arg(n, 2, 10, QLatin1Char('0'));
}

QString clockWords(qint64 s, bool always_hours) {
  const QString tail = two(s % 60);
  if (s >= 3600 || always_hours) {
    return QStringLiteral("%1:%2:%3").arg(QString::number(s / 3600), two(s / 60 % 60), tail);
  }
  return QStringLiteral("%1:%2").arg(QString::number(s / 60), tail);
}

}  // namespace

TimeWords::TimeWords(QObject* parent) : QObject(parent) {
  connect(this, &TimeWords::formChanged, this, &TimeWords::wordsChanged);
  connect(this, &TimeWords::secondsChanged, this, &TimeWords::wordsChanged);
  connect(this, &TimeWords::at_msChanged, this, &TimeWords::wordsChanged);
  connect(this, &TimeWords::now_msChanged, this, &TimeWords::wordsChanged);
  connect(this, &TimeWords::twelveHourChanged, this, &TimeWords::wordsChanged);
}

QString TimeWords::words() const {
  const double left = std::max(0.0, seconds_);
  switch (form_) {
    case Running:
      return clockWords(static_cast<qint64>(std::floor(left)), true);
    case Countdown:
      return clockWords(static_cast<qint64>(std::ceil(left)), false);
    case Duration: {
      const auto minutes = static_cast<qint64>(std::llround(left / 60));
      if (minutes < 60) {
        return tr("%1 min").arg(minutes);
      }
      return minutes % 60 == 0 ? tr("%1 h").arg(minutes / 60)
                               : tr("%1 h %2 min").arg(minutes / 60).arg(minutes % 60);
    }
    case Wall:
      return wall();
  }
  return {};
}

QString TimeWords::wall() const {
  const QLocale locale;
  const QDateTime at = QDateTime::fromMSecsSinceEpoch(static_cast<qint64>(at_ms_));
  const QDateTime now = QDateTime::fromMSecsSinceEpoch(static_cast<qint64>(now_ms_));
  const QString clock =
      locale.toString(at.time(), twelve_hour_ ? QStringLiteral("h:mm AP") : QStringLiteral("H:mm"));
  const qint64 days = std::abs(now.date().daysTo(at.date()));
  if (days == 0) {
    return clock;
  }
  if (days < 7) {
    return locale.toString(at.date(), QStringLiteral("ddd")) + QLatin1Char(' ') + clock;
  }
  const bool same_year = at.date().year() == now.date().year();
  return locale.toString(at.date(),
                         same_year ? QStringLiteral("MMM d") : QStringLiteral("MMM d, yyyy"));
}
