// screens/walk_around_view_model.h: the last look at a car before it goes: what is still open, last
// polish and wash, what has to come first, the customer's signature, and the delivery.
//
// Points:  folds/open_points.h. Each leads to where it is closed; the latch is said here.
// Rules:   of the delivery by the shop's order of assembly. A soft one is shown; a hard one or a
//          hold is broken with one of four reasons; no override and glass whose time is not over
//          have no way round.
// Signs:   with open points the customer signs for as many as there are; one more afterwards wants
//          a new signature.
// Main:    Deliver; dashed until all of that is done, and the second line says what it waits for.
// Threads: GUI thread; worked out on the calc lane, anew with every entry and every half minute.
//          Until it has come nothing can be delivered. Errors go to Session::failed.
#pragma once

#include <QObject>
#include <QStringList>
#include <QVariantList>
#include <memory>
#include <optional>
#include <qqmlregistration.h>

#include "folds/assembly_of_car.h"
#include "folds/cure_of_car.h"
#include "folds/open_points.h"
#include "screens/row_list.h"
#include "screens/session.h"

namespace jambline::screens {

class WalkAroundViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Main")
  // Roles: key, words, act, leads (Leads), where (a panel's or a stage's word), shape.
  Q_PROPERTY(QAbstractItemModel* points READ points CONSTANT)
  Q_PROPERTY(int pointCount READ pointCount NOTIFY changed)
  Q_PROPERTY(QString pointsWords READ pointsWords NOTIFY changed)  // "2 open points"
  // Last polish, wash and what they wait for. Roles: key, title, words, shape, act.
  Q_PROPERTY(QAbstractItemModel* steps READ steps CONSTANT)
  Q_PROPERTY(int stepCount READ stepCount NOTIFY changed)
  // What comes before the delivery and is not done. Roles: key, title, words, why, shape, act,
  // step.
  Q_PROPERTY(QAbstractItemModel* rules READ rules CONSTANT)
  Q_PROPERTY(int ruleCount READ ruleCount NOTIFY changed)
  Q_PROPERTY(bool asksReason READ asksReason NOTIFY changed)
  Q_PROPERTY(QStringList reasons READ reasons CONSTANT)
  Q_PROPERTY(int reason READ reason NOTIFY changed)  // a row of reasons; -1 none
  Q_PROPERTY(bool asksSignature READ asksSignature NOTIFY changed)
  Q_PROPERTY(QString signedWords READ signedWords NOTIFY changed)  // "" nobody signed
  Q_PROPERTY(int signedShape READ signedShape NOTIFY changed)
  Q_PROPERTY(QStringList statement READ statement NOTIFY changed)  // what is signed
  Q_PROPERTY(bool mayDeliver READ mayDeliver NOTIFY changed)       // there is a main act
  Q_PROPERTY(QString mainText READ mainText NOTIFY changed)
  Q_PROPERTY(QString mainSecond READ mainSecond NOTIFY changed)
  Q_PROPERTY(Wait waitsFor READ waitsFor NOTIFY changed)
  Q_PROPERTY(bool writable READ writable NOTIFY changed)

 public:
  enum class Leads { Nowhere, Panel, Stage, Shots, Parts, Here };
  Q_ENUM(Leads)
  enum class Wait { Nothing, Numbers, Person, Glass, Dispute, NoWayRound, Reason, Signature };
  Q_ENUM(Wait)

  explicit WalkAroundViewModel(Session& session, QObject* parent = nullptr);

  QAbstractItemModel* points() { return &points_; }
  int pointCount() const { return points_.rowCount(); }
  QString pointsWords() const;
  QAbstractItemModel* steps() { return &steps_; }
  int stepCount() const { return steps_.rowCount(); }
  QAbstractItemModel* rules() { return &rules_; }
  int ruleCount() const { return rules_.rowCount(); }
  bool asksReason() const;
  QStringList reasons() const;
  int reason() const { return reason_; }
  bool asksSignature() const;
  QString signedWords() const;
  int signedShape() const;
  QStringList statement() const;
  bool mayDeliver() const;
  QString mainText() const;
  QString mainSecond() const;
  Wait waitsFor() const;
  bool writable() const;
  bool ready() const { return looked_ != nullptr; }

  Q_INVOKABLE void sayDone(const QString& step);  // a step's word
  Q_INVOKABLE void sayReason(int row);            // the chosen one again: none
  Q_INVOKABLE void sign(const QVariantList& strokes, const QString& signer);
  Q_INVOKABLE void deliver();

 signals:
  void changed();
  void signatureKept();
  void delivered();

 private:
  struct Looked {
    std::vector<folds::OpenPoint> points;
    std::vector<folds::StepOfCar> steps;
    std::vector<folds::RuleInTheWay> rules;
    std::optional<folds::DoNotDrive> do_not_drive;
  };
  void follow();
  void work_out();
  void show();
  void show_points(const folds::CarView& car);
  void show_steps(const folds::CarView& car);
  void show_rules();
  QVariantList step_row(const folds::StepOfCar& step, const QString& title) const;
  const folds::StepOfCar* step(job::Step step) const;
  const folds::RuleInTheWay* no_way_round() const;
  bool signed_enough() const;

  Session& session_;
  RowList points_;
  RowList steps_;
  RowList rules_;
  std::shared_ptr<const folds::CarView> car_;
  std::shared_ptr<const folds::ShopView> shop_;
  std::shared_ptr<const Looked> looked_;  // null until it has come
  std::uint64_t asked_ = 0;
  int seconds_ = 0;
  int reason_ = -1;
};

}  // namespace jambline::screens
