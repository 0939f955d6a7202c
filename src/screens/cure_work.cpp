#include "screens/cure_work.h"

#include "screens/spans.h"

namespace jambline::screens {

CureWork::CureWork(Session& session, QObject* parent) : QObject(parent), session_(session) {
  connect(&session, &Session::carOrShopChanged, this, &CureWork::follow);
  connect(&session, &Session::secondPassed, this, &CureWork::second_passed);
  follow();
}

void CureWork::follow() {
  const auto car = session_.car() ? session_.snapshot().car : nullptr;
  const auto shop = session_.snapshot().shop;
  const std::optional<JobId> job = car ? std::optional(car->job) : std::nullopt;
  const auto lessons = session_.snapshot().lessons;
  if (car && !car->air.mixes.empty() && !lessons) session_.engine().want_lessons();
  if (car == car_ && shop == shop_ && lessons == lessons_) return;
  if (job != job_) clocks_ = std::make_shared<const Clocks>();
  job_ = job;
  car_ = car;
  shop_ = shop;
  lessons_ = lessons;
  work_out();
}

void CureWork::second_passed() {
  if (++seconds_ % work_out_every_s == 0) work_out();
}

void CureWork::work_out() {
  const std::uint64_t number = ++asked_;
  const Moment now = session_.now();
  auto do_not_drive = car_ ? folds::do_not_drive(*car_, *shop_, now) : std::nullopt;
  if (!car_ || (car_->air.mixes.empty() && car_->air.bonds.empty())) {
    auto none = std::make_shared<Clocks>();
    none->at = now;
    const bool nothing_new = !waiting_ && !do_not_drive && !do_not_drive_ &&
                             clocks_->cures.empty() && clocks_->bonds.empty();
    waiting_ = false;
    do_not_drive_ = std::move(do_not_drive);
    clocks_ = none;
    if (!nothing_new) emit changed();
    return;
  }
  do_not_drive_ = std::move(do_not_drive);
  waiting_ = true;
  emit changed();
  session_.calculate(this,
                     [this, number, job = job_, now, car = car_, shop = shop_,
                      lessons = lessons_]() -> std::function<void()> {
                       auto out = std::make_shared<Clocks>();
                       folds::LearnedFilm learned;
                       if (lessons)
                         for (const auto& lesson : *lessons) learned.add(lesson);
                       out->cures = folds::cure_of_car(*car, *shop, now, learned);
                       out->bonds = folds::bonds_of_car(*car, *shop, now);
                       out->at = now;
                       return [this, number, job, out] {
                         // A later answer is on its way: until then this one is the newest.
                         if (job != job_) return;
                         waiting_ = number != asked_;
                         clocks_ = out;
                         emit changed();
                       };
                     });
}

}  // namespace jambline::screens
