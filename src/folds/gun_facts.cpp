#include "folds/gun_facts.h"

#include <algorithm>

#include "base/spans.h"

namespace jambline::folds {

namespace {
using job::GunItem;
constexpr std::int64_t reading_is_of_today_ms = day_ms;

class Facts {
 public:
  explicit Facts(const GunScene& scene)
      : scene_(scene),
        respirator_(scene.respirator ? scene.shop.air.find(*scene.respirator) : nullptr),
        person_(scene.shop.air.find(scene.person)),
        air_(scene.shop.air.find(scene.booth)) {}

  std::vector<GunFact> all() {
    for (std::size_t i = 0; i < enum_words<GunItem>.size(); ++i) {
      GunFact fact{static_cast<GunItem>(i), {}, {}, {}};
      if (!applies(fact.item)) continue;
      if (!job::is_of_now(fact.item)) look_up(fact);
      out_.push_back(fact);
    }
    return std::move(out_);
  }

 private:
  bool applies(GunItem item) const {
    switch (item) {
      case GunItem::FitTested:
        return !respirator_ || job::fits_tightly(respirator_->said.kind);
      case GunItem::BreathingAir:
        return !respirator_ || job::supplies_air(respirator_->said.kind);
      case GunItem::CartridgeInTime:
        return !respirator_ || job::has_cartridge(respirator_->said.kind);
      case GunItem::ColorApproved:
        return std::any_of(scene_.car.air.mixes.begin(), scene_.car.air.mixes.end(),
                           [&](const auto& mix) {
                             const auto* product = scene_.shop.air.find(mix.product);
                             return product && product->said.kind == job::ProductKind::Base;
                           });
      default:
        return true;
    }
  }

  void look_up(GunFact& fact) const {
    switch (fact.item) {
      case GunItem::RightRespirator:
        if (respirator_)
          fact.known = !respirator_->said.retired &&
                       (!scene_.activated || job::supplies_air(respirator_->said.kind) ||
                        !respirator_->said.allowed_for_activated.empty());
        break;
      case GunItem::MaySpray:
        fact.known = !(person_ && person_->do_not_spray);
        break;
      case GunItem::FitTested:
        fit_test(fact);
        break;
      case GunItem::BreathingAir:
        if (const auto& checked = scene_.shop.air.breathing_air) {
          due(fact, checked->said.checked_day, checked->said.valid_days);
          fact.known = *fact.known && checked->said.grade_d && checked->said.co_alarm_works &&
                       checked->said.low_flow_alarm_works;
        }
        break;
      case GunItem::CartridgeInTime:
        cartridge(fact);
        break;
      case GunItem::TrainedAndGun:
        if (person_)
          for (const auto& one : person_->dues)
            if (one.what == job::DueKind::PainterTraining) until(fact, one.due_day);
        break;
      case GunItem::FiltersAndGauge:
        if (const auto* read = last_reading(air_, job::BoothReading::FilterPressure)) {
          fact.as_of_ms = read->happened_ms;
          const bool today = scene_.now.wall_ms - read->happened_ms <= reading_is_of_today_ms &&
                             read->happened_ms <= scene_.now.wall_ms + reading_is_of_today_ms;
          const auto& most = air_->facts.most_pressure_pa;
          if (today && most)
            fact.known = *std::max_element(read->values.begin(), read->values.end()) < *most;
          else if (!today)
            fact.known = false;
        }
        break;
      case GunItem::ColorApproved:
        fact.known = std::all_of(
            scene_.car.air.mixes.begin(), scene_.car.air.mixes.end(), [&](const auto& mix) {
              const auto* product = scene_.shop.air.find(mix.product);
              return !product || product->said.kind != job::ProductKind::Base || mix.color_approved;
            });
        break;
      case GunItem::Climate:
        for (const auto& read : scene_.car.air.climates)
          if (read.booth == scene_.booth) fact.as_of_ms = read.at.wall_ms;
        break;
      default:
        break;
    }
  }

  void until(GunFact& fact, int due_day) const {
    fact.due_ms = (due_day + 1) * day_ms;  // the whole day counts
    fact.known = scene_.now.wall_ms < *fact.due_ms;
  }
  void due(GunFact& fact, int done_day, int valid_days) const {
    fact.as_of_ms = done_day * day_ms;
    until(fact, done_day + valid_days);
    // A record of tomorrow says that a clock or a hand was wrong.
    if (*fact.as_of_ms > scene_.now.wall_ms + day_ms) fact.known = false;
  }

  void fit_test(GunFact& fact) const {
    if (!person_ || !respirator_) return;
    for (const auto& one : person_->fit_tests) {
      if (one.respirator != respirator_->respirator) continue;
      const auto& test = one.said;
      due(fact, test.tested_day, test.valid_days);
      if (test.method == job::FitMethod::Qualitative) {
        // Good for a factor of 10 at most: half masks that work by breathing in.
        fact.known = *fact.known && test.passed &&
                     respirator_->said.kind == job::RespiratorKind::HalfAirPurifying;
        continue;
      }
      trade::FitTest in;
      in.exercise_factors = test.exercise_factors;
      in.facepiece = job::facepiece_of(respirator_->said.kind);
      const auto result = trade::fit_test(in);
      fact.known = *fact.known && result && result->passes;
    }
  }

  void cartridge(GunFact& fact) const {
    if (!person_ || !respirator_) return;
    for (const auto& one : person_->cartridges) {
      if (one.respirator != respirator_->respirator) continue;
      fact.as_of_ms = one.changed_ms;
      const auto left = trade::cartridge_left({one.schedule_h, one.schedule_basis, one.used_h});
      fact.known = left && !left->change;
    }
  }

  const GunScene& scene_;
  const RespiratorView* respirator_;
  const PersonAirView* person_;
  const BoothAirView* air_;
  std::vector<GunFact> out_;
};

}  // namespace

std::vector<GunFact> gun_facts(const GunScene& scene) {
  return Facts(scene).all();
}

}  // namespace jambline::folds
