// The tables of the shop: booths and what was read there, the register, products, people, entries.
#include "base/spans.h"
#include "folds/booth_state.h"
#include "folds/tables.h"

namespace jambline::folds {

namespace {
std::string_view unit_of(job::BoothReading what) {
  switch (what) {
    case job::BoothReading::Velocity:
      return "m/s";
    case job::BoothReading::FilterPressure:
      return "Pa";
    case job::BoothReading::Exhaust:
      return "m3/h";
    case job::BoothReading::SmokeTest:
      return "min";
  }
  return {};
}

void air_reading_rows(const ShopView& shop, std::vector<TableRow>& rows) {
  for (const auto& booth : shop.air.booths)
    for (const auto& one : booth.readings)
      for (const double value : one.values)
        rows.emplace_back()
            .id(booth.booth)
            .text(shop.find(booth.booth) ? shop.find(booth.booth)->name : std::string())
            .word(one.what)
            .number(value)
            .text(unit_of(one.what))
            .number(one.instrument_percent)
            .time(one.happened_ms)
            .person(shop, one.by)
            .id(one.entry);
}

void booth_rows(const ShopView& shop, std::vector<TableRow>& rows) {
  for (const auto& one : shop.booths)
    rows.emplace_back().id(one.booth).text(one.name).word(one.kind);
}

void booth_event_rows(const ShopView& shop, std::vector<TableRow>& rows) {
  for (const auto& one : shop.booth_events)
    rows.emplace_back()
        .id(one.booth)
        .text(shop.find(one.booth) ? shop.find(one.booth)->name : std::string())
        .word(one.what)
        .time(one.happened_ms)
        .person(shop, one.by)
        .last(one.heads);
}

// One row a thing that falls due.
void register_rows(const ShopView& shop, std::vector<TableRow>& rows) {
  const auto model = [&shop](const RespiratorId& respirator) {
    const auto* known = shop.air.find(respirator);
    return known ? known->said.model : std::string();
  };
  for (const auto& person : shop.air.people) {
    for (const auto& one : person.fit_tests)
      rows.emplace_back()
          .text("fit test")
          .person(shop, person.person)
          .id(one.respirator)
          .text(model(one.respirator))
          .nothing()
          .day(one.said.tested_day)
          .day(one.said.tested_day + one.said.valid_days)
          .yes(one.said.passed)
          .word(one.said.method)
          .last(one.heads);
    for (const auto& one : person.cartridges)
      rows.emplace_back()
          .text("cartridge")
          .person(shop, person.person)
          .id(one.respirator)
          .text(model(one.respirator))
          .nothing()
          .day(static_cast<int>(one.changed_ms / jambline::day_ms))
          .nothing()
          .nothing()
          .text(TableRow().number(one.schedule_h).cells().front() + " h by schedule")
          .last(one.heads);
    for (const auto& one : person.dues)
      rows.emplace_back()
          .word(one.what)
          .person(shop, person.person)
          .nothing()
          .nothing()
          .nothing()
          .nothing()
          .day(one.due_day)
          .nothing()
          .nothing()
          .last(one.heads);
  }
  for (const auto& booth : shop.air.booths)
    if (const auto* test = last_reading(&booth, job::BoothReading::SmokeTest))
      rows.emplace_back()
          .text("clearance test")
          .person(shop, PersonId{})
          .nothing()
          .nothing()
          .id(booth.booth)
          .day(static_cast<int>(test->happened_ms / jambline::day_ms))
          .day(static_cast<int>(*smoke_test_due_ms(booth) / jambline::day_ms))
          .nothing()
          .nothing()
          .id(test->entry);
  if (const auto& air = shop.air.breathing_air)
    rows.emplace_back()
        .text("breathing air")
        .person(shop, PersonId{})
        .nothing()
        .nothing()
        .nothing()
        .day(air->said.checked_day)
        .day(air->said.checked_day + air->said.valid_days)
        .yes(air->said.grade_d && air->said.co_alarm_works && air->said.low_flow_alarm_works)
        .nothing()
        .last(air->heads);
}

void respirator_rows(const ShopView& shop, std::vector<TableRow>& rows) {
  for (const auto& one : shop.air.respirators)
    rows.emplace_back()
        .id(one.respirator)
        .text(one.said.model)
        .word(one.said.kind)
        .number(one.said.assigned_factor)
        .text(one.said.authority)
        .count(one.said.year)
        .yes(one.said.retired)
        .last(one.heads);
}

void product_rows(const ShopView& shop, std::vector<TableRow>& rows) {
  for (const auto& one : shop.air.products)
    rows.emplace_back()
        .id(one.product)
        .text(one.said.product_name)
        .word(one.said.kind)
        .yes(one.said.activated)
        .yes(one.said.retired)
        .last(one.heads);
}

void sample_rows(const ShopView& shop, std::vector<TableRow>& rows) {
  for (const auto& one : shop.air.samples)
    rows.emplace_back()
        .person(shop, one.person)
        .text(one.substance)
        .number(one.value)
        .text(one.unit)
        .time(one.from_ms)
        .time(one.to_ms)
        .id(one.respirator)
        .last(one.heads);
}

void person_rows(const ShopView& shop, std::vector<TableRow>& rows) {
  for (const auto& one : shop.people)
    rows.emplace_back().id(one.person).text(one.name).word(one.role).yes(one.left);
}

void shop_rows(const ShopView& shop, std::vector<TableRow>& rows) {
  rows.emplace_back().text(shop.name).text(shop.zone.empty() ? "UTC" : shop.zone);
}

void entry_rows(const entries::Entry& entry, const ShopView& shop, std::vector<TableRow>& rows) {
  rows.emplace_back()
      .id(entry.hash)
      .id(entry.order.device)
      .count(static_cast<std::int64_t>(entry.order.seq))
      .text(entries::kind_name(entry.kind))
      .id(entry.subject)
      .time(entry.wall_ms)
      .person(shop, entry.person)
      .yes(entry.refused != entries::Refused::No);
}
}  // namespace

std::vector<Table> tables_of_shop() {
  constexpr auto words = CellKind::FreeText;
  constexpr auto number = CellKind::Number;
  constexpr auto truth = CellKind::YesNo;
  return {
      {"air_readings",
       "what was read in booths; the smoke test is the clearance test",
       {{"booth_id"},
        {"booth", words},
        {"what"},
        {"value", number},
        {"unit"},
        {"instrument_percent", number, "%"},
        {"at_utc"},
        {"by_id"},
        {"by", words},
        {"entry"}},
       nullptr,
       air_reading_rows},
      {"booths", "booths", {{"booth_id"}, {"booth", words}, {"kind"}}, nullptr, booth_rows},
      {"booth_events",
       "what was done to booths",
       {{"booth_id"}, {"booth", words}, {"what"}, {"at_utc"}, {"by_id"}, {"by", words}, {"entry"}},
       nullptr,
       booth_event_rows},
      {"register",
       "what falls due: fit tests, cartridges, training, clearance tests, breathing air; days in "
       "UTC",
       {{"what"},
        {"person_id"},
        {"person", words},
        {"respirator_id"},
        {"respirator", words},
        {"booth_id"},
        {"done_day"},
        {"due_day"},
        {"passed", truth},
        {"detail"},
        {"entry"}},
       nullptr,
       register_rows},
      {"respirators",
       "respirators of the shop",
       {{"respirator_id"},
        {"respirator", words},
        {"kind"},
        {"assigned_factor", number},
        {"authority", words},
        {"year", number},
        {"retired", truth},
        {"entry"}},
       nullptr,
       respirator_rows},
      {"products",
       "products by their sheets",
       {{"product_id"},
        {"product", words},
        {"kind"},
        {"activated", truth},
        {"retired", truth},
        {"entry"}},
       nullptr,
       product_rows},
      {"samples",
       "exposure that was measured",
       {{"person_id"},
        {"person", words},
        {"substance", words},
        {"value", number},
        {"unit", words},
        {"from_utc"},
        {"to_utc"},
        {"respirator_id"},
        {"entry"}},
       nullptr,
       sample_rows},
      {"people",
       "people of the shop; a name that was erased is empty",
       {{"person_id"}, {"person", words}, {"role"}, {"left", truth}},
       nullptr,
       person_rows},
      {"shop",
       "the shop, and the zone of its days",
       {{"shop", words}, {"zone"}},
       nullptr,
       shop_rows},
      {"entries",
       "every entry without what it says: that is in the log and in evidence bundles",
       {{"entry"},
        {"device"},
        {"seq", number},
        {"kind"},
        {"job"},
        {"at_utc"},
        {"by_id"},
        {"by", words},
        {"refused", truth}},
       nullptr,
       nullptr,
       entry_rows},
  };
}

}  // namespace jambline::folds
