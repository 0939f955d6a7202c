// What is sprayed, baked and bonded on a car: add_air of air.h.
#include <algorithm>
#include <cmath>

#include "app/demo/air.h"
#include "app/demo/booths.h"
#include "base/spans.h"
#include "folds/booth_state.h"
#include "folds/gun_facts.h"

namespace jambline::demo {

namespace {

using job::PanelGroup;

ProductId product(const folds::ShopView& shop, job::ProductKind kind) {
  for (const auto& one : shop.air.products)
    if (one.said.kind == kind && one.said.cure != trade::CureKind::Uv) return one.product;
  return {};
}

const folds::MixView* mix_of(const folds::CarView& car, const ProductId& product) {
  const folds::MixView* out = nullptr;
  for (const auto& one : car.air.mixes)
    if (one.product == product) out = &one;
  return out;
}

AirAct mix(job::ProductKind kind, std::string batch) {
  return [kind, batch = std::move(batch)](const folds::CarView& car, const folds::ShopView& shop,
                                          const Moment&) {
    const ProductId what = product(shop, kind);
    if (!what) return Commands{};
    return Commands{acts::MixProduct{car.job, what, batch, kind == job::ProductKind::Base, {}, {}}};
  };
}

AirAct coats(job::ProductKind kind, int count, double flash_min, const std::string& gun) {
  return [=](const folds::CarView& car, const folds::ShopView& shop, const Moment&) {
    const auto* mixed = mix_of(car, product(shop, kind));
    if (!mixed || !mixed->coats.empty()) return Commands{};
    acts::SayCoats said{car.job, mixed->mix, {}, count, {flash_min}, gun, false};
    for (const auto& panel : car.panels) said.panels.push_back(panel.plan.panel);
    return Commands{said};
  };
}

// Nobody sprays in two booths, or where somebody else does.
bool gun_is_free(const folds::ShopView& shop, const Moment& now) {
  return std::all_of(shop.booths.begin(), shop.booths.end(), [&](const auto& booth) {
    return folds::booth_state(booth, shop.air.find(booth.booth), now).up.empty();
  });
}

AirAct start_spray(const BoothId& booth, const PersonId& person) {
  return [=](const folds::CarView& car, const folds::ShopView& shop, const Moment& now) {
    RespiratorId hood;
    for (const auto& one : shop.air.respirators)
      if (one.said.kind == job::RespiratorKind::SuppliedHood) hood = one.respirator;
    if (!hood || !gun_is_free(shop, now)) return Commands{};
    acts::StartSpray said{car.job, booth, hood, true, {}};
    for (const auto& fact : folds::gun_facts({shop, car, booth, person, hood, true, now})) {
      if (job::is_of_now(fact.item))
        said.checks.push_back({fact.item, job::CutAnswer::Yes, {}, {}});
      else if (job::class_of(fact.item) == job::CheckClass::Must && fact.known != true)
        said.checks.push_back({fact.item, job::CutAnswer::No, job::GunReason::RecordNotHere, {}});
    }
    return Commands{said};
  };
}

AirAct gun_down(const BoothId& booth) {
  return [=](const folds::CarView& car, const folds::ShopView& shop, const Moment& now) {
    for (const auto& up : folds::booth_state(*shop.find(booth), shop.air.find(booth), now).up)
      if (up.job == car.job) return Commands{acts::GunDown{booth, up.spray}};
    return Commands{};
  };
}

AirAct clearance_over(const BoothId& booth) {
  return [=](const folds::CarView&, const folds::ShopView& shop, const Moment& now) {
    const auto state = folds::booth_state(*shop.find(booth), shop.air.find(booth), now);
    if (state.word != folds::BoothWordNow::TimeOver) return Commands{};
    return Commands{acts::LogClearanceOver{booth}};
  };
}

AirAct bake(bool on) {
  return [on](const folds::CarView& car, const folds::ShopView&, const Moment&) {
    Commands out;
    const bool runs = !car.air.bakes.empty() && car.air.bakes.back().on;
    if (car.air.mixes.empty() || runs == on) return out;
    if (on && car.drive != job::Drive::Combustion && !car.air.bake_limit)
      out.push_back(acts::ReadBakeLimit{car.job, 65, 45, "repair information of the carmaker"});
    out.push_back(acts::SayBake{car.job, on});
    return out;
  };
}

// The roof is the warmest; low panels and plastic lag behind.
AirAct temperatures(double roof_c) {
  return [roof_c](const folds::CarView& car, const folds::ShopView&, const Moment&) {
    constexpr double share_of_rise[] = {1, 0.92, 0.68, 0.75};
    Commands out;
    if (car.air.mixes.empty()) return out;
    for (std::size_t i = 0; i < enum_words<PanelGroup>.size(); ++i) {
      const auto group = static_cast<PanelGroup>(i);
      const bool here =
          std::any_of(car.panels.begin(), car.panels.end(), [&](const folds::PanelView& panel) {
            return job::group_of(panel.plan.panel, panel.plan.substrate) == group;
          });
      const double surface_c = 20 + (roof_c - 20) * share_of_rise[i];
      if (here)
        out.push_back(acts::ReadPanelTemperature{car.job, group, std::round(surface_c * 2) / 2});
    }
    return out;
  };
}

AirAct climate(const BoothId& booth, double air_c, double percent) {
  return [=](const folds::CarView& car, const folds::ShopView&, const Moment&) {
    return Commands{acts::ReadClimate{car.job, booth, air_c, air_c - 1, percent}};
  };
}

AirAct set_windshield() {
  return [](const folds::CarView& car, const folds::ShopView& shop, const Moment& now) {
    for (const auto& one : shop.air.products)
      if (!one.said.drive_away.empty())
        return Commands{acts::SayBonded{car.job, one.product, "windshield",
                                        one.said.drive_away.front().case_name,
                                        now.wall_ms - 10 * minute_ms}};
    return Commands{};
  };
}

class Sprayed {
 public:
  Sprayed(Visit& visit, std::int64_t now_ms, const Crew& crew)
      : visit_(visit), now_ms_(now_ms), crew_(crew) {}
  void add(std::int64_t at_ms, Who who, AirAct act) {
    if (at_ms > now_ms_ || visit_.steps.empty() || at_ms < visit_.steps.front().at_ms) return;
    Step step{at_ms, crew_.at(who), {}};
    step.air = std::move(act);
    const auto after = std::find_if(visit_.steps.begin(), visit_.steps.end(),
                                    [&](const Step& one) { return one.at_ms > at_ms; });
    visit_.steps.insert(after, std::move(step));
  }

