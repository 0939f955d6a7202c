// screens/register_view_model.h: the protection register: everybody with what presses most, the
// shop's respirators and breathing air; and of the person who is open what is kept about him.
//
// Who:     everybody reads it. A manager enters it; cartridges and the breathing air are entered by
//          anybody. "Do not spray" is said by anybody of himself and by a manager of everybody, and
//          only a manager takes it back. Nothing of why is asked or kept.
// Order:   who may not spray and what is overdue first, then what is due soon.
// Hours:   of a cartridge by the gun's own clock; a schedule is typed with what it rests on, and
//          none is ever made up here.
// Threads: GUI thread. Errors go to Session::failed.
#pragma once

#include <QStringList>
#include <qqmlregistration.h>

#include "screens/fit_test_form.h"
#include "screens/register_rows.h"
#include "screens/respirator_form.h"

namespace jambline::screens {

class RegisterViewModel final : public jambline::screens::Form {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  // Roles: key, title, summary, shape, isOpen, spoken.
  Q_PROPERTY(QAbstractItemModel* people READ people CONSTANT)
  Q_PROPERTY(int personCount READ personCount NOTIFY changed)
  // Roles: key, title, kindWords, factorWords, retired.
  Q_PROPERTY(QAbstractItemModel* respirators READ respirators CONSTANT)
  Q_PROPERTY(int respiratorCount READ respiratorCount NOTIFY changed)
  // What feeds the airlines, as a row of its own.
  Q_PROPERTY(QString airWords READ airWords NOTIFY changed)
  Q_PROPERTY(QString airNote READ airNote NOTIFY changed)
  Q_PROPERTY(QString airState READ airState NOTIFY changed)
  Q_PROPERTY(int airShape READ airShape NOTIFY changed)
  // What presses most of everybody: "Ivo · Fit test: overdue"; "" nothing does.
  Q_PROPERTY(QString pressing READ pressing NOTIFY changed)
  Q_PROPERTY(int pressingShape READ pressingShape NOTIFY changed)
  Q_PROPERTY(bool manager READ manager NOTIFY changed)
  Q_PROPERTY(bool mayKeep READ mayKeep NOTIFY changed)  // somebody is chosen, and it can be written
  Q_PROPERTY(Act mainAct READ mainAct NOTIFY changed)
  Q_PROPERTY(QString mainText READ mainText NOTIFY changed)
  Q_PROPERTY(QString mainSecond READ mainSecond NOTIFY changed)
  Q_PROPERTY(bool mainWaits READ mainWaits NOTIFY changed)
  // The person who is open; "" nobody.
  Q_PROPERTY(QString person READ person NOTIFY changed)
  Q_PROPERTY(QString personName READ personName NOTIFY changed)
  Q_PROPERTY(QString personRole READ personRole NOTIFY changed)
  Q_PROPERTY(bool flagged READ flagged NOTIFY changed)  // do not spray
  Q_PROPERTY(bool mayFlag READ mayFlag NOTIFY changed)  // say it, or take it back
  // Roles: key, title, words, note, shape, stateWords, alarm, opens, spoken.
  Q_PROPERTY(QAbstractItemModel* rows READ rows CONSTANT)
  // Respirators with a cartridge. Roles: key, title, schedule, basis (as the person's last ones).
  Q_PROPERTY(QAbstractItemModel* cartridges READ cartridges CONSTANT)
  Q_PROPERTY(int cartridgeCount READ cartridgeCount NOTIFY changed)
  Q_PROPERTY(QStringList dues READ dues CONSTANT)
  Q_PROPERTY(QString todayText READ todayText NOTIFY changed)
  Q_PROPERTY(jambline::screens::RespiratorForm* respirator READ respirator CONSTANT)
  Q_PROPERTY(jambline::screens::FitTestForm* fitTest READ fitTest CONSTANT)
  Q_PROPERTY(jambline::screens::SumRows* sum READ sum CONSTANT)

 public:
  enum class Act { None, AddRespirator, OpenPerson, LogAir };
  Q_ENUM(Act)

  explicit RegisterViewModel(Session& session, QObject* parent = nullptr);

  QAbstractItemModel* people() { return &people_; }
  int personCount() const { return people_.rowCount(); }
  QAbstractItemModel* respirators() { return &respirators_; }
  int respiratorCount() const { return respirators_.rowCount(); }
  QString airWords() const { return air_.words; }
  QString airNote() const { return air_.note; }
  QString airState() const { return air_.state_words; }
  int airShape() const { return shape_of(air_.state); }
  QString pressing() const;
  int pressingShape() const;
  bool manager() const { return is_manager(); }
  bool mayKeep() const;
  Act mainAct() const;
  QString mainText() const;
  QString mainSecond() const;
  bool mainWaits() const;
  QString person() const;
  QString personName() const;
  QString personRole() const;
  bool flagged() const;
  bool mayFlag() const;
  QAbstractItemModel* rows() { return &rows_; }
  QAbstractItemModel* cartridges() { return &cartridges_; }
  int cartridgeCount() const { return cartridges_.rowCount(); }
  QStringList dues() const;
  QString todayText() const;
  RespiratorForm* respirator() { return &respirator_; }
  FitTestForm* fitTest() { return &fit_test_; }
  SumRows* sum() { return &sum_; }

  Q_INVOKABLE void openPerson(const QString& person);
  Q_INVOKABLE void openFirst();  // the person who presses most
  Q_INVOKABLE void openFitTest();
  Q_INVOKABLE bool openSum(const QString& row);
  Q_INVOKABLE void sayDoNotSpray(bool doNotSpray);
  Q_INVOKABLE QString dayWords(const QString& day) const;  // "Mar 9, 2026", "" not a day
  Q_INVOKABLE QString dueDay(int what) const;  // as it stands, as it can be typed; "" none
  // Fields: respirator, hours, basis.
  Q_INVOKABLE void keepCartridge(const QString& respirator, const QString& hours,
                                 const QString& basis);
  // Field: day.
  Q_INVOKABLE void keepDue(int what, const QString& day);
  // Fields: day, validDays.
  Q_INVOKABLE void keepAir(bool gradeD, bool coAlarm, bool lowFlowAlarm, const QString& day,
                           const QString& validDays);

 signals:
  void changed();

 private:
  struct Standing {
    PersonId person;
    bool flagged = false;
    RegisterRow worst;
  };
  void refresh();
  RegisterDay now() const;
  const Standing* pressed() const;  // null: nobody
  std::vector<Standing> standings() const;

  PersonId open_;
  int day_ = 0;  // that all of it is of
  RowList people_;
  RowList respirators_;
  RowList rows_;
  RowList cartridges_;
  std::vector<Standing> standing_;
  std::vector<RegisterRow> kept_;
  RegisterRow air_;
  RespiratorForm respirator_;
  FitTestForm fit_test_;
  SumRows sum_;
};

}  // namespace jambline::screens
