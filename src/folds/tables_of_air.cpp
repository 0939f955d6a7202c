// The tables of spraying: starts, what was passed over, reports of spraying without, mixes,
// climate.
#include "folds/tables.h"

namespace jambline::folds {

namespace {
void spray_rows(const CarView& car, const ShopView& shop, std::vector<TableRow>& rows) {
  for (const auto& one : car.air.sprays) {
    std::int64_t musts = 0;
    std::int64_t shoulds = 0;
    for (const auto& check : one.checks) {
      if (check.answer != job::CutAnswer::No) continue;
      musts += job::class_of(check.item) == job::CheckClass::Must ? 1 : 0;
      shoulds += job::class_of(check.item) == job::CheckClass::Should ? 1 : 0;
    }
    rows.emplace_back()
        .id(car.job)
        .text(car.plate)
        .id(one.spray)
        .id(one.booth)
        .id(one.respirator)
        .yes(one.activated)
        .count(static_cast<std::int64_t>(one.checks.size()))
        .count(musts)
        .count(shoulds)
        .time(one.at.wall_ms)
        .person(shop, one.by)
        .id(one.entry);
  }
}

// Before the gun, before cutting, and against the order of assembly.
void override_rows(const CarView& car, const ShopView& shop, std::vector<TableRow>& rows) {
  for (const auto& spray : car.air.sprays)
    for (const auto& check : spray.checks) {
      const auto kind = job::class_of(check.item);
      if (check.answer != job::CutAnswer::No || kind == job::CheckClass::Stop) continue;
      rows.emplace_back()
          .id(car.job)
          .text(car.plate)
          .text("before the gun")
          .word(kind)
          .word(check.item)
          .word(check.reason)
          .text(check.note)
          .time(spray.at.wall_ms)
          .person(shop, spray.by)
          .id(spray.entry);
    }
  for (const auto& one : car.before_cut)
    for (const auto& check : one.checks)
      if (check.reason)
        rows.emplace_back()
            .id(car.job)
            .text(car.plate)
            .text("before cutting")
            .word(job::class_of(check.item))
            .word(check.item)
            .word(check.reason)
            .nothing()
            .time(one.wall_ms)
            .person(shop, one.person)
            .last(one.heads);
  for (const auto& step : car.assembly.steps)
    for (const auto& broken : step.broken)
      rows.emplace_back()
          .id(car.job)
          .text(car.plate)
          .text("assembly")
          .nothing()
          .word(step.step)
          .word(broken.reason)
          .nothing()
          .time(step.wall_ms)
          .person(shop, step.by)
          .last(step.heads);
}

void without_rows(const CarView& car, const ShopView& shop, std::vector<TableRow>& rows) {
  for (const auto& one : car.air.without)
    for (const auto item : one.items)
      rows.emplace_back()
          .id(car.job)
          .text(car.plate)
          .id(one.booth)
          .word(item)
          .time(one.at.wall_ms)
          .person(shop, one.by)
          .id(one.entry);
}

void mix_rows(const CarView& car, const ShopView& shop, std::vector<TableRow>& rows) {
  for (const auto& one : car.air.mixes) {
    std::int64_t coats = 0;
    for (const auto& coat : one.coats) coats += coat.coats;
    const auto* product = shop.air.find(one.product);
    rows.emplace_back()
        .id(car.job)
        .text(car.plate)
        .id(one.product)
        .text(product ? product->said.product_name : std::string())
        .text(one.batch)
        .yes(one.color_approved)
        .time(one.mixed_ms)
        .count(coats)
        .time(one.at.wall_ms)
        .person(shop, one.by)
        .last(one.heads);
  }
}

void climate_rows(const CarView& car, const ShopView& shop, std::vector<TableRow>& rows) {
  for (const auto& one : car.air.climates)
    rows.emplace_back()
        .id(car.job)
        .text(car.plate)
        .id(one.booth)
        .number(one.air_c)
        .number(one.surface_c)
        .number(one.humidity_percent)
        .time(one.at.wall_ms)
        .person(shop, one.by)
        .id(one.entry);
}
}  // namespace

std::vector<Table> tables_of_air() {
  constexpr auto words = CellKind::FreeText;
  constexpr auto number = CellKind::Number;
  constexpr auto truth = CellKind::YesNo;
  return {
      {"sprays",
       "starts of spraying; what was passed over by name is in overrides",
       {{"job"},
        {"car", words},
        {"spray"},
        {"booth_id"},
        {"respirator_id"},
        {"activated", truth},
        {"checks", number},
        {"musts_passed_over", number},
        {"shoulds_not_met", number},
        {"at_utc"},
        {"by_id"},
        {"by", words},
        {"entry"}},
       spray_rows},
      {"overrides",
       "musts that were passed over and shoulds that were not met, before the gun, before cutting "
       "and at assembly",
       {{"job"},
        {"car", words},
        {"where"},
        {"class"},
        {"item"},
        {"reason"},
        {"note", words},
        {"at_utc"},
        {"by_id"},
        {"by", words},
        {"entry"}},
       override_rows},
      {"sprayed_without",
       "what somebody said it was sprayed without, one row a thing",
       {{"job"},
        {"car", words},
        {"booth_id"},
        {"item"},
        {"at_utc"},
        {"by_id"},
        {"by", words},
        {"entry"}},
       without_rows},
      {"mixes",
       "what was mixed, and how many coats of it were sprayed",
       {{"job"},
        {"car", words},
        {"product_id"},
        {"product", words},
        {"batch", words},
        {"color_approved", truth},
        {"mixed_utc"},
        {"coats", number},
        {"at_utc"},
        {"by_id"},
        {"by", words},
        {"entry"}},
       mix_rows},
      {"climate_readings",
       "air and surface read on cars",
       {{"job"},
        {"car", words},
        {"booth_id"},
        {"air_c", number, "C"},
        {"surface_c", number, "C"},
        {"humidity_percent", number, "%"},
        {"at_utc"},
        {"by_id"},
        {"by", words},
        {"entry"}},
       climate_rows},
  };
}

}  // namespace jambline::folds
