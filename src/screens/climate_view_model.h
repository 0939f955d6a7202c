// screens/climate_view_model.h: the air that is sprayed in: air, surface and humidity as typed, and
// whether the paint may go on now or waits, with the reason.
//
// Typing:  one number after the other on the pad; the last one shows the answer. Nothing is written
//          before keep().
// Window:  that of all products mixed for the car in the last 12 hours, the narrower of each; no
//          mix: the usual gates only.
// Said:    "Go" and "Wait" are about the paint; nothing here says anything on health.
// Threads: GUI thread. Errors go to Session::failed.
#pragma once

#include <QObject>
#include <array>
#include <optional>
#include <qqmlregistration.h>

#include "screens/row_list.h"
#include "screens/session.h"
#include "screens/sum_rows.h"
#include "trade/climate.h"

namespace jambline::screens {

class ClimateViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Owned by SprayedViewModel")
  Q_PROPERTY(QAbstractItemModel* booths READ booths CONSTANT)  // key, title, chosen
  Q_PROPERTY(int boothCount READ boothCount NOTIFY changed)
  Q_PROPERTY(QAbstractItemModel* fields READ fields CONSTANT)  // key (row), title, words, chosen
  Q_PROPERTY(QString fieldTitle READ fieldTitle NOTIFY changed)
  Q_PROPERTY(QString unitWords READ unitWords NOTIFY changed)
  Q_PROPERTY(int digits READ digits NOTIFY changed)
  Q_PROPERTY(QString typed READ typed WRITE setTyped NOTIFY typedChanged)  // on the pad
  Q_PROPERTY(QString wrong READ wrong NOTIFY changed)
  Q_PROPERTY(bool complete READ complete NOTIFY changed)
  Q_PROPERTY(QString answer READ answer NOTIFY changed)  // "Wait"; "" not complete
  Q_PROPERTY(QString reason READ reason NOTIFY changed)
  Q_PROPERTY(int answerShape READ answerShape NOTIFY changed)
  Q_PROPERTY(QString windowWords READ windowWords NOTIFY changed)  // whose window it is
  Q_PROPERTY(
      QAbstractItemModel* gates READ gates CONSTANT)  // key, title, value, limit, shape, spoken
  Q_PROPERTY(QString mainText READ mainText NOTIFY changed)
  Q_PROPERTY(QString mainSecond READ mainSecond NOTIFY changed)
  Q_PROPERTY(bool mainWaits READ mainWaits NOTIFY changed)
  Q_PROPERTY(jambline::screens::SumRows* sum READ sum CONSTANT)
  // The last reading that was kept on the car, in a line of its own.
  Q_PROPERTY(QString lastWords READ lastWords NOTIFY changed)
  Q_PROPERTY(int lastShape READ lastShape NOTIFY changed)

 public:
  explicit ClimateViewModel(Session& session, QObject* parent = nullptr);

  QAbstractItemModel* booths() { return &booths_; }
  int boothCount() const { return booths_.rowCount(); }
  QAbstractItemModel* fields() { return &fields_; }
  QString fieldTitle() const;
  QString unitWords() const;
  int digits() const;
  QString typed() const { return typed_; }
  void setTyped(const QString& typed);
  QString wrong() const { return wrong_; }
  bool complete() const { return asked().has_value(); }
  QString answer() const;
  QString reason() const;
  int answerShape() const;
  QString windowWords() const;
  QAbstractItemModel* gates() { return &gates_; }
  QString mainText() const;
  QString mainSecond() const;
  bool mainWaits() const;
  SumRows* sum() { return &sum_; }
  QString lastWords() const;
  int lastShape() const;
  std::optional<trade::Climate> asked() const;  // as the calculation takes it

  Q_INVOKABLE void begin();
  Q_INVOKABLE void chooseBooth(const QString& booth);
  Q_INVOKABLE void chooseField(int field);
  Q_INVOKABLE void type(int value);  // of the chosen field; the next one comes
  Q_INVOKABLE void act();            // takes what is on the pad, else keeps
  Q_INVOKABLE void openSum();

 signals:
  void changed();
  void typedChanged();
  void kept();
  void sumOpened();

 private:
  enum class Number : std::uint8_t { Air, Surface, Humidity };
  void refresh();
  void work_out();
  trade::Climate with_window(trade::Climate climate) const;
  QString number_words(Number field) const;
  QString gate_words(const trade::ClimateCheck& check) const;
  std::optional<double> stored(Number field, double shown) const;
  void keep();

  Session& session_;
  RowList booths_, fields_, gates_;
  SumRows sum_;
  std::optional<JobId> job_;
  std::optional<BoothId> booth_;
  Number field_ = Number::Air;
  std::array<std::optional<double>, 3> values_;
  QString typed_;
  QString wrong_;
  std::optional<Result<trade::ClimateResult>> result_;
};

}  // namespace jambline::screens
