// screens/bake_view_model.h: baking the car: the carmaker's limit, start and end, and how near the
// panels come to that limit.
//
// Limit:   read before a hybrid, electric or gas car is baked, and shown on any other once it was
//          read; of two the lower and the shorter. From 5 C under it, or at its time, `warning` is
//          set: by what was read on the panels since the bake began, never by the air.
// Booth:   a bake that begins while the booth's air is counted says so to the booth: it never
// counts
//          as clearing.
// Threads: GUI thread. Errors go to Session::failed.
#pragma once

#include <QObject>
#include <optional>
#include <qqmlregistration.h>

#include "screens/row_list.h"
#include "screens/session.h"

namespace jambline::screens {

class BakeViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Owned by SprayedViewModel")
  Q_PROPERTY(bool needsLimit READ needsLimit NOTIFY changed)
  Q_PROPERTY(bool hasLimit READ hasLimit NOTIFY changed)
  Q_PROPERTY(QString driveWords READ driveWords NOTIFY changed)
  Q_PROPERTY(QString limitWords READ limitWords NOTIFY changed)
  Q_PROPERTY(bool running READ running NOTIFY changed)
  Q_PROPERTY(QString stateWords READ stateWords NOTIFY changed)  // in one line
  Q_PROPERTY(int stateShape READ stateShape NOTIFY changed)
  Q_PROPERTY(QString warning READ warning NOTIFY changed)  // "" none
  Q_PROPERTY(QString mainText READ mainText NOTIFY changed)
  Q_PROPERTY(QString mainSecond READ mainSecond NOTIFY changed)
  Q_PROPERTY(bool mainWaits READ mainWaits NOTIFY changed)
  // Typing the limit: its temperature, then its minutes, then where the carmaker says so.
  Q_PROPERTY(QAbstractItemModel* fields READ fields CONSTANT)  // key (row), title, words, chosen
  Q_PROPERTY(bool limitTyped READ limitTyped NOTIFY changed)   // both numbers are there
  Q_PROPERTY(QString fieldTitle READ fieldTitle NOTIFY changed)
  Q_PROPERTY(QString unitWords READ unitWords NOTIFY changed)
  Q_PROPERTY(int digits READ digits NOTIFY changed)
  Q_PROPERTY(QString typed READ typed WRITE setTyped NOTIFY typedChanged)
  Q_PROPERTY(QString wrong READ wrong NOTIFY changed)
  Q_PROPERTY(QString keepText READ keepText NOTIFY changed)
  Q_PROPERTY(QString keepSecond READ keepSecond NOTIFY changed)

 public:
  explicit BakeViewModel(Session& session, QObject* parent = nullptr);

  bool needsLimit() const;
  bool hasLimit() const;
  QString driveWords() const;
  QString limitWords() const;
  bool running() const;
  QString stateWords() const;
  int stateShape() const;
  QString warning() const;
  QString mainText() const;
  QString mainSecond() const;
  bool mainWaits() const;
  QAbstractItemModel* fields() { return &fields_; }
  bool limitTyped() const { return most_c_ && most_min_; }
  QString fieldTitle() const;
  QString unitWords() const;
  int digits() const;
  QString typed() const { return typed_; }
  void setTyped(const QString& typed);
  QString wrong() const { return wrong_; }
  QString keepText() const;
  QString keepSecond() const;

  Q_INVOKABLE void act();         // starts or ends the bake
  Q_INVOKABLE void beginLimit();  // nothing is typed yet
  Q_INVOKABLE void chooseField(int field);
  Q_INVOKABLE void type(int value);
  Q_INVOKABLE void takeOrKeep(const QString& source);  // what is on the pad first
  Q_INVOKABLE bool keepWaits(const QString& source) const;

 signals:
  void changed();
  void typedChanged();
  void limitKept();

 private:
  void refresh();
  void show_fields();
  const folds::BakeView* now() const;  // null: it was never baked
  std::optional<double> hottest_c() const;

  Session& session_;
  RowList fields_;
  int field_ = 0;
  std::optional<double> most_c_;
  std::optional<double> most_min_;
  QString typed_;
  QString wrong_;
  std::optional<JobId> job_;
};

}  // namespace jambline::screens
