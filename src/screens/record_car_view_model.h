// screens/record_car_view_model.h: the car that is chosen in the record: when, hours, what was
// passed over, what is open, what held it, what was said last.
//
// Choosing: puts the car on the tape, `settle_ms` after the last choice, so that keys may run over
//           rows. Until it has come, `loaded` is false and nothing of another car is shown. Who
//           puts another one on the tape elsewhere lets it go.
// Rows:     entries are named by hash (hex), so that they can be opened. Threads: GUI.
#pragma once

#include <QObject>
#include <QTimer>
#include <optional>
#include <qqmlregistration.h>

#include "screens/detail_rows.h"
#include "screens/row_list.h"
#include "screens/session.h"

namespace jambline::screens {

class RecordCarViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Part of RecordViewModel")
  Q_PROPERTY(QString job READ job NOTIFY changed)  // "" none is chosen
  Q_PROPERTY(bool loaded READ loaded NOTIFY changed)
  Q_PROPERTY(QString plate READ plate NOTIFY changed)
  Q_PROPERTY(QString look READ look NOTIFY changed)          // "deep green · four-door sedan"
  Q_PROPERTY(QString dueWords READ dueWords NOTIFY changed)  // "26.5 h late"; "" nothing promised
  Q_PROPERTY(bool late READ late NOTIFY changed)
  Q_PROPERTY(QString hoursWords READ hoursWords NOTIFY changed)  // "9.4 h clocked, 7.0 h estimated"
  Q_PROPERTY(jambline::screens::DetailRows* facts READ facts CONSTANT)
  Q_PROPERTY(QAbstractItemModel* stages READ stages CONSTANT)        // key, title, hours, done
  Q_PROPERTY(QAbstractItemModel* overrides READ overrides CONSTANT)  // entry, words, who
  Q_PROPERTY(int overrideCount READ overrideCount NOTIFY changed)
  Q_PROPERTY(jambline::screens::DetailRows* held READ held CONSTANT)  // waits: reason, how long
  Q_PROPERTY(int heldCount READ heldCount NOTIFY changed)
  Q_PROPERTY(QStringList open READ open NOTIFY changed)
  Q_PROPERTY(QAbstractItemModel* last READ last CONSTANT)  // entry, words, who

 public:
  explicit RecordCarViewModel(Session& session, QObject* parent = nullptr);

  static constexpr int settle_ms = 120;

  QString job() const;
  bool loaded() const { return car() != nullptr; }
  QString plate() const;
  QString look() const;
  QString dueWords() const;
  bool late() const;
  QString hoursWords() const;
  DetailRows* facts() { return &facts_; }
  QAbstractItemModel* stages() { return &stages_; }
  QAbstractItemModel* overrides() { return &overrides_; }
  int overrideCount() const { return overrides_.count(); }
  DetailRows* held() { return &held_; }
  int heldCount() const { return held_.rowCount(); }
  QStringList open() const { return open_; }
  QAbstractItemModel* last() { return &last_; }

  Q_INVOKABLE void choose(const QString& jobId);  // "": none

 signals:
  void changed();

 private:
  const folds::CarView* car() const;
  std::optional<std::int64_t> late_by_ms() const;
  void refresh();
  void show_facts(const folds::CarView& car);
  void show_hours(const folds::CarView& car);
  void show_held(const folds::CarView& car);
  void show_entries();

  Session& session_;
  std::optional<JobId> job_;
  QTimer settle_;
  std::shared_ptr<const folds::CarView> shown_;
  DetailRows facts_{this};
  RowList stages_;
  RowList overrides_;
  DetailRows held_{this};
  QStringList open_;
  RowList last_;
};

}  // namespace jambline::screens
