// Tables for other programs: RFC 4180 by the letter, formulas taken as text, JSON that reads back.
#include "folds/tables.h"

#include <gtest/gtest.h>
#include <set>

#include "base/json.h"

namespace jambline::folds {
namespace {

TEST(TablesCsv, QuotesWhatNeedsItAndDoublesQuotes) {
  EXPECT_EQ(csv_cell("plain", CellKind::FreeText), "plain");
  EXPECT_EQ(csv_cell("a,b", CellKind::FreeText), "\"a,b\"");
  EXPECT_EQ(csv_cell("say \"no\"", CellKind::FreeText), "\"say \"\"no\"\"\"");
  EXPECT_EQ(csv_cell("two\nlines", CellKind::FreeText), "\"two\nlines\"");
  EXPECT_EQ(csv_cell("two\r\nlines", CellKind::FreeText), "\"two\r\nlines\"");
  EXPECT_EQ(csv_cell("", CellKind::FreeText), "");
}

TEST(TablesCsv, WhatPeopleTypedIsNoFormulaAndNumbersStayNumbers) {
  for (const char* formula : {"=1+1", "+1", "-1", "@SUM(A1)", "\tx"}) {
    EXPECT_EQ(csv_cell(formula, CellKind::FreeText)[0], '\'') << formula;
    EXPECT_EQ(csv_cell(formula, CellKind::FreeText).substr(1), formula);
  }
  EXPECT_EQ(csv_cell("\r=1", CellKind::FreeText), "\"'\r=1\"");
  EXPECT_EQ(csv_cell("=HYPERLINK(\"a\",\"b\")", CellKind::FreeText),
            "\"'=HYPERLINK(\"\"a\"\",\"\"b\"\")\"");
  EXPECT_EQ(csv_cell("-1.5", CellKind::Number), "-1.5");
  EXPECT_EQ(csv_cell("a=b", CellKind::FreeText), "a=b");
}

TEST(TablesCsv, TimesAreUtcWithMilliseconds) {
  EXPECT_EQ(TableRow().time(1'795'617'000'007).cells()[0], "2026-11-25T14:30:00.007Z");
  EXPECT_EQ(TableRow().time(-1).cells()[0], "1969-12-31T23:59:59.999Z");
  EXPECT_EQ(TableRow().time(std::nullopt).cells()[0], "");
  EXPECT_EQ(TableRow().seconds(90'061).cells()[0], "90.061");
  EXPECT_EQ(TableRow().day(20'717).cells()[0], "2026-09-21");
}

TEST(TablesOfTheRecord, EveryRowHasACellForEveryColumn) {
  CarView car;
  car.job.bytes[0] = 1;
  car.plate = "=K 1";
  car.opened = true;
  car.body = job::BodyShape::FourDoorSedan;
  PanelView panel;
  panel.plan.panel = job::Panel::Hood;
  panel.looks = {{job::Verdict::Redo, {}, 5, Hash{{1}}}};
  panel.marks.emplace_back();
  panel.rounds.emplace_back();
  panel.film.emplace_back();
  panel.film.back().readings_um = {100, 101.5};
  panel.release.state = ReleaseState::Offered;
  car.panels = {panel};
  car.operations.emplace_back();
  car.worked.emplace_back();
  car.stages.emplace_back();
  car.pictures.emplace_back();
  car.visit.waits.emplace_back();
  car.visit.parts.emplace_back();
  car.visit.sublets.emplace_back();
  car.visit.signatures.emplace_back();
  car.visit.comebacks.emplace_back();
  car.visit.notes.emplace_back();
  car.visit.amended.emplace_back();
  SprayView spray;
  spray.checks = {{job::GunItem::FitTested, job::CutAnswer::No, job::GunReason::Broken, "-x"}};
  car.air.sprays = {spray};
  car.air.without = {{{}, {job::GunItem::SealOrFlow}, {}, {}, {}}};
  car.air.mixes.emplace_back();
  car.air.climates.emplace_back();
  ShopView shop;
  shop.people = {{PersonId{{1}}, "Ivo", {}, false, {}, {}}};
  shop.booths.emplace_back();
  shop.booth_events.emplace_back();
  BoothAirView air;
  air.readings = {{job::BoothReading::SmokeTest, {3}, 0, 5, {}, {}}};
  shop.air.booths = {air};
  shop.air.respirators.emplace_back();
  shop.air.products.emplace_back();
  shop.air.samples.emplace_back();
  shop.air.breathing_air.emplace();
  PersonAirView of_person;
  of_person.fit_tests.emplace_back();
  of_person.cartridges.emplace_back();
  of_person.dues.emplace_back();
  shop.air.people = {of_person};

  std::set<std::string_view> names;
  for (const auto& table : tables()) {
    EXPECT_TRUE(names.insert(table.name).second) << table.name;
    EXPECT_FALSE(table.about.empty()) << table.name;
    std::vector<TableRow> rows;
    if (table.of_car) table.of_car(car, shop, rows);
    if (table.of_shop) table.of_shop(shop, rows);
    if (table.of_entry) table.of_entry(entries::Entry{}, shop, rows);
    EXPECT_FALSE(rows.empty()) << table.name;
    std::string text = json_before_rows(table);
    bool first = true;
    for (const auto& row : rows) {
      ASSERT_EQ(row.cells().size(), table.columns.size()) << table.name;
      add_json_row(text, table, row, first);
      first = false;
    }
    text += json_after_rows();
    EXPECT_TRUE(JsonDocument::parse(text)) << table.name << "\n" << text;
    for (const auto& column : table.columns) {
      if (!column.unit.empty() && column.unit != "%" && column.unit != "bytes") {
        EXPECT_NE(column.name.find('_'), std::string_view::npos) << column.name;
      }
    }
  }
  EXPECT_EQ(table_of("no such"), nullptr);
}

}  // namespace
}  // namespace jambline::folds
