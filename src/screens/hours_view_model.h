// screens/hours_view_model.h: the day or the week of one person: every span, what it was on, the
// sums; what the cars waited for beside; and the same as a table for other programs.
//
// Days:    of the shop's zone. A day of 23 or 25 hours says so. A week begins on Monday.
// Sums:    to the second, of folds/hours_sheet.h; what runs counts up to now. Only the table for
//          other programs can be rounded.
// Work:    spans come from the engine after wake() and after each change, until rest().
// Threads: GUI thread; the table is written on the calculation lane.
#pragma once

#include <QStringList>
#include <qqmlregistration.h>

#include "folds/hours_sheet.h"
#include "screens/amend_clock_view_model.h"
#include "screens/row_list.h"
#include "screens/session.h"

namespace jambline::screens {

class HoursViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  // Roles: key, title, isChosen.
  Q_PROPERTY(QAbstractItemModel* people READ people CONSTANT)
  Q_PROPERTY(bool anyPeople READ anyPeople NOTIFY changed)
  Q_PROPERTY(QString who READ who NOTIFY changed)
  Q_PROPERTY(bool week READ week NOTIFY changed)
  Q_PROPERTY(bool loaded READ loaded NOTIFY changed)
  Q_PROPERTY(QString title READ title NOTIFY changed)      // "Mon Sep 21", "Sep 21 to Sep 27"
  Q_PROPERTY(bool isNow READ isNow NOTIFY changed)         // today, or this week
  Q_PROPERTY(QString dayNote READ dayNote NOTIFY changed)  // of a day that has not 24 hours
  Q_PROPERTY(QString total READ total NOTIFY changed)      // "7:24:06"
  Q_PROPERTY(QString totalNote READ totalNote NOTIFY changed)
  Q_PROPERTY(QString twiceWords READ twiceWords NOTIFY changed)
  Q_PROPERTY(QString doubtWords READ doubtWords NOTIFY changed)
  Q_PROPERTY(QString troubleWords READ troubleWords NOTIFY changed)  // why nothing could be read
  // Redo and comeback stand apart. Roles: key, title, hours. Empty: all is first-time work.
  Q_PROPERTY(QAbstractItemModel* kinds READ kinds CONSTANT)
  // Of a week. Roles: key, title, hours, note, isToday, spoken.
  Q_PROPERTY(QAbstractItemModel* days READ days CONSTANT)
  // By car and operation. Roles: key, title, car, hours, note.
  Q_PROPERTY(QAbstractItemModel* lines READ lines CONSTANT)
  Q_PROPERTY(int lineCount READ lineCount NOTIFY changed)
  // Of a day. Roles: key, title, car, when, hours, said, note, shape, spoken.
  Q_PROPERTY(QAbstractItemModel* spans READ spans CONSTANT)
  // Cars of these lines that waited. Roles: key, title, when, waits, spoken.
  Q_PROPERTY(QAbstractItemModel* waits READ waits CONSTANT)
  Q_PROPERTY(int waitCount READ waitCount NOTIFY changed)
  Q_PROPERTY(jambline::screens::AmendClockViewModel* amend READ amend CONSTANT)
  Q_PROPERTY(QString place READ place CONSTANT)      // where the table goes unless another is typed
  Q_PROPERTY(QStringList steps READ steps CONSTANT)  // of rounding; the first is none
  Q_PROPERTY(QString written READ written NOTIFY changed)

 public:
  HoursViewModel(Session& session, QString place, QObject* parent = nullptr);

  QAbstractItemModel* people() { return &people_; }
  bool anyPeople() const { return people_.rowCount() > 0; }
  QString who() const { return person_ ? session_.name_of(person_) : QString(); }
  bool week() const { return week_; }
  bool loaded() const { return loaded_; }
  QString title() const;
  bool isNow() const;
  QString dayNote() const;
  QString total() const;
  QString totalNote() const;
  QString twiceWords() const;
  QString doubtWords() const;
  QString troubleWords() const { return trouble_; }
  QAbstractItemModel* kinds() { return &kinds_; }
  QAbstractItemModel* days() { return &days_; }
  QAbstractItemModel* lines() { return &lines_; }
  int lineCount() const { return lines_.rowCount(); }
  QAbstractItemModel* spans() { return &spans_; }
  QAbstractItemModel* waits() { return &waits_; }
  int waitCount() const { return waits_.rowCount(); }
  AmendClockViewModel* amend() { return &amend_; }
  QString place() const { return place_; }
  QStringList steps() const;
  QString written() const { return written_; }

  Q_INVOKABLE void wake();
  Q_INVOKABLE void rest() { awake_ = false; }
  Q_INVOKABLE void showOwn();  // of who taps, today
  Q_INVOKABLE void choosePerson(const QString& person);
  Q_INVOKABLE void showWeek(bool week);
  Q_INVOKABLE void openDay(const QString& day);  // a row of days
  Q_INVOKABLE void turn(int by);                 // days, or weeks
  Q_INVOKABLE void toNow();
  Q_INVOKABLE void openSpan(const QString& span);
  // `step`: its place in steps.
  Q_INVOKABLE void writeTable(const QString& place, int step, bool everybody);

  const folds::HoursSheet& sheet() const { return sheet_; }

 signals:
  void changed();

 private:
  void ask();
  void show();
  void show_spans();
  void show_lines();
  void show_waits();
  void second_passed();
  LocalDate today() const;
  std::vector<folds::HoursSheet> sheets(bool everybody) const;
  QString note_of(const folds::SheetDay& day) const;

  Session& session_;
  QString place_;
  PersonId person_;
  LocalDate from_;
  bool week_ = false;
  bool awake_ = false;
  bool loaded_ = false;
  int generation_ = 0;
  folds::Worked worked_;
  std::vector<folds::SheetDay> asked_;
  folds::HoursSheet sheet_;
  QString trouble_;
  QString written_;
  RowList people_;
  RowList kinds_;
  RowList days_;
  RowList lines_;
  RowList spans_;
  RowList waits_;
  AmendClockViewModel amend_;
};

}  // namespace jambline::screens
