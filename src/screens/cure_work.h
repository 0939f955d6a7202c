// screens/cure_work.h: the cure clocks and the bonded parts of the car on the tape, as of now; what
// the screens of cure, plan, walk and the car have in common.
//
// Worked out on the calc lane whenever the car, the shop or what all cars teach changes, and every
// half minute. Whether
// the car may be driven is known at once. `at()` is the moment that the clocks are of.
// Threads: GUI thread. Errors: those of trade/cure_clock.h stand in each clock's result.
#pragma once

#include <QObject>
#include <memory>
#include <vector>

#include "folds/cure_of_car.h"
#include "screens/session.h"

namespace jambline::screens {

class CureWork final : public QObject {
  Q_OBJECT

 public:
  explicit CureWork(Session& session, QObject* parent = nullptr);

  const std::vector<folds::CureOfGroup>& cures() const { return clocks_->cures; }
  const std::vector<folds::BondOfCar>& bonds() const { return clocks_->bonds; }
  const Moment& at() const { return clocks_->at; }
  bool ready() const { return !waiting_; }
  const std::optional<folds::DoNotDrive>& do_not_drive() const { return do_not_drive_; }
  Session& session() const { return session_; }

 signals:
  void changed();

 private:
  struct Clocks {
    std::vector<folds::CureOfGroup> cures;
    std::vector<folds::BondOfCar> bonds;
    Moment at;
  };
  void follow();
  void second_passed();
  void work_out();

  Session& session_;
  std::optional<JobId> job_;
  std::shared_ptr<const folds::CarView> car_;
  std::shared_ptr<const folds::ShopView> shop_;
  std::shared_ptr<const std::vector<folds::Lesson>> lessons_;
  std::shared_ptr<const Clocks> clocks_ = std::make_shared<const Clocks>();
  std::optional<folds::DoNotDrive> do_not_drive_;
  std::uint64_t asked_ = 0;
  int seconds_ = 0;
  bool waiting_ = false;
};

}  // namespace jambline::screens
