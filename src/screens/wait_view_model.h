// screens/wait_view_model.h: what the car on the tape waits for: said with its reason in one tap,
// when it should go on with one more, and "goes on" with one.
//
// Shows:   open waits, the longest first; and what it waited for before, in words.
// Keeps:   SayWait. A reason that is open already takes a new expected time.
// Threads: GUI thread. Errors go to Session::failed.
#pragma once

#include <QStringList>

#include "folds/visit_view.h"
#include "screens/form.h"
#include "screens/row_list.h"

namespace jambline::screens {

class WaitViewModel final : public jambline::screens::Form {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  // The car is in work, and it can be written.
  Q_PROPERTY(bool mayWait READ mayWait NOTIFY changed)
  Q_PROPERTY(bool mayKeep READ mayKeep NOTIFY changed)  // somebody is chosen
  Q_PROPERTY(QString rowWords READ rowWords NOTIFY changed)
  // Roles: key (the reason), title, words, isLate, isOpen, spoken.
  Q_PROPERTY(QAbstractItemModel* waits READ waits CONSTANT)
  Q_PROPERTY(int waitCount READ waitCount NOTIFY changed)
  // All reasons. Roles: key, title, waits (it is open).
  Q_PROPERTY(QAbstractItemModel* reasons READ reasons CONSTANT)
  // The wait that takes an expected time. "" none
  Q_PROPERTY(QString openReason READ openReason NOTIFY changed)
  Q_PROPERTY(QString openTitle READ openTitle NOTIFY changed)
  Q_PROPERTY(QStringList usual READ usual NOTIFY changed)  // times that it often is
  Q_PROPERTY(QString beforeWords READ beforeWords NOTIFY changed)
  Q_PROPERTY(QString carTitle READ carTitle NOTIFY changed)

 public:
  explicit WaitViewModel(Session& session, QObject* parent = nullptr);

  bool mayWait() const;
  bool mayKeep() const { return session().hasPerson(); }
  QString rowWords() const;
  QAbstractItemModel* waits() { return &waits_; }
  int waitCount() const { return waits_.rowCount(); }
  QAbstractItemModel* reasons() { return &reasons_; }
  QString openReason() const;
  QString openTitle() const;
  QStringList usual() const;
  QString beforeWords() const { return before_; }
  QString carTitle() const { return session().carTitle(); }

  Q_INVOKABLE void ask() { emit asked(); }
  Q_INVOKABLE void say(const QString& reason);
  Q_INVOKABLE void goesOn(const QString& reason);
  Q_INVOKABLE void openWait(const QString& reason);
  Q_INVOKABLE void expectUsual(int place);
  // Fields: day ("3/9/2026", empty: today), time ("1540").
  Q_INVOKABLE void expect(const QString& day, const QString& time);

 signals:
  void changed();
  void asked();

 private:
  void refresh();
  void post_wait(job::WaitReason reason, std::optional<std::int64_t> expected_ms);
  std::vector<std::pair<QString, std::int64_t>> usual_times() const;

  std::optional<job::WaitReason> open_;
  QString before_;
  RowList waits_;
  RowList reasons_;
};

// "since Tue 10:10, expected Thu 12:00"
QString wait_span_words(const folds::WaitView& wait, std::int64_t now_ms, const QString& zone);

}  // namespace jambline::screens
