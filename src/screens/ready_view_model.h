// screens/ready_view_model.h: when the car on the tape will be ready, in a row, and opened to what
// that came from: each operation with its span and on how many own cars it rests, what is waited
// for, the open hours.
//
// Threads: GUI thread. Source: screens/floor_forecasts.h; the words: screens/forecast_words.h.
#pragma once

#include <QObject>
#include <qqmlregistration.h>

#include "screens/floor_forecasts.h"
#include "screens/forecast_words.h"
#include "screens/sum_rows.h"

namespace jambline::screens {

class ReadyViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Car")
  Q_PROPERTY(bool ofInterest READ ofInterest NOTIFY changed)  // a car in work with work left
  Q_PROPERTY(QString words READ words NOTIFY changed)  // "likely Fri 14:45 · 4 in 10 on time"
  Q_PROPERTY(int shape READ shape NOTIFY changed)      // StateKind
  Q_PROPERTY(jambline::screens::SumRows* sum READ sum CONSTANT)

 public:
  ReadyViewModel(Session& session, const FloorForecasts& forecasts, QObject* parent = nullptr);

  bool ofInterest() const;
  QString words() const;
  int shape() const;
  SumRows* sum() { return &sum_; }

  Q_INVOKABLE void open();  // fills the sum

 signals:
  void changed();

 private:
  const FloorForecasts::Known* known() const;
  ForecastWords said() const;
  std::vector<SumRows::Line> lines(const FloorForecasts::Known& known) const;

  Session& session_;
  const FloorForecasts& forecasts_;
  SumRows sum_;
};

}  // namespace jambline::screens
