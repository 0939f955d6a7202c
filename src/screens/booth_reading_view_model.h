// screens/booth_reading_view_model.h: one reading of a booth, typed on the big keys: air velocity
// at several points, filter pressure, exhaust, or how long the smoke of a test took.
//
// Typing:  type(value) takes the digits of the pad as they stand: hundredths, whole numbers, or
//          minutes and seconds, in the units of the device. What no instrument shows is refused in
//          words; what was typed before stands. keep() takes what is typed still, too.
// When:    now, until it is moved into the past; a time to come is refused in words.
// Threads: GUI thread. Other errors go to Session::failed.
#pragma once

#include <QObject>
#include <optional>
#include <qqmlregistration.h>
#include <vector>

#include "screens/row_list.h"
#include "screens/session.h"

namespace jambline::screens {

class BoothReadingViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  Q_PROPERTY(QString title READ title NOTIFY changed)
  Q_PROPERTY(int what READ what NOTIFY changed)  // job::BoothReading
  // Roles: key (job::BoothReading), title, chosen. Only what can be read there.
  Q_PROPERTY(QAbstractItemModel* whats READ whats CONSTANT)
  Q_PROPERTY(Pad pad READ pad NOTIFY changed)
  Q_PROPERTY(int digits READ digits NOTIFY changed)
  Q_PROPERTY(QString unit READ unit NOTIFY changed)
  Q_PROPERTY(QString label READ label NOTIFY changed)
  Q_PROPERTY(QString wrong READ wrong NOTIFY changed)
  Q_PROPERTY(bool several READ several NOTIFY changed)  // more than one value makes sense
  // Roles: key (number), words.
  Q_PROPERTY(QAbstractItemModel* values READ values CONSTANT)
  Q_PROPERTY(int valueCount READ valueCount NOTIFY changed)
  Q_PROPERTY(QString valueWords READ valueWords NOTIFY changed)  // "3 points, mean 102 ft/min"
  Q_PROPERTY(QString hint READ hint NOTIFY changed)              // how it is read
  // What the instrument may be off, in percent; "" where it does not matter.
  Q_PROPERTY(int instrument READ instrument WRITE set_instrument NOTIFY changed)
  Q_PROPERTY(QList<int> instruments READ instruments CONSTANT)
  Q_PROPERTY(QString whenWords READ whenWords NOTIFY changed)
  Q_PROPERTY(bool earlier READ earlier NOTIFY changed)
  Q_PROPERTY(bool mayKeep READ mayKeep NOTIFY changed)

 public:
  // In the order of the theme's KeyPad kinds: whole, tenths, hours, hundredths, minutes and
  // seconds.
  enum class Pad { Digits, Tenths, Hours, Hundredths, Clock };
  Q_ENUM(Pad)

  explicit BoothReadingViewModel(Session& session, QObject* parent = nullptr);

  QString title() const;
  int what() const { return static_cast<int>(what_); }
  QAbstractItemModel* whats() { return &whats_; }
  Pad pad() const;
  int digits() const;
  QString unit() const;
  QString label() const;
  QString wrong() const { return wrong_; }
  bool several() const { return what_ != job::BoothReading::FilterPressure; }
  QAbstractItemModel* values() { return &values_; }
  int valueCount() const { return static_cast<int>(typed_.size()); }
  QString valueWords() const;
  QString hint() const;
  int instrument() const { return instrument_percent_; }
  void set_instrument(int percent);
  QList<int> instruments() const;
  QString whenWords() const;
  bool earlier() const { return happened_ms_.has_value(); }
  bool mayKeep() const { return session_.hasPerson(); }

  Q_INVOKABLE void open(const QString& booth, int what);
  Q_INVOKABLE void choose(int what);
  Q_INVOKABLE void type(int value);  // of the pad; below 0: nothing is typed
  Q_INVOKABLE void drop(int key);
  Q_INVOKABLE void shift(int days);
  Q_INVOKABLE void sayNow();
  Q_INVOKABLE void keep(int pending);  // what is typed still, as for type()

 signals:
  void changed();
  void taken();  // the pad begins anew
  void kept();

 private:
  void show();
  const folds::BoothView* booth() const;
  // In the stored unit; none and `wrong_` when it is no reading.
  std::optional<double> value_of(int typed);
  QString words_of_value(double stored) const;

  Session& session_;
  RowList whats_;
  RowList values_;
  BoothId booth_;
  job::BoothReading what_{};
  std::vector<double> typed_;
  int instrument_percent_ = 5;
  std::optional<std::int64_t> happened_ms_;
  QString wrong_;
};

}  // namespace jambline::screens
