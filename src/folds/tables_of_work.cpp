// The tables of a car's work: cars, operations, hours, waits, stages, amendments.
#include "folds/tables.h"
#include "folds/worked.h"

namespace jambline::folds {

namespace {
constexpr auto typed = CellKind::FreeText;
constexpr auto counted = CellKind::Number;
constexpr auto yes_no = CellKind::YesNo;

void car_rows(const CarView& car, const ShopView&, std::vector<TableRow>& rows) {
  std::optional<job::Stage> next;
  for (const auto& stage : car.stages)
    if (!stage.done && !next) next = stage.stage;
  rows.emplace_back()
      .id(car.job)
      .text(car.plate)
      .text(car.vin)
      .text(car.color.code)
      .text(car.color.name)
      .word(car.body)
      .word(car.drive)
      .time(car.opened_ms)
      .time(car.promised_ms)
      .time(car.delivered_ms)
      .word(next)
      .id(car.booth)
      .count(car.entries)
      .count(car.refused_entries);
}

void operation_rows(const CarView& car, const ShopView& shop, std::vector<TableRow>& rows) {
  for (const auto& one : car.operations)
    rows.emplace_back()
        .id(car.job)
        .text(car.plate)
        .id(one.operation)
        .word(one.stage)
        .text(one.title)
        .word(one.work)
        .text(one.why)
        .count(one.estimate_min)
        .seconds(one.clocked_ms)
        .yes(one.done)
        .person(shop, one.done_by)
        .word(one.approval)
        .last(one.heads);
}

void worked_rows(const CarView& car, const ShopView& shop, std::vector<TableRow>& rows) {
  for (const auto& one : worked_of(car).spans)
    rows.emplace_back()
        .id(car.job)
        .text(car.plate)
        .id(one.operation)
        .word(one.stage)
        .text(one.title)
        .word(one.work)
        .person(shop, one.person)
        .time(one.start_ms)
        .time(one.end_ms)
        .seconds(one.end_ms - one.start_ms)
        .yes(one.clock_doubt)
        .id(one.from.act)
        .id(one.to.act);
}

void wait_rows(const CarView& car, const ShopView&, std::vector<TableRow>& rows) {
  for (const auto& one : worked_of(car).waits)
    rows.emplace_back()
        .id(car.job)
        .text(car.plate)
        .word(one.reason)
        .time(one.start_ms)
        .time(one.end_ms)
        .time(one.expected_ms);
}

void stage_rows(const CarView& car, const ShopView&, std::vector<TableRow>& rows) {
  for (const auto& one : car.stages)
    rows.emplace_back()
        .id(car.job)
        .text(car.plate)
        .word(one.stage)
        .yes(one.done)
        .time(one.done ? std::optional(one.said_ms) : std::nullopt)
        .count(one.shots_missing.value_or(0))
        .word(one.without_shots)
        .last(one.heads);
}

void amendment_rows(const CarView& car, const ShopView& shop, std::vector<TableRow>& rows) {
  for (const auto& one : car.visit.amended)
    rows.emplace_back()
        .id(car.job)
        .text(car.plate)
        .id(one.operation)
        .person(shop, one.worker)
        .word(one.act)
        .time(one.at_ms)
        .time(one.clock_ms)
        .text(one.reason)
        .person(shop, one.amended_by)
        .id(one.entry);
}
}  // namespace

std::vector<Table> tables_of_work() {
  return {
      {"cars",
       "one row a car",
       {{"job"},
        {"car", typed},
        {"vin", typed},
        {"color_code", typed},
        {"color", typed},
        {"body"},
        {"drive"},
        {"opened_utc"},
        {"promised_utc"},
        {"delivered_utc"},
        {"next_stage"},
        {"booth_id"},
        {"entries", counted},
        {"refused_entries", counted}},
       car_rows},
      {"operations",
       "what was planned, and what was clocked on it by everybody in closed spans",
       {{"job"},
        {"car", typed},
        {"operation"},
        {"stage"},
        {"title", typed},
        {"work"},
        {"why", typed},
        {"estimate_min", counted, "min"},
        {"clocked_s", counted, "s"},
        {"done", yes_no},
        {"done_by_id"},
        {"done_by", typed},
        {"approval"},
        {"entry"}},
       operation_rows},
      {"worked",
       "one row a closed span of one person's clock, as it counts",
       {{"job"},
        {"car", typed},
        {"operation"},
        {"stage"},
        {"title", typed},
        {"work"},
        {"person_id"},
        {"person", typed},
        {"start_utc"},
        {"end_utc"},
        {"worked_s", counted, "s"},
        {"clock_in_doubt", yes_no},
        {"start_entry"},
        {"end_entry"}},
       worked_rows},
      {"waits",
       "what cars waited for; that of a delivered car ended with the delivery",
       {{"job"}, {"car", typed}, {"reason"}, {"start_utc"}, {"end_utc"}, {"expected_utc"}},
       wait_rows},
      {"stages",
       "stages of cars, and pictures that were missing when they were ended",
       {{"job"},
        {"car", typed},
        {"stage"},
        {"done", yes_no},
        {"done_utc"},
        {"pictures_missing", counted},
        {"why"},
        {"entry"}},
       stage_rows},
      {"amendments",
       "clock acts that count at another time than the clock said",
       {{"job"},
        {"car", typed},
        {"operation"},
        {"person_id"},
        {"person", typed},
        {"act"},
        {"at_utc"},
        {"clock_utc"},
        {"reason", typed},
        {"amended_by_id"},
        {"amended_by", typed},
        {"entry"}},
       amendment_rows},
  };
}

}  // namespace jambline::folds
