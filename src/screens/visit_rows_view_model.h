// screens/visit_rows_view_model.h: the rows of a car that lead to its check-in, walk-around,
// hand-over note and comebacks, each only where it is of interest.
//
// Rows:    check-in, where that stage is planned or it was said; walk-around, once the work is
//          further on than its correction; the note, once it is delivered; comebacks, where there
//          were any, with the delivery after which each came.
// Threads: GUI thread.
#pragma once

#include <QObject>
#include <qqmlregistration.h>

#include "screens/check_in_view_model.h"
#include "screens/row_list.h"
#include "screens/walk_around_view_model.h"

namespace jambline::screens {

class VisitRowsViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  // Roles: key (Row), title, words, shape, alarm.
  Q_PROPERTY(QAbstractItemModel* rows READ rows CONSTANT)

 public:
  enum Row { CheckIn, WalkAround, HandOver, Comeback };
  Q_ENUM(Row)

  VisitRowsViewModel(Session& session, CheckInViewModel& check_in, WalkAroundViewModel& walk_around,
                     QObject* parent = nullptr);

  QAbstractItemModel* rows() { return &rows_; }

  Q_INVOKABLE void ask(int row);

 signals:
  void checkInAsked();
  void walkAroundAsked();
  void handOverAsked();
  void timeLineAsked();

 private:
  void show();
  QString comeback_words(const folds::CarView& car) const;

  Session& session_;
  CheckInViewModel& check_in_;
  WalkAroundViewModel& walk_around_;
  RowList rows_;
};

}  // namespace jambline::screens
