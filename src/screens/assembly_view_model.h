// screens/assembly_view_model.h: putting the car on the tape together: its steps in the order of
// the shop's rules, who did them, and what stands in the way of the next.
//
// Rows:    what is to do, in order, then what is done, the last first. What waits is dashed and
// says
//          "not before". A clock's step is nobody's to tap and says until when.
// Rules:   against a hard rule or a hold only with one of `reasons`, which is kept and shown on the
//          row; where there is no override there is no way round (stepMode NoWay).
// Main:    the first step that nothing stands in the way of, by one press; when there is none,
//          mainWaits and what it waits for.
// Caution: of lifting and stored energy, for the next step and for the open one.
// Threads: GUI thread; worked out on the calc lane when the car or the shop changes, and every half
//          minute. Errors go to Session::failed.
#pragma once

#include <QObject>
#include <QStringList>
#include <memory>
#include <qqmlregistration.h>

#include "folds/assembly_of_car.h"
#include "screens/row_list.h"
#include "screens/session.h"
#include "screens/state_kind.h"

namespace jambline::screens {

class AssemblyViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  // Roles: key, heading, title, words, broken ("" it was in order), shape, dashed, isNext.
  Q_PROPERTY(QAbstractItemModel* steps READ steps CONSTANT)
  Q_PROPERTY(int count READ count NOTIFY changed)
  Q_PROPERTY(QString countWords READ countWords NOTIFY changed)  // "3 of 21 steps are done"
  Q_PROPERTY(QStringList cautions READ cautions NOTIFY changed)  // of the next step
  Q_PROPERTY(bool writable READ writable NOTIFY changed)
  Q_PROPERTY(QString mainText READ mainText NOTIFY changed)  // "" nothing is left
  Q_PROPERTY(QString mainSecond READ mainSecond NOTIFY changed)
  Q_PROPERTY(bool mainWaits READ mainWaits NOTIFY changed)
  // The way to it, in the car.
  Q_PROPERTY(bool ofInterest READ ofInterest NOTIFY changed)
  Q_PROPERTY(QString rowWords READ rowWords NOTIFY changed)
  Q_PROPERTY(int rowShape READ rowShape NOTIFY changed)
  // The step that is open.
  Q_PROPERTY(QString step READ step NOTIFY changed)  // "" none
  Q_PROPERTY(QString stepTitle READ stepTitle NOTIFY changed)
  Q_PROPERTY(QString stepWords READ stepWords NOTIFY changed)
  Q_PROPERTY(StepMode stepMode READ stepMode NOTIFY changed)
  Q_PROPERTY(QStringList stepCautions READ stepCautions NOTIFY changed)
  Q_PROPERTY(bool stepOfFit READ stepOfFit NOTIFY changed)      // its gaps are measured
  Q_PROPERTY(bool stepOfClock READ stepOfClock NOTIFY changed)  // a cure clock says it
  // What stands in its way. Roles: key, title, words, shape.
  Q_PROPERTY(QAbstractItemModel* ways READ ways CONSTANT)
  Q_PROPERTY(int wayCount READ wayCount NOTIFY changed)
  Q_PROPERTY(QStringList reasons READ reasons CONSTANT)

 public:
  // Clock: the car or a clock says it, nobody taps it.
  enum class StepMode { None, Ready, Reason, NoWay, Clock, Done };
  Q_ENUM(StepMode)

  explicit AssemblyViewModel(Session& session, QObject* parent = nullptr);

  QAbstractItemModel* steps() { return &rows_; }
  int count() const { return rows_.rowCount(); }
  QString countWords() const;
  QStringList cautions() const;
  bool writable() const;
  QString mainText() const;
  QString mainSecond() const;
  bool mainWaits() const { return !next(); }
  bool ofInterest() const { return session_.car() && count() > 1; }
  QString rowWords() const;
  int rowShape() const;
  QString step() const;
  QString stepTitle() const;
  QString stepWords() const;
  StepMode stepMode() const;
  QStringList stepCautions() const;
  bool stepOfFit() const;
  bool stepOfClock() const;
  QAbstractItemModel* ways() { return &ways_; }
  int wayCount() const { return ways_.rowCount(); }
  QStringList reasons() const;

  Q_INVOKABLE void open(const QString& step);  // "" none
  Q_INVOKABLE void act();                      // what mainText says; opens what waits
  Q_INVOKABLE void say();                      // the open step is done
  Q_INVOKABLE void sayAgainst(int reason);     // of reasons
  Q_INVOKABLE void reopen();                   // the open step is not done

 signals:
  void changed();
  void kept();

 private:
  struct Worked {
    std::vector<folds::StepOfCar> steps;  // in order
    std::shared_ptr<const folds::CarView> car;
    std::shared_ptr<const folds::ShopView> shop;
  };
  void follow();
  void work_out();
  void show();
  const folds::StepOfCar* find(job::Step step) const;
  std::vector<folds::RuleInTheWay> in_the_way(job::Step step) const;
  bool held(job::Step step) const;               // by more than a soft rule
  std::optional<job::Step> next() const;         // that can be done now
  std::optional<job::Step> waits_first() const;  // when nothing can
  QString words_of_step(const folds::StepOfCar& step) const;
  QString until_words(const folds::StepOfCar& step) const;
  QString broken_words(job::Step step) const;
  QVariantList row_of(const folds::StepOfCar& step, const QString& heading) const;
  void post(job::Step step, bool done, std::optional<job::RuleReason> reason);
  int done_count() const;

  Session& session_;
  RowList rows_;
  RowList ways_;
  std::shared_ptr<const Worked> worked_ = std::make_shared<const Worked>();
  std::shared_ptr<const folds::CarView> car_;
  std::shared_ptr<const folds::ShopView> shop_;
  std::optional<job::Step> open_;
  std::uint64_t asked_ = 0;
  int seconds_ = 0;
};

}  // namespace jambline::screens
