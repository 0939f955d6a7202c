// app/demo/hand.h: does what people of the demo shop do: decides, hands the drafts on, folds.
//
// Keeps the cars that are still in the shop; a delivered one is forgotten.
#pragma once

#include <map>
#include <memory>

#include "app/demo/demo_shop.h"
#include "app/demo/visit.h"
#include "folds/job_fold.h"
#include "folds/shop_fold.h"

namespace jambline::demo {

class Hand {
 public:
  Hand(const DemoOptions& options, const Sinks& sinks)
      : options_(options), sinks_(sinks), calendar_(options.now.wall_ms, options.weeks) {}

  // One action of `step`; `job` is zero before the car is opened and set by it.
  // `pictures` is what picture steps are drawn from, `air` what ids of the air are.
  Status act(const Step& step, JobId& job, Random& random, SeededRandom& pictures,
             SeededRandom& air);
  Status act(const PersonId& person, std::int64_t at_ms, const acts::Command& command,
             Random& random);

  const folds::ShopView& shop() const { return shop_view_; }
  const Calendar& calendar() const { return calendar_; }
  Moment moment(std::int64_t at_ms) const;

 private:
  struct Car {
    folds::JobFold fold;
    folds::CarView view;
  };
  Result<std::vector<acts::Draft>> decide(const Commands& commands, const PersonId& person,
                                          std::int64_t at_ms, const folds::CarView* instead,
                                          Random& random) const;
  Status write(const Sink& sink, const PersonId& person, const std::vector<acts::Draft>& drafts,
               std::int64_t at_ms);
  void fold(const std::vector<entries::Entry>& entries);

  const DemoOptions& options_;
  const Sinks& sinks_;
  Calendar calendar_;
  folds::ShopFold shop_;
  folds::ShopView shop_view_;
  std::map<JobId, Car> cars_;
  std::map<PersonId, JobId> clocks_;
};

}  // namespace jambline::demo
