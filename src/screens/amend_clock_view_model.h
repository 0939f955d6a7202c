// screens/amend_clock_view_model.h: a clock act was made at another time than the clock said.
//
// Shows:   what it is about, its one or two ends with the time that counts and what the clock said;
//          one of them is chosen and gets a new time, typed as four digits, and a reason.
// Keeps:   AmendClock; what the clock said stays. kept() follows when it is on disk.
// Reasons: fixed ones are kept in the trade's English and shown in the reader's language.
// Threads: GUI thread.
#pragma once

#include <QStringList>

#include "folds/worked.h"
#include "screens/form.h"
#include "screens/row_list.h"

namespace jambline::screens {

class AmendClockViewModel final : public jambline::screens::Form {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Part of a view model")
  Q_PROPERTY(bool shown READ shown NOTIFY changed)
  Q_PROPERTY(QString title READ title NOTIFY changed)  // "Inspect, K 41-206"
  Q_PROPERTY(QString who READ who NOTIFY changed)
  Q_PROPERTY(bool mayKeep READ mayKeep NOTIFY changed)
  // Roles: key, title ("Begins"), time, said (what the clock said), isChosen, spoken.
  Q_PROPERTY(QAbstractItemModel* ends READ ends CONSTANT)
  Q_PROPERTY(QString typed READ typed WRITE set_typed NOTIFY changed)  // digits
  Q_PROPERTY(QString dayWords READ dayWords NOTIFY changed)
  Q_PROPERTY(QString newTime READ newTime NOTIFY changed)          // "16:30"; "" not typed
  Q_PROPERTY(QString countsWords READ countsWords NOTIFY changed)  // "42 min earlier"
  Q_PROPERTY(QStringList reasons READ reasons CONSTANT)
  Q_PROPERTY(int reason READ reason NOTIFY changed)  // its place; -1 none
  Q_PROPERTY(QString mainText READ mainText NOTIFY changed)

 public:
  explicit AmendClockViewModel(Session& session, QObject* parent = nullptr);

  struct End {
    JobId job;
    Hash act;
    QString title;
    std::int64_t at_ms{};
    std::optional<std::int64_t> clock_ms = {};
    std::optional<std::int64_t> least_ms = {};
    std::optional<std::int64_t> most_ms = {};
  };
  void open(const QString& title, const PersonId& worker, std::vector<End> ends);
  void open_span(const folds::WorkedRow& row, bool runs);

  bool shown() const { return !ends_.empty(); }
  QString title() const { return title_; }
  QString who() const { return session().name_of(worker_); }
  bool mayKeep() const { return session().hasPerson() && !session().readOnly(); }
  QAbstractItemModel* ends() { return &end_rows_; }
  QString typed() const { return typed_; }
  void set_typed(const QString& digits);
  QString dayWords() const;
  QString newTime() const;
  QString countsWords() const;
  QStringList reasons() const;
  int reason() const { return reason_; }
  QString mainText() const;

  Q_INVOKABLE void close();
  Q_INVOKABLE void choose(int end);
  Q_INVOKABLE void otherDay(int days);
  Q_INVOKABLE void chooseReason(int reason);
  Q_INVOKABLE void keep(const QString& otherReason);

 signals:
  void changed();

 private:
  void show();
  const End* end() const;
  std::optional<std::int64_t> new_ms() const;

  QString title_;
  PersonId worker_;
  std::vector<End> ends_;
  std::size_t chosen_ = 0;
  int day_ = 0;
  QString typed_;
  int reason_ = -1;
  RowList end_rows_;
};

}  // namespace jambline::screens
