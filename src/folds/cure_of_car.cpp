#include "folds/cure_of_car.h"

#include <algorithm>
#include <map>

namespace jambline::folds {

namespace {
constexpr double ms_per_min = 60'000;
constexpr double room_c = 20;

struct Coated {
  std::vector<job::Panel> panels;
  Stamp last;
  bool heavy_film = false;
};

std::map<job::PanelGroup, Coated> by_group(const CarView& car, const MixView& mix) {
  std::map<job::PanelGroup, Coated> out;
  for (const auto& coat : mix.coats)
    for (const auto panel : coat.panels) {
      const auto* view = car.find(panel);
      const auto group =
          job::group_of(panel, view ? view->plan.substrate : trade::Substrate::Steel);
      Coated& coated = out[group];
      if (std::find(coated.panels.begin(), coated.panels.end(), panel) == coated.panels.end())
        coated.panels.push_back(panel);
      coated.last = coat.at;
      coated.heavy_film = coated.heavy_film || coat.heavy_film;
    }
  return out;
}

// Minutes from one stamp to another, both seen from now.
double minutes_between(const Stamp& from, const Stamp& to, const Moment& now) {
  return static_cast<double>(elapsed_ms(from, now) - elapsed_ms(to, now)) / ms_per_min;
}

trade::CureClock clock_of(const CarView& car, const job::Product& product, job::PanelGroup group,
                          const Coated& coated, const Moment& now) {
  trade::CureClock in;
  in.kind = product.cure;
  in.steps = product.steps;
  in.minimum_c = product.minimum_c;
  in.surface_max_c = product.surface_max_c;
  in.rest_after_bake_min = product.rest_after_bake_min;
  in.heavy_factor = product.heavy_factor;
  in.heavy_film = coated.heavy_film;
  in.now_min = static_cast<double>(elapsed_ms(coated.last, now)) / ms_per_min;
  double last_min = 0;
  for (const auto& read : car.air.temperatures) {
    if (read.group != group || read.at.order < coated.last.order) continue;
    const double at_min = minutes_between(coated.last, read.at, now);
    if (in.readings.empty() && at_min > 0)
      in.readings.push_back({0, std::min(read.surface_c, room_c)});
    if (!in.readings.empty() && at_min <= last_min) {
      // Two readings at one time: the colder one holds.
      in.readings.back().surface_c = std::min(in.readings.back().surface_c, read.surface_c);
      continue;
    }
    in.readings.push_back({std::max(at_min, 0.0), read.surface_c});
    last_min = at_min;
  }
  for (const auto& bake : car.air.bakes)
    if (!bake.on && coated.last.order < bake.at.order)
      in.bake_end_min = std::max(0.0, minutes_between(coated.last, bake.at, now));
  for (const auto& check : car.air.thumbnails)
    if (check.group == group && coated.last.order < check.at.order)
      in.thumbnail = check.firm ? trade::ThumbnailCheck::Firm : trade::ThumbnailCheck::NotYet;
  return in;
}

bool touches_film(job::ProductKind kind) {
  return kind != job::ProductKind::PanelAdhesive && kind != job::ProductKind::GlassUrethane;
}
}  // namespace

std::vector<CureOfGroup> cure_of_car(const CarView& car, const ShopView& shop, const Moment& now) {
  std::vector<CureOfGroup> out;
  for (const auto& mix : car.air.mixes) {
    const auto* product = shop.air.find(mix.product);
    if (!product || !touches_film(product->said.kind)) continue;
    for (auto& [group, coated] : by_group(car, mix)) {
      CureOfGroup one{mix.mix, mix.product, group, coated.panels, coated.last, {}, {}, {}};
      trade::CureClock in = clock_of(car, product->said, group, coated, now);
      if (!in.readings.empty()) {
        one.surface_c = in.readings.back().surface_c;
        one.result = trade::cure_clock(in);
      }
      one.asked = std::move(in);
      out.push_back(std::move(one));
    }
  }
  return out;
}

std::vector<BondOfCar> bonds_of_car(const CarView& car, const ShopView& shop, const Moment& now) {
  std::vector<BondOfCar> out;
  for (const auto& bond : car.air.bonds) {
    const auto* product = shop.air.find(bond.product);
    BondOfCar one;
    one.bond = bond.bond;
    one.product = bond.product;
    one.what = bond.what;
    one.set_ms = bond.set_ms.value_or(bond.at.wall_ms);
    one.glass = !product || product->said.kind == job::ProductKind::GlassUrethane;
    std::optional<double> coldest_c, driest_percent;
    for (const auto& read : car.air.climates) {
      if (read.at.order < bond.at.order) continue;
      coldest_c = std::min(coldest_c.value_or(read.air_c), read.air_c);
      driest_percent =
          std::min(driest_percent.value_or(read.humidity_percent), read.humidity_percent);
    }
    if (product && one.glass) {
      for (const auto& table : product->said.drive_away)
        if (table.case_name == bond.case_name) {
          one.asked = trade::DriveAway{table.rows, coldest_c, driest_percent};
          one.result = trade::drive_away(*one.asked);
        }
      if (one.result && *one.result && (*one.result)->minutes)
        one.drive_from_ms =
            one.set_ms + static_cast<std::int64_t>(*(*one.result)->minutes * ms_per_min);
    }
    if (product && !product->said.steps.empty() && coldest_c) {
      trade::CureClock in;
      in.kind = product->said.cure;
      in.steps = product->said.steps;
      in.minimum_c = product->said.minimum_c;
      in.now_min = std::max(0.0, static_cast<double>(now.wall_ms - one.set_ms) / ms_per_min);
      in.readings = {{0, *coldest_c}};
      one.strength = trade::cure_clock(in);
    }
    out.push_back(std::move(one));
  }
  return out;
}

std::optional<DoNotDrive> do_not_drive(const CarView& car, const ShopView& shop,
                                       const Moment& now) {
  std::optional<DoNotDrive> out;
  for (const auto& bond : bonds_of_car(car, shop, now)) {
    if (!bond.glass) continue;
    if (!bond.drive_from_ms) return DoNotDrive{};
    if (*bond.drive_from_ms <= now.wall_ms) continue;
    if (!out) out = DoNotDrive{bond.drive_from_ms};
    out->until_ms = std::max(*out->until_ms, *bond.drive_from_ms);
  }
  return out;
}

}  // namespace jambline::folds
