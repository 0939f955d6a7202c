// The tables of a car's panels: what was planned, looked at, found, corrected, measured and
// photographed.
#include "folds/dirt_of_car.h"
#include "folds/tables.h"

namespace jambline::folds {

namespace {
void panel_rows(const CarView& car, const ShopView&, std::vector<TableRow>& rows) {
  for (const auto& one : car.panels) {
    const auto* placed = job::pattern(car.body).find(one.plan.panel);
    rows.emplace_back()
        .id(car.job)
        .text(car.plate)
        .word(one.plan.panel)
        .yes(one.plan.on_car)
        .word(one.plan.substrate)
        .word(one.plan.finish)
        .word(one.plan.treatment)
        .yes(face_was_sprayed(one.plan))
        .number(placed ? std::optional(trade::area_mm2(placed->shape.outline) / 1e6) : std::nullopt)
        .word(one.verdict)
        .yes(one.disputed)
        .word(one.dirt)
        .count(static_cast<std::int64_t>(one.marks.size()))
        .count(one.open_marks());
  }
}

void look_rows(const CarView& car, const ShopView& shop, std::vector<TableRow>& rows) {
  for (const auto& panel : car.panels)
    for (const auto& one : panel.looks)
      rows.emplace_back()
          .id(car.job)
          .text(car.plate)
          .word(panel.plan.panel)
          .word(one.verdict)
          .time(one.wall_ms)
          .person(shop, one.by)
          .id(one.entry);
}

void mark_rows(const CarView& car, const ShopView& shop, std::vector<TableRow>& rows) {
  for (const auto& panel : car.panels)
    for (const auto& one : panel.marks)
      rows.emplace_back()
          .id(car.job)
          .text(car.plate)
          .word(panel.plan.panel)
          .count(one.number)
          .word(one.defect)
          .count(one.size)
          .word(one.layer)
          .word(one.look)
          .word(one.stage)
          .number(one.x_mm)
          .number(one.y_mm)
          .word(one.end)
          .yes(one.came_back)
          .yes(is_dirt(one))
          .time(one.wall_ms)
          .person(shop, one.by)
          .id(one.placed);
}

void round_rows(const CarView& car, const ShopView& shop, std::vector<TableRow>& rows) {
  for (const auto& panel : car.panels)
    for (const auto& one : panel.rounds)
      rows.emplace_back()
          .id(car.job)
          .text(car.plate)
          .word(panel.plan.panel)
          .word(one.round)
          .word(one.how)
          .word(one.stage)
          .count(static_cast<std::int64_t>(one.marks.size()))
          .count(one.areas)
          .number(one.area_mm2)
          .number(one.work_min)
          .time(one.wall_ms)
          .person(shop, one.by)
          .id(one.finished);
}

void film_rows(const CarView& car, const ShopView& shop, std::vector<TableRow>& rows) {
  for (const auto& panel : car.panels)
    for (const auto& one : panel.film) {
      std::string all;
      for (const double um : one.readings_um)
        all += (all.empty() ? "" : " ") + TableRow().number(um).cells().front();
      rows.emplace_back()
          .id(car.job)
          .text(car.plate)
          .word(panel.plan.panel)
          .count(one.spot)
          .word(one.when)
          .word(one.gauge)
          .number(one.mean_um)
          .text(all)
          .number(one.taken_um)
          .time(one.wall_ms)
          .person(shop, one.by)
          .last(one.heads);
    }
}

void picture_rows(const CarView& car, const ShopView& shop, std::vector<TableRow>& rows) {
  for (const auto& one : car.pictures)
    rows.emplace_back()
        .id(car.job)
        .text(car.plate)
        .id(one.picture)
        .word(one.place.stage)
        .word(one.place.panel)
        .word(one.from)
        .id(one.facts.file)
        .count(one.facts.size_bytes)
        .count(one.facts.width_px)
        .count(one.facts.height_px)
        .yes(one.kept_though_poor)
        .count(static_cast<std::int64_t>(one.notes.size()))
        .time(one.wall_ms)
        .person(shop, one.by)
        .id(one.taken);
}
}  // namespace

std::vector<Table> tables_of_paint() {
  constexpr auto words = CellKind::FreeText;
  constexpr auto number = CellKind::Number;
  constexpr auto truth = CellKind::YesNo;
  return {
      {"panels",
       "planned panels; area of the outline as drawn",
       {{"job"},
        {"car", words},
        {"panel"},
        {"on_car", truth},
        {"substrate"},
        {"finish"},
        {"treatment"},
        {"face_sprayed", truth},
        {"area_m2", number, "m2"},
        {"verdict"},
        {"disputed", truth},
        {"dirt_class"},
        {"marks", number},
        {"open_marks", number}},
       panel_rows},
      {"looks",
       "every look at a panel that stands, in the order in which it was said",
       {{"job"},
        {"car", words},
        {"panel"},
        {"verdict"},
        {"at_utc"},
        {"by_id"},
        {"by", words},
        {"entry"}},
       look_rows},
      {"marks",
       "marks that stand, in millimetres on the panel laid flat, y up",
       {{"job"},
        {"car", words},
        {"panel"},
        {"number", number},
        {"defect"},
        {"size", number},
        {"layer"},
        {"looks_like"},
        {"stage"},
        {"x_mm", number, "mm"},
        {"y_mm", number, "mm"},
        {"end"},
        {"came_back", truth},
        {"dirt", truth},
        {"at_utc"},
        {"by_id"},
        {"by", words},
        {"entry"}},
       mark_rows},
      {"rounds",
       "rounds of correction",
       {{"job"},
        {"car", words},
        {"panel"},
        {"round"},
        {"how"},
        {"stage"},
        {"marks", number},
        {"areas", number},
        {"area_mm2", number, "mm2"},
        {"work_min", number, "min"},
        {"at_utc"},
        {"by_id"},
        {"by", words},
        {"entry"}},
       round_rows},
      {"film",
       "film readings by spot",
       {{"job"},
        {"car", words},
        {"panel"},
        {"spot", number},
        {"when"},
        {"gauge"},
        {"mean_um", number, "um"},
        {"readings_um", CellKind::Text, "um"},
        {"taken_um", number, "um"},
        {"at_utc"},
        {"by_id"},
        {"by", words},
        {"entry"}},
       film_rows},
      {"pictures",
       "pictures that stand; the file by its SHA-256",
       {{"job"},
        {"car", words},
        {"picture"},
        {"stage"},
        {"panel"},
        {"from"},
        {"file"},
        {"size_bytes", number, "bytes"},
        {"width_px", number, "px"},
        {"height_px", number, "px"},
        {"kept_though_poor", truth},
        {"notes", number},
        {"at_utc"},
        {"by_id"},
        {"by", words},
        {"entry"}},
       picture_rows},
  };
}

}  // namespace jambline::folds
