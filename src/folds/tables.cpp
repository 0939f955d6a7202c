#include "folds/tables.h"

#include <algorithm>
#include <cstdio>
#include <ctime>

#include "base/json.h"
#include "base/spans.h"

namespace jambline::folds {

namespace {
constexpr std::string_view begins_a_formula = "=+-@\t\r";

std::string padded(std::int64_t number, std::size_t digits) {
  std::string out = std::to_string(number);
  if (out.size() < digits) out.insert(0, digits - out.size(), '0');
  return out;
}

std::tm utc_of(std::int64_t seconds) {
  const std::time_t time = seconds;
  std::tm out{};
  gmtime_r(&time, &out);
  return out;
}

std::string date_of(const std::tm& utc) {
  return padded(utc.tm_year + 1900, 4) + "-" + padded(utc.tm_mon + 1, 2) + "-" +
         padded(utc.tm_mday, 2);
}
}  // namespace

TableRow& TableRow::text(std::string_view words) {
  cells_.emplace_back(words);
  return *this;
}

TableRow& TableRow::number(double value) {
  std::string out;
  json::write_number(out, value);
  cells_.push_back(std::move(out));
  return *this;
}

TableRow& TableRow::number(std::int64_t value) {
  return text(std::to_string(value));
}

TableRow& TableRow::time(std::optional<std::int64_t> ms) {
  if (!ms) return nothing();
  const std::int64_t part_ms = ((*ms % 1000) + 1000) % 1000;
  const std::tm utc = utc_of((*ms - part_ms) / 1000);
  return text(date_of(utc) + "T" + padded(utc.tm_hour, 2) + ":" + padded(utc.tm_min, 2) + ":" +
              padded(utc.tm_sec, 2) + "." + padded(part_ms, 3) + "Z");
}

TableRow& TableRow::seconds(std::int64_t ms) {
  const std::int64_t whole = ms < 0 ? -ms : ms;
  return text((ms < 0 ? "-" : "") + std::to_string(whole / 1000) + "." + padded(whole % 1000, 3));
}

TableRow& TableRow::day(std::optional<int> days_since_1970) {
  if (!days_since_1970) return nothing();
  return text(date_of(utc_of(*days_since_1970 * (jambline::day_ms / 1000))));
}

TableRow& TableRow::person(const ShopView& shop, const PersonId& who) {
  const auto* known = shop.find(who);
  return id(who).text(known ? std::string_view(known->name) : std::string_view());
}

TableRow& TableRow::person(const ShopView& shop, const std::optional<PersonId>& who) {
  return person(shop, who.value_or(PersonId{}));
}

const std::vector<Table>& tables() {
  static const std::vector<Table> all = [] {
    std::vector<Table> out;
    for (auto part : {tables_of_work(), tables_of_visit(), tables_of_paint(), tables_of_air(),
                      tables_of_shop()})
      for (auto& table : part) out.push_back(std::move(table));
    return out;
  }();
  return all;
}

const Table* table_of(std::string_view name) {
  for (const auto& table : tables())
    if (table.name == name) return &table;
  return nullptr;
}

std::string csv_cell(std::string_view text, CellKind kind) {
  std::string out(text);
  if (kind == CellKind::FreeText && !out.empty() &&
      begins_a_formula.find(out.front()) != std::string_view::npos)
    out.insert(out.begin(), '\'');
  if (out.find_first_of(",\"\r\n") == std::string::npos) return out;
  std::string quoted = "\"";
  for (const char sign : out) {
    if (sign == '"') quoted.push_back('"');
    quoted.push_back(sign);
  }
  quoted.push_back('"');
  return quoted;
}

void add_csv_heads(std::string& out, const Table& table) {
  for (std::size_t i = 0; i < table.columns.size(); ++i) {
    if (i > 0) out.push_back(',');
    out += table.columns[i].name;
  }
  out += "\r\n";
}

void add_csv_row(std::string& out, const Table& table, const TableRow& row) {
  for (std::size_t i = 0; i < table.columns.size(); ++i) {
    if (i > 0) out.push_back(',');
    out += csv_cell(row.cells()[i], table.columns[i].kind);
  }
  out += "\r\n";
}

std::string json_before_rows(const Table& table) {
  std::string out = "{\"table\":";
  json::write_text(out, table.name);
  out += ",\"columns\":[";
  for (const auto& column : table.columns) {
    if (out.back() != '[') out.push_back(',');
    out += "{\"name\":";
    json::write_text(out, column.name);
    if (!column.unit.empty()) {
      out += ",\"unit\":";
      json::write_text(out, column.unit);
    }
    out.push_back('}');
  }
  return out + "],\"rows\":[";
}

void add_json_row(std::string& out, const Table& table, const TableRow& row, bool first) {
  out += first ? "\n{" : ",\n{";
  bool first_cell = true;
  for (std::size_t i = 0; i < table.columns.size(); ++i) {
    const std::string& cell = row.cells()[i];
    if (cell.empty()) continue;
    if (!first_cell) out.push_back(',');
    first_cell = false;
    json::write_text(out, table.columns[i].name);
    out.push_back(':');
    switch (table.columns[i].kind) {
      case CellKind::Number:
        out += cell;
        break;
      case CellKind::YesNo:
        out += cell == "yes" ? "true" : "false";
        break;
      case CellKind::Text:
      case CellKind::FreeText:
        json::write_text(out, cell);
        break;
    }
  }
  out.push_back('}');
}

std::string json_after_rows() {
  return "\n]}\n";
}

}  // namespace jambline::folds
