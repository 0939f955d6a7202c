// screens/car_hours_view_model.h: the hours of the car on the tape: estimated against clocked, by
// operation and in all, each opening to its spans.
//
// Sums:    all people, to the second; what runs counts up to now. Redo and comeback stand apart.
// Share:   what was estimated of what was clocked, of operations that are done and have an
// estimate. Threads: GUI thread.
#pragma once

#include <QObject>
#include <qqmlregistration.h>

#include "screens/amend_clock_view_model.h"
#include "screens/row_list.h"

namespace jambline::screens {

class CarHoursViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  Q_PROPERTY(bool ofInterest READ ofInterest NOTIFY changed)
  Q_PROPERTY(QString rowWords READ rowWords NOTIFY changed)  // "4.2 h of 9.5 h, 1 over"
  Q_PROPERTY(int rowShape READ rowShape NOTIFY changed)
  Q_PROPERTY(QString total READ total NOTIFY changed)  // "4:12:06"
  Q_PROPERTY(QString totalOf READ totalOf NOTIFY changed)
  Q_PROPERTY(QString totalNote READ totalNote NOTIFY changed)
  Q_PROPERTY(bool over READ over NOTIFY changed)
  // Roles: key, title, hours, ofWords, note, isOver, isOpen.
  Q_PROPERTY(QAbstractItemModel* operations READ operations CONSTANT)
  Q_PROPERTY(int operationCount READ operationCount NOTIFY changed)
  // Of the open operation. Roles: key, title (who), when, hours, said, note, shape, spoken.
  Q_PROPERTY(QAbstractItemModel* spans READ spans CONSTANT)
  Q_PROPERTY(int spanCount READ spanCount NOTIFY changed)
  Q_PROPERTY(QString openTitle READ openTitle NOTIFY changed)  // "" none is open
  Q_PROPERTY(jambline::screens::AmendClockViewModel* amend READ amend CONSTANT)

 public:
  explicit CarHoursViewModel(Session& session, QObject* parent = nullptr);

  bool ofInterest() const { return operations_.rowCount() > 0; }
  QString rowWords() const { return row_words_; }
  int rowShape() const { return row_shape_; }
  QString total() const { return total_; }
  QString totalOf() const { return total_of_; }
  QString totalNote() const { return total_note_; }
  bool over() const { return over_; }
  QAbstractItemModel* operations() { return &operations_; }
  int operationCount() const { return operations_.rowCount(); }
  QAbstractItemModel* spans() { return &spans_; }
  int spanCount() const { return spans_.rowCount(); }
  QString openTitle() const { return open_title_; }
  AmendClockViewModel* amend() { return &amend_; }

  Q_INVOKABLE void open(const QString& operation);  // the open one again closes it
  Q_INVOKABLE void openSpan(const QString& span);

 signals:
  void changed();

 private:
  void refresh();
  void second_passed();

  Session& session_;
  JobId shown_;
  std::optional<OperationId> open_;
  std::vector<std::pair<folds::WorkedRow, bool>> open_spans_;  // and whether it runs
  QString row_words_;
  int row_shape_ = 0;
  QString total_, total_of_, total_note_, open_title_;
  bool over_ = false;
  bool runs_ = false;
  RowList operations_;
  RowList spans_;
  AmendClockViewModel amend_;
};

}  // namespace jambline::screens
