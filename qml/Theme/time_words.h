// TimeWords: how a time is written (the table "Numbers, units, times" of the words guide).
// form: Running h:mm:ss; Countdown m:ss, from an hour on h:mm:ss; Duration "14 min", "2 h 10 min";
// Wall: today without a date, within six days "Tue 15:40", else "Nov 24" (with the year when it
// differs). seconds: for the first three (negative counts as 0; a countdown rounds up, so that it
// never says less than is left). at_ms, now_ms: UTC for Wall, shown in the system's zone.
// twelveHour: "4:30 PM". words: the result.
#pragma once

#include <QObject>
#include <QtQml/qqmlregistration.h>

class TimeWords : public QObject {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(Form form MEMBER form_ NOTIFY formChanged)
  Q_PROPERTY(double seconds MEMBER seconds_ NOTIFY secondsChanged)
  Q_PROPERTY(double at_ms MEMBER at_ms_ NOTIFY at_msChanged)
  Q_PROPERTY(double now_ms MEMBER now_ms_ NOTIFY now_msChanged)
  Q_PROPERTY(bool twelveHour MEMBER twelve_hour_ NOTIFY twelveHourChanged)
  Q_PROPERTY(QString words READ words NOTIFY wordsChanged)
 public:
  enum Form { Running, Countdown, Duration, Wall };
  Q_ENUM(Form)

  explicit TimeWords(QObject* parent = nullptr);
  QString words() const;

 signals:
  void formChanged();
  void secondsChanged();
  void at_msChanged();
  void now_msChanged();
  void twelveHourChanged();
  void wordsChanged();

 private:
  QString wall() const;

  Form form_ = Running;
  double seconds_ = 0.0;
  double at_ms_ = 0.0;
  double now_ms_ = 0.0;
  bool twelve_hour_ = false;
};
