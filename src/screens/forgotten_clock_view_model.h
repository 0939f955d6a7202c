// screens/forgotten_clock_view_model.h: a clock that was forgotten is asked about, never closed
// silently.
//
// Asked:   at the start, about every clock that runs since before today or for over 14 h, unless
//          its person has a PIN; and when a person is chosen whose clock does. Putting it off
//          writes nothing: it is asked again at the next start or choice.
// Time:    the proposal is when the person was last seen on a car in the shop (the rule of
//          trade/hours.h); moved in steps of 5 min, between the start and now.
// Answers: ended() stops the clock as of that time, as the person who is chosen, or, when nobody
// is,
//          as the clock's own. stillRuns() writes nothing and asks no more until the next day.
// Threads: GUI thread.
#pragma once

#include <QObject>
#include <QString>
#include <map>
#include <qqmlregistration.h>
#include <vector>

#include "screens/clocks.h"
#include "screens/session.h"

namespace jambline::screens {

class ForgottenClockViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  Q_PROPERTY(bool asking READ asking NOTIFY changed)
  Q_PROPERTY(QString who READ who NOTIFY changed)
  Q_PROPERTY(QString what READ what NOTIFY changed)          // "Inspect on K 41-206"
  Q_PROPERTY(QString since READ since NOTIFY changed)        // "Runs since Mon Sep 21 16:42"
  Q_PROPERTY(QString lastSeen READ lastSeen NOTIFY changed)  // "Last seen Mon Sep 21 18:05"
  Q_PROPERTY(QString endDay READ endDay NOTIFY changed)      // "Mon Sep 21"
  Q_PROPERTY(QString endTime READ endTime NOTIFY changed)    // "18:05"
  Q_PROPERTY(QString counts READ counts NOTIFY changed)      // "1 h 23 min"
  Q_PROPERTY(bool mayEarlier READ mayEarlier NOTIFY changed)
  Q_PROPERTY(bool mayLater READ mayLater NOTIFY changed)

 public:
  explicit ForgottenClockViewModel(Session& session, QObject* parent = nullptr);

  bool asking() const { return asked_.has_value(); }
  QString who() const;
  QString what() const;
  QString since() const;
  QString lastSeen() const;
  QString endDay() const;
  QString endTime() const;
  QString counts() const;
  bool mayEarlier() const;
  bool mayLater() const;

  Q_INVOKABLE void shift(int minutes);
  Q_INVOKABLE void ended();
  Q_INVOKABLE void stillRuns();
  Q_INVOKABLE void putOff();

 signals:
  void changed();

 private:
  struct Asked {
    PersonId person;
    folds::RunningView running;
    QString what;
    std::int64_t seen_ms{};
    std::int64_t end_ms{};
  };
  void look_at(const PersonId& person);
  void next();
  void person_chosen();
  void take_snapshot();
  std::int64_t latest_ms() const;
  std::int64_t today_ms() const;  // when it began
  bool forgotten(const folds::RunningView& running) const;
  std::int64_t last_seen_ms(const folds::RunningView& running) const;

  Session& session_;
  PersonId chosen_;
  std::vector<PersonId> waiting_;  // to be asked after this one
  std::optional<Asked> asked_;
  std::map<PersonId, std::int64_t> runs_on_;  // said to run, and the day on which
};

}  // namespace jambline::screens
