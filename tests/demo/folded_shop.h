// tests/demo/folded_shop.h: a demo shop that is only folded, with no log: what its cars teach.
#pragma once

#include <map>

#include "app/demo/demo_shop.h"
#include "app/demo/dirt.h"
#include "folds/dirt_of_car.h"
#include "folds/job_fold.h"
#include "folds/lesson.h"
#include "folds/shop_fold.h"
#include "tests/log/log_folder.h"

namespace jambline::demo {

class FoldedShop {
 public:
  explicit FoldedShop(const DemoOptions& options) {
    Sinks sinks;
    sinks.here = [this](const PersonId& person, const std::vector<acts::Draft>& drafts,
                        const Moment& moment) -> Result<std::vector<entries::Entry>> {
      std::vector<entries::Entry> out;
      for (const auto& draft : drafts) out.push_back(take(person, draft, moment));
      return out;
    };
    log::must(make_entries(options, sinks));
    for (const auto& [job, fold] : jobs_) {
      const folds::CarView car = fold.view();
      lessons.push_back(folds::lesson_of(car));
      mean_nibs[job] = mean_of(car);
    }
    shop = shop_.view();
  }

  std::vector<folds::Lesson> lessons;
  folds::ShopView shop;
  std::map<JobId, double> mean_nibs;  // that fall on a car where there are no causes

 private:
  static double mean_of(const folds::CarView& car) {
    double out = 0;
    for (const auto& panel : car.panels) {
      const auto& shape = job::pattern(car.body).find(panel.plan.panel)->shape;
      if (folds::face_was_sprayed(panel.plan))
        out += nib_share * per_m2(shape.attitude) * trade::area_mm2(shape.outline) / 1e6;
    }
    return out;
  }
  entries::Entry take(const PersonId& person, const acts::Draft& draft, const Moment& moment) {
    entries::Entry entry;
    entry.subject = draft.subject;
    ++count_;
    entry.order = {count_, {}, count_};
    for (std::size_t i = 0; i < 8; ++i)
      entry.hash.bytes[i] = static_cast<std::uint8_t>(count_ >> (8 * i));
    entry.wall_ms = moment.wall_ms;
    entry.boot = moment.boot;
    entry.boottime_ms = moment.since_boot_ms;
    entry.person = person;
    entry.payload = draft.payload;
    if (entry.subject)
      jobs_.try_emplace(entry.subject, entry.subject).first->second.apply(entry);
    else
      shop_.apply(entry);
    return entry;
  }

  std::uint64_t count_ = 0;
  std::map<JobId, folds::JobFold> jobs_;
  folds::ShopFold shop_;
};

}  // namespace jambline::demo
