// screens/calendar_view_model.h: when the shop is open: hours of each weekday, and days closed.
//
// Who:     anybody reads it; a manager (`manager`) changes it. What is changed is a draft until
//          keep(); then it is one entry that can be undone.
// Typed:   times as in screens/typed_times.h, "24:00" for the end of a day; days as there.
// Threads: GUI thread. Errors go to Session::failed.
#pragma once

#include <QObject>
#include <QStringList>
#include <optional>
#include <qqmlregistration.h>

#include "job/calendar.h"
#include "screens/row_list.h"
#include "screens/session.h"

namespace jambline::screens {

class CalendarViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to ShopSheet")
  Q_PROPERTY(bool manager READ manager NOTIFY changed)
  // Monday first. Roles: key, title, words ("08:00 to 17:00", "closed"), chosen.
  Q_PROPERTY(QAbstractItemModel* week READ week CONSTANT)
  // Days closed from today on. Roles: key (days since 1970), title ("Dec 25, 2026"), words.
  Q_PROPERTY(QAbstractItemModel* closed READ closed CONSTANT)
  Q_PROPERTY(int closedCount READ closedCount NOTIFY changed)
  Q_PROPERTY(QString summary READ summary NOTIFY changed)  // "45.0 h a week, 2 days closed"
  // Of the chosen weekday, -1 none.
  Q_PROPERTY(int day READ day NOTIFY changed)
  Q_PROPERTY(QString dayTitle READ dayTitle NOTIFY changed)
  Q_PROPERTY(bool dayOpen READ dayOpen NOTIFY changed)
  Q_PROPERTY(QString opens READ opens NOTIFY changed)
  Q_PROPERTY(QString closes READ closes NOTIFY changed)
  Q_PROPERTY(QString wrongHours READ wrongHours NOTIFY changed)  // why what was typed cannot be
  Q_PROPERTY(QString wrongDay READ wrongDay NOTIFY changed)
  Q_PROPERTY(bool edited READ edited NOTIFY changed)
  Q_PROPERTY(QString waitsFor READ waitsFor NOTIFY changed)  // why it cannot be kept; "" it can
  // Cars that are promised for a time at which nobody works, one line each.
  Q_PROPERTY(QStringList promised READ promised NOTIFY changed)

 public:
  explicit CalendarViewModel(Session& session, QObject* parent = nullptr);

  bool manager() const;
  QAbstractItemModel* week() { return &week_; }
  QAbstractItemModel* closed() { return &closed_; }
  int closedCount() const { return closed_.rowCount(); }
  QString summary() const;
  int day() const { return day_; }
  QString dayTitle() const;
  bool dayOpen() const;
  QString opens() const;
  QString closes() const;
  QString wrongHours() const { return wrong_hours_; }
  QString wrongDay() const { return wrong_day_; }
  bool edited() const { return draft_.has_value(); }
  QString waitsFor() const;
  QStringList promised() const;

  Q_INVOKABLE void open();  // the page, without a draft
  Q_INVOKABLE void choose(int weekday);
  Q_INVOKABLE void setHours(const QString& opens, const QString& closes);
  Q_INVOKABLE void closeDay();
  Q_INVOKABLE void openDay();         // with the hours of the day before it that is open
  Q_INVOKABLE void sameOnWeekdays();  // Monday to Friday as the chosen one
  Q_INVOKABLE bool addClosed(const QString& day);
  Q_INVOKABLE void takeClosed(int day);
  Q_INVOKABLE void keep();

 signals:
  void changed();

 private:
  const job::Calendar& now() const { return draft_ ? *draft_ : session_.shop().calendar; }
  job::OpenDay chosen() const;
  void set(job::Calendar next);
  void refresh();

  Session& session_;
  RowList week_;
  RowList closed_;
  std::optional<job::Calendar> draft_;
  int day_ = -1;
  QString wrong_hours_;
  QString wrong_day_;
};

}  // namespace jambline::screens
