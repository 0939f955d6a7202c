// folds/tables.h: every table of the record, for other programs: cars, operations, hours, panels,
// marks, sprays, the register and so on, each by rows of one car or of the shop.
//
// Shape:   a table has a name, columns and rows of as many cells as columns; an empty cell is "not
//          there". Columns end in their unit (estimate_min, area_m2); times are UTC as ISO 8601
//          with milliseconds, yes and no are words, ids and hashes are hex, kinds are the record's
//          own English words. `car` is the plate, to read; `job` is what joins tables.
// CSV:     RFC 4180: UTF-8, comma, CRLF, quotes where they are needed, one line of heads. A cell of
//          a column that people type (`FreeText`) and that begins with = + - @, a tab or a return
//          has an apostrophe put before it, so that a spreadsheet takes it as text and not as a
//          formula; take it off again to have the words as they were. Numbers are as they are.
// JSON:    {"table":..., "columns":[{"name","unit"}], "rows":[{...}]}; numbers as numbers, yes and
//          no as true and false, without the apostrophe, empty cells left out.
// Names:   people by id and by the name that the shop has for them now; one that was erased is
//          empty.
// Threads: pure.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "entries/entry.h"
#include "folds/car_view.h"
#include "folds/shop_view.h"

namespace jambline::folds {

enum class CellKind : std::uint8_t { Text, FreeText, Number, YesNo };

struct TableColumn {
  std::string_view name;
  CellKind kind = CellKind::Text;
  std::string_view unit = {};
};

// The cells of one row, from left to right.
class TableRow {
 public:
  TableRow& text(std::string_view words);
  TableRow& number(double value);
  TableRow& number(std::int64_t value);
  TableRow& number(std::optional<double> value) { return value ? number(*value) : nothing(); }
  TableRow& count(std::int64_t value) { return number(value); }
  TableRow& yes(bool value) { return text(value ? "yes" : "no"); }
  TableRow& time(std::optional<std::int64_t> ms);
  TableRow& seconds(std::int64_t ms);
  TableRow& day(std::optional<int> days_since_1970);
  TableRow& nothing() { return text({}); }
  template <std::size_t N, class Tag>
  TableRow& id(const Bytes<N, Tag>& value) {
    return value ? text(value.hex()) : nothing();
  }
  template <std::size_t N, class Tag>
  TableRow& id(const std::optional<Bytes<N, Tag>>& value) {
    return value ? id(*value) : nothing();
  }
  TableRow& last(const std::vector<Hash>& heads) {
    return heads.empty() ? nothing() : id(heads.back());
  }
  template <WordedEnum E>
  TableRow& word(E value) {
    return text(word_of(value));
  }
  template <WordedEnum E>
  TableRow& word(const std::optional<E>& value) {
    return value ? text(word_of(*value)) : nothing();
  }
  TableRow& person(const ShopView& shop, const PersonId& who);  // two cells: id and name
  TableRow& person(const ShopView& shop, const std::optional<PersonId>& who);
  const std::vector<std::string>& cells() const { return cells_; }

 private:
  std::vector<std::string> cells_;
};

struct Table {
  std::string_view name;
  std::string_view about;
  std::vector<TableColumn> columns;
  // Whichever there is: rows of a car, of the shop, or of one entry.
  void (*of_car)(const CarView& car, const ShopView& shop, std::vector<TableRow>& rows) = nullptr;
  void (*of_shop)(const ShopView& shop, std::vector<TableRow>& rows) = nullptr;
  void (*of_entry)(const entries::Entry& entry, const ShopView& shop,
                   std::vector<TableRow>& rows) = nullptr;
};

// All of them, cars first.
const std::vector<Table>& tables();
const Table* table_of(std::string_view name);  // null: there is none

void add_csv_heads(std::string& out, const Table& table);
void add_csv_row(std::string& out, const Table& table, const TableRow& row);
// One cell by the rules above.
std::string csv_cell(std::string_view text, CellKind kind);

std::string json_before_rows(const Table& table);
void add_json_row(std::string& out, const Table& table, const TableRow& row, bool first);
std::string json_after_rows();

// Internal to the tables: by what they are of.
std::vector<Table> tables_of_work();
std::vector<Table> tables_of_visit();
std::vector<Table> tables_of_paint();
std::vector<Table> tables_of_air();
std::vector<Table> tables_of_shop();

}  // namespace jambline::folds
