#include "folds/cure_of_car.h"

#include <algorithm>
#include <map>

#include "base/spans.h"

namespace jambline::folds {

namespace {
constexpr double room_c = 20;
constexpr double warm_holds_min = 60;

struct CoatedGroup {
  std::vector<job::Panel> panels;
  Stamp last;
  bool heavy_film = false;
};

std::map<job::PanelGroup, CoatedGroup> by_group(const CarView& car, const MixView& mix) {
  std::map<job::PanelGroup, CoatedGroup> out;
  for (const auto& coat : mix.coats)
    for (const auto panel : coat.panels) {
      const auto* view = car.find(panel);
      const auto group =
          job::group_of(panel, view ? view->plan.substrate : trade::Substrate::Steel);
      CoatedGroup& coated = out[group];
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

trade::CureClock clock_of(const job::Product& product, const CoatedGroup& coated,
                          const Moment& now) {
  trade::CureClock in;
  in.kind = product.cure;
  for (const auto& step : product.steps)
    if (step.milestone != trade::CureMilestone::PotLife) in.steps.push_back(step);
  in.minimum_c = product.minimum_c;
  in.surface_max_c = product.surface_max_c;
  in.rest_after_bake_min = product.rest_after_bake_min;
  in.heavy_factor = product.heavy_factor;
  in.heavy_film = coated.heavy_film;
  in.now_min = static_cast<double>(elapsed_ms(coated.last, now)) / ms_per_min;
  return in;
}

struct Readings {
  std::vector<trade::SurfaceReading> list;
  const PanelTemperatureView* last = nullptr;
  bool cooled = false;  // the last is no longer believed

  void add(double at_min, double surface_c) {
    if (list.empty() && at_min > 0) list.push_back({0, std::min(surface_c, room_c)});
    // Two readings at one time: the colder one holds.
    if (!list.empty() && at_min <= list.back().at_min)
      list.back().surface_c = std::min(list.back().surface_c, surface_c);
    else
      list.push_back({std::max(at_min, 0.0), surface_c});
  }
};

// Until when a warm reading is believed: an hour, or the end of the bake that came after it.
struct Believed {
  double until_min;
  bool baked = false;  // it was warm until then: the bake was on
};

Believed believed(const CarView& car, const CoatedGroup& coated, const PanelTemperatureView& read,
                  const Moment& now) {
  Believed out{minutes_between(coated.last, read.at, now) + warm_holds_min};
  for (const auto& bake : car.air.bakes) {
    if (bake.on || bake.at.order < read.at.order) continue;
    const double end_min = minutes_between(coated.last, bake.at, now);
    if (end_min < out.until_min) out = {end_min, true};
  }
  return out;
}

Readings readings_of(const CarView& car, job::PanelGroup group, const CoatedGroup& coated,
                     const Moment& now) {
  Readings out;
  // A next reading within the hour after that says itself how it cooled.
  const auto cool = [&](double before_min, double within_min) {
    if (!out.last || out.last->surface_c <= room_c) return;
    const Believed warm = believed(car, coated, *out.last, now);
    if (warm.until_min >= before_min) return;
    const bool told = warm.until_min + within_min >= before_min;
    if (warm.baked || !told) out.add(warm.until_min, out.last->surface_c);
    if (told) return;
    out.add(std::min(warm.until_min + 1, before_min), room_c);
    out.cooled = true;
  };
  for (const auto& read : car.air.temperatures) {
    if (read.group != group || read.at.order < coated.last.order) continue;
    const double at_min = minutes_between(coated.last, read.at, now);
    cool(at_min, warm_holds_min);
    out.add(at_min, read.surface_c);
    out.last = &read;
    out.cooled = false;
  }
  cool(static_cast<double>(elapsed_ms(coated.last, now)) / ms_per_min, 0);
  return out;
}

void add_bake_and_thumbnail(const CarView& car, job::PanelGroup group, const CoatedGroup& coated,
                            const Moment& now, trade::CureClock& in) {
  for (const auto& bake : car.air.bakes)
    if (!bake.on && coated.last.order < bake.at.order)
      in.bake_end_min = std::max(0.0, minutes_between(coated.last, bake.at, now));
  for (const auto& check : car.air.thumbnails)
    if (check.group == group && coated.last.order < check.at.order)
      in.thumbnail = check.firm ? trade::ThumbnailCheck::Firm : trade::ThumbnailCheck::NotYet;
}

bool touches_film(job::ProductKind kind) {
  return kind != job::ProductKind::PanelAdhesive && kind != job::ProductKind::GlassUrethane;
}
}  // namespace

std::vector<CureOfGroup> cure_of_car(const CarView& car, const ShopView& shop, const Moment& now,
                                     const LearnedFilm& learned) {
  std::vector<CureOfGroup> out;
  for (const auto& mix : car.air.mixes) {
    const auto* product = shop.air.find(mix.product);
    if (!product || !touches_film(product->said.kind)) continue;
    for (auto& [group, coated] : by_group(car, mix)) {
      CureOfGroup one;
      one.mix = mix.mix;
      one.product = mix.product;
      one.group = group;
      one.panels = coated.panels;
      one.coated = coated.last;
      trade::CureClock in = clock_of(product->said, coated, now);
      add_bake_and_thumbnail(car, group, coated, now, in);
      one.learned = learned.of(mix.product, car.job);
      in.learned_factor = one.learned.factor;
      Readings readings = readings_of(car, group, coated, now);
      in.readings = std::move(readings.list);
      if (readings.last) {
        one.surface_c = readings.last->surface_c;
        one.read_at = readings.last->at;
        one.read_again = readings.cooled;
        one.result = trade::cure_clock(in);
      }
      one.asked = std::move(in);
      out.push_back(std::move(one));
    }
  }
  return out;
}

namespace {
// What the maker's table is asked; none: no such product or case.
std::optional<trade::DriveAway> asked_of(const SetGlass& glass, const ProductView* product) {
  if (product)
    for (const auto& table : product->said.drive_away)
      if (table.case_name == glass.case_name)
        return trade::DriveAway{table.rows, glass.coldest_c, glass.driest_percent};
  return std::nullopt;
}

std::int64_t passed_ms(const SetGlass& glass, const Moment& now) {
  return elapsed_ms(glass.at, now) + glass.set_before_ms;
}

std::optional<std::int64_t> from_ms(const SetGlass& glass, const trade::DriveAwayResult& result,
                                    const Moment& now) {
  if (!result.minutes) return std::nullopt;
  return now.wall_ms - passed_ms(glass, now) +
         static_cast<std::int64_t>(*result.minutes * ms_per_min);
}
}  // namespace

std::vector<BondOfCar> bonds_of_car(const CarView& car, const ShopView& shop, const Moment& now) {
  std::vector<BondOfCar> out;
  for (const auto& bond : car.air.bonds) {
    const auto* product = shop.air.find(bond.product);
    const SetGlass glass = set_glass(bond, car.air);
    BondOfCar one;
    one.bond = bond.bond;
    one.product = bond.product;
    one.what = bond.what;
    one.case_name = bond.case_name;
    one.set_ms = bond.set_ms.value_or(bond.at.wall_ms);
    one.glass = !bond.case_name.empty();
    if (one.glass) one.asked = asked_of(glass, product);
    if (one.asked) one.result = trade::drive_away(*one.asked);
    if (one.result && *one.result) one.drive_from_ms = from_ms(glass, **one.result, now);
    if (product && !product->said.steps.empty() && glass.coldest_c) {
      trade::CureClock in;
      in.kind = product->said.cure;
      in.steps = product->said.steps;
      in.minimum_c = product->said.minimum_c;
      in.now_min = static_cast<double>(passed_ms(glass, now)) / ms_per_min;
      in.readings = {{0, *glass.coldest_c}};
      one.strength = trade::cure_clock(in);
      one.strength_asked = std::move(in);
    }
    out.push_back(std::move(one));
  }
  return out;
}

const CureOfGroup* film_of_group(const std::vector<CureOfGroup>& cures, job::PanelGroup group) {
  const CureOfGroup* out = nullptr;
  for (const auto& one : cures)
    if (one.group == group && (!out || out->coated.order < one.coated.order)) out = &one;
  return out;
}

std::optional<double> touch_percent(const CureOfGroup& film) {
  if (!film.result || !*film.result || !(*film.result)->computed) return std::nullopt;
  for (const auto milestone : {trade::CureMilestone::PolishFrom, trade::CureMilestone::SandFrom,
                               trade::CureMilestone::LastPolish})
    for (const auto& standing : (*film.result)->standings)
      if (standing.milestone == milestone) return standing.done_percent;
  return std::nullopt;
}

FilmStanding standing_of(const std::vector<CureOfGroup>& cures, job::Panel panel,
                         trade::CureMilestone milestone) {
  FilmStanding out;
  for (const auto& one : cures) {
    if (std::find(one.panels.begin(), one.panels.end(), panel) == one.panels.end()) continue;
    if (out.group && one.coated.order < out.group->coated.order) continue;
    const auto& steps = one.asked->steps;
    const auto step = std::find_if(steps.begin(), steps.end(),
                                   [&](const auto& each) { return each.milestone == milestone; });
    if (step == steps.end()) continue;
    out.group = &one;
    out.standing = nullptr;
    if (one.result && *one.result)
      out.standing = &(*one.result)->standings[static_cast<std::size_t>(step - steps.begin())];
  }
  return out;
}

std::optional<DoNotDrive> do_not_drive(const std::vector<SetGlass>& glass, const ShopView& shop,
                                       const Moment& now) {
  std::optional<DoNotDrive> out;
  for (const auto& one : glass) {
    const auto asked = asked_of(one, shop.air.find(one.product));
    const auto result = asked ? trade::drive_away(*asked) : Result<trade::DriveAwayResult>{};
    const auto from = result ? from_ms(one, *result, now) : std::nullopt;
    if (!from) return DoNotDrive{};
    if (*from <= now.wall_ms) continue;
    if (!out) out = DoNotDrive{from};
    out->until_ms = std::max(*out->until_ms, *from);
  }
  return out;
}

std::optional<DoNotDrive> do_not_drive(const CarView& car, const ShopView& shop,
                                       const Moment& now) {
  return do_not_drive(glass_of(car.air), shop, now);
}

}  // namespace jambline::folds
