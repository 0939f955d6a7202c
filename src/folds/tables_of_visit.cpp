// The tables of a car's visit: releases, comebacks, parts, sublets, signatures, notes.
#include "folds/tables.h"

namespace jambline::folds {

namespace {
void release_row(const CarView& car, const ShopView& shop, std::optional<job::Panel> panel,
                 const ReleaseView& one, std::vector<TableRow>& rows) {
  if (one.state == ReleaseState::None) return;
  rows.emplace_back()
      .id(car.job)
      .text(car.plate)
      .word(panel)
      .word(one.state)
      .person(shop, one.giver)
      .person(shop, one.taker)
      .word(one.to)
      .text(one.reason)
      .yes(one.disputed)
      .time(one.wall_ms)
      .last(one.answer_heads.empty() ? one.offer_heads : one.answer_heads);
}

void release_rows(const CarView& car, const ShopView& shop, std::vector<TableRow>& rows) {
  release_row(car, shop, {}, car.car_release, rows);
  for (const auto& panel : car.panels)
    release_row(car, shop, panel.plan.panel, panel.release, rows);
}

void comeback_rows(const CarView& car, const ShopView& shop, std::vector<TableRow>& rows) {
  for (const auto& one : car.visit.comebacks)
    rows.emplace_back()
        .id(car.job)
        .text(car.plate)
        .time(one.wall_ms)
        .text(one.complaint)
        .word(one.panel)
        .text(one.who_pays)
        .yes(one.over)
        .person(shop, one.by)
        .id(one.entry);
}

void part_rows(const CarView& car, const ShopView& shop, std::vector<TableRow>& rows) {
  for (const auto& one : car.visit.parts)
    rows.emplace_back()
        .id(car.job)
        .text(car.plate)
        .text(one.said.part_name)
        .word(one.said.state)
        .time(one.said.expected_ms)
        .time(one.wall_ms)
        .person(shop, one.by)
        .last(one.heads);
}

void sublet_rows(const CarView& car, const ShopView& shop, std::vector<TableRow>& rows) {
  for (const auto& one : car.visit.sublets)
    rows.emplace_back()
        .id(car.job)
        .text(car.plate)
        .word(one.said.kind)
        .text(one.said.who)
        .word(one.said.state)
        .time(one.said.expected_ms)
        .time(one.wall_ms)
        .person(shop, one.by)
        .last(one.heads);
}

void signature_rows(const CarView& car, const ShopView& shop, std::vector<TableRow>& rows) {
  for (const auto& one : car.visit.signatures)
    rows.emplace_back()
        .id(car.job)
        .text(car.plate)
        .word(one.what)
        .text(one.signer)
        .count(one.open_points)
        .time(one.wall_ms)
        .person(shop, one.by)
        .id(one.entry);
}

void note_rows(const CarView& car, const ShopView& shop, std::vector<TableRow>& rows) {
  for (const auto& one : car.visit.notes)
    rows.emplace_back()
        .id(car.job)
        .text(car.plate)
        .time(one.wall_ms)
        .text(one.text)
        .person(shop, one.by)
        .id(one.entry);
}
}  // namespace

std::vector<Table> tables_of_visit() {
  constexpr auto words = CellKind::FreeText;
  constexpr auto number = CellKind::Number;
  constexpr auto truth = CellKind::YesNo;
  return {
      {"releases",
       "parts and cars that were handed on; no panel: the whole car",
       {{"job"},
        {"car", words},
        {"panel"},
        {"state"},
        {"giver_id"},
        {"giver", words},
        {"taker_id"},
        {"taker", words},
        {"to_role"},
        {"reason", words},
        {"disputed", truth},
        {"at_utc"},
        {"entry"}},
       release_rows},
      {"comebacks",
       "cars that came back",
       {{"job"},
        {"car", words},
        {"at_utc"},
        {"complaint", words},
        {"panel"},
        {"who_pays", words},
        {"over", truth},
        {"by_id"},
        {"by", words},
        {"entry"}},
       comeback_rows},
      {"parts",
       "parts that were bought, by the last word",
       {{"job"},
        {"car", words},
        {"part", words},
        {"state"},
        {"expected_utc"},
        {"at_utc"},
        {"by_id"},
        {"by", words},
        {"entry"}},
       part_rows},
      {"sublets",
       "work that somebody else did, by the last word",
       {{"job"},
        {"car", words},
        {"kind"},
        {"who", words},
        {"state"},
        {"expected_utc"},
        {"at_utc"},
        {"by_id"},
        {"by", words},
        {"entry"}},
       sublet_rows},
      {"signatures",
       "who signed for what, with so many points open; without the strokes",
       {{"job"},
        {"car", words},
        {"what"},
        {"signer", words},
        {"open_points", number},
        {"at_utc"},
        {"by_id"},
        {"by", words},
        {"entry"}},
       signature_rows},
      {"notes",
       "notes on cars",
       {{"job"}, {"car", words}, {"at_utc"}, {"note", words}, {"by_id"}, {"by", words}, {"entry"}},
       note_rows},
  };
}

}  // namespace jambline::folds
