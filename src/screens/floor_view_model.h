// screens/floor_view_model.h: the cars in the shop, first those that wait for the person who taps.
//
// Order:   in each group trouble first (late, then disputed), then by promise. Delivered cars are
//          not here. `rows` has the roles listed in floor_view_model.cpp; a row's key is its job.
// Threads: GUI thread.
#pragma once

#include <QAbstractItemModel>
#include <QObject>
#include <qqmlregistration.h>

#include "screens/row_model.h"
#include "screens/session.h"

namespace jambline::screens {

struct FloorLine {
  QString key;
  QString group;
  QString plate;
  QString car;       // "green hatchback"
  QString next;      // the next act: "Look over 3 panels"
  QString who;       // "you", "painter", "Mara and Jo"
  QString due;       // "due 16:30"
  QString promised;  // "16:30", or "no promise"
  QString late;      // "1 h late", empty when it is not
  QString held;      // "Do not drive until 15:40", empty when nothing holds it
  int state = 0;     // StateKind
  double done = 0;   // 0 to 1, stages done
  QString progress;  // "4 of 9 stages"
  QString stages;    // "4/9"
  QString hours;     // "2.3 h of 6.1 h", of all operations; alone where nothing is planned
  bool disputed = false;
  bool read_only = false;
  bool on_tape = false;
  friend bool operator==(const FloorLine&, const FloorLine&) = default;
};

class FloorViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  Q_PROPERTY(QAbstractItemModel* rows READ rows CONSTANT)
  Q_PROPERTY(int cars READ cars NOTIFY changed)
  Q_PROPERTY(QString countWords READ countWords NOTIFY changed)  // "14 cars · 2 wait for you"

 public:
  explicit FloorViewModel(Session& session, QObject* parent = nullptr);

  QAbstractItemModel* rows() const { return model_; }
  int cars() const { return static_cast<int>(model_->rows().size()); }
  QString countWords() const;

  Q_INVOKABLE void open(const QString& jobId) { session_.openCar(jobId); }
  Q_INVOKABLE QString jobIdAt(int row) const;  // empty: there is no such row

 signals:
  void changed();

 private:
  void rebuild();
  void second_passed();

  Session& session_;
  RowModel<FloorLine>* model_;
  int for_you_ = 0;
  int seconds_ = 0;
};

}  // namespace jambline::screens
