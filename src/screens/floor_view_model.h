// screens/floor_view_model.h: the cars in the shop, first those that wait for the person who taps.
//
// Order:   screens/floor_order.h. Delivered cars are not here. `rows` has the roles listed in
//          floor_view_model.cpp; a row's key is its job.
// Ready:   when each will be ready and how likely its promise is, once follow() has given it the
//          forecasts; what the person does next stands on one row at most (nextText) and is begun
//          by startNext(): the clock goes there. Spraying is not begun from here: gunAsked().
// Threads: GUI thread.
#pragma once

#include <QAbstractItemModel>
#include <QObject>
#include <qqmlregistration.h>

#include "screens/floor_order.h"
#include "screens/row_model.h"
#include "screens/session.h"

namespace jambline::screens {

struct FloorLine {
  QString key;
  QString group;
  QString plate;
  QString car;         // "green hatchback"
  QString next;        // the next act: "Look over 3 panels"
  QString who;         // "you", "painter", "Mara and Jo"
  QString due;         // "due 16:30"
  QString promised;    // "16:30", or "no promise"
  QString chance;      // "4 in 10", "1 h late"; empty: nothing is known
  QString about;       // of the chance: "on time", "at best"
  QString percent;     // "41 %"
  int outlook = 0;     // Outlook
  QString ready;       // "likely Fri 14:45"; empty: nobody can say
  QString earliest;    // "earliest Fri 11:00"
  QString holds;       // what holds it: "waits for left lamp, Fri 12:00"
  QString slack;       // "2 h to spare"
  bool waits = false;  // holds is something that is waited for
  QString line;        // of these what a card says
  QString nextText;    // "Start correct", on the row that is next for the person
  QString nextWhy;     // "first: promised 16:30"
  QString held;        // "Do not drive until 15:40", empty when nothing holds it
  int state = 0;       // StateKind
  double done = 0;     // 0 to 1, stages done
  QString progress;    // "4 of 9 stages"
  QString stages;      // "4/9"
  QString hours;       // "2.3 h of 6.1 h", of all operations; alone where nothing is planned
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
  // What the person does next, for where no card says it; "" nothing.
  Q_PROPERTY(QString nextText READ nextText NOTIFY changed)
  Q_PROPERTY(QString nextWhy READ nextWhy NOTIFY changed)
  Q_PROPERTY(QString nextCar READ nextCar NOTIFY changed)  // "K 41-206"

 public:
  explicit FloorViewModel(Session& session, QObject* parent = nullptr);
  void follow(FloorForecasts& forecasts);

  QAbstractItemModel* rows() const { return model_; }
  int cars() const { return static_cast<int>(model_->rows().size()); }
  QString countWords() const;
  QString nextText() const { return next_text_; }
  QString nextWhy() const { return next_why_; }
  QString nextCar() const { return next_car_; }

  Q_INVOKABLE void open(const QString& jobId) { session_.openCar(jobId); }
  Q_INVOKABLE QString jobIdAt(int row) const;  // empty: there is no such row
  Q_INVOKABLE void startNext();
  void rebuild();

 signals:
  void aboutToChange();  // before rows move: who stands at the first one stays there
  void changed();
  void nextStarted(const QString& jobId);
  void gunAsked(const QString& jobId);

 private:
  void second_passed();

  FloorLine line_of(const folds::FloorRow& car, bool for_you) const;
  void say_ready(const folds::FloorRow& car, FloorLine& line) const;
  void say_next(const std::vector<std::pair<const folds::FloorRow*, const folds::Forecast*>>& cars,
                std::vector<FloorLine>& lines);

  Session& session_;
  FloorForecasts* forecasts_ = nullptr;
  RowModel<FloorLine>* model_;
  std::optional<NextForPerson> next_;
  QString next_text_;
  QString next_why_;
  QString next_car_;
  int for_you_ = 0;
  int seconds_ = 0;
};

}  // namespace jambline::screens