  // The gun is up from `start_ms` until `down_ms`, then it is cleared and baked.
  void spray(const BoothId& booth, std::int64_t start_ms, std::int64_t down_ms,
             const std::string& batch) {
    const PersonId ivo = crew_.at(Who::Ivo);
    add(start_ms - 4 * minute_ms, Who::Ivo, mix(job::ProductKind::Base, "B " + batch));
    add(start_ms - 3 * minute_ms, Who::Ivo, mix(job::ProductKind::Clear, "C " + batch));
    add(start_ms - 2 * minute_ms, Who::Ivo, climate(booth, 21.5, 47));
    add(start_ms, Who::Ivo, start_spray(booth, ivo));
    add(down_ms, Who::Ivo, gun_down(booth));
    add(down_ms + minute_ms / 2, Who::Ivo, coats(job::ProductKind::Base, 3, 6, "1.3 mm, 1.8 bar"));
    add(down_ms + minute_ms, Who::Ivo, coats(job::ProductKind::Clear, 2, 8, "1.3 mm, 2.0 bar"));
    add(down_ms + 14 * minute_ms, Who::Ivo, clearance_over(booth));
    add(down_ms + 15 * minute_ms, Who::Ivo, temperatures(21));
    add(down_ms + 16 * minute_ms, Who::Ivo, bake(true));
    add(down_ms + 33 * minute_ms, Who::Ivo, temperatures(58));
    add(down_ms + 58 * minute_ms, Who::Ivo, temperatures(59.5));
    add(down_ms + 60 * minute_ms, Who::Ivo, bake(false));
    add(down_ms + 75 * minute_ms, Who::Ivo, temperatures(38));
    add(down_ms + 100 * minute_ms, Who::Ivo, temperatures(26));
    add(down_ms + 200 * minute_ms, Who::Ben, temperatures(20));
  }

 private:
  Visit& visit_;
  std::int64_t now_ms_;
  const Crew& crew_;
};
}  // namespace

void add_air(Visit& visit, std::int64_t now_ms, const Crew& crew, const House& house, int in_work) {
  const BoothId booth = house.booths[booth_of_lane(in_work % lanes)];
  const std::string batch = std::to_string(4100 + 7 * in_work);
  Sprayed sprayed(visit, now_ms, crew);
  for (std::size_t i = 2; i < visit.steps.size(); ++i)
    if (visit.steps[i].finishes == job::Stage::Spray) {
      const std::int64_t start_ms = visit.steps[i - 2].at_ms + 6 * minute_ms;
      const std::int64_t down_ms = visit.steps[i].at_ms - 3 * minute_ms;
      sprayed.spray(booth, start_ms, down_ms, batch);
      break;
    }
  const auto ago = [&](int minutes) { return now_ms - minutes * minute_ms; };
  if (in_work == 7) sprayed.spray(booth, ago(128), ago(95), batch);
  if (in_work == 13) {
    sprayed.add(ago(362), Who::Mara, set_windshield());
    sprayed.add(ago(350), Who::Mara, climate({}, 19.5, 38));
    sprayed.add(ago(120), Who::Mara, climate({}, 21, 41));
  }
}

}  // namespace jambline::demo
