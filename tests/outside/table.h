// tests/outside/table.h: values from outside the program, one file each, beside the tests.
//
// A line is comma-separated; the first one names the columns; a cell may hold several numbers with
// blanks between. Lines that begin with # say where the values are from: "# Source: who; what of
// it, how it was got". A table of inputs alone says "# Input". count.py counts rows and sources.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <fstream>
#include <gtest/gtest.h>
#include <map>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

namespace jambline::outside {

using Row = std::map<std::string, std::string>;

inline std::vector<std::string> cells_of(const std::string& line) {
  std::vector<std::string> cells;
  std::istringstream in(line);
  for (std::string cell; std::getline(in, cell, ',');) cells.push_back(cell);
  if (!line.empty() && line.back() == ',') cells.emplace_back();
  return cells;
}

inline std::vector<Row> table(const std::string& file) {
  const std::string path = std::string(JAMBLINE_SOURCE_DIR) + "/tests/outside/" + file;
  std::ifstream in(path);
  if (!in) throw std::runtime_error("cannot read " + path);
  std::vector<std::string> head;
  std::vector<Row> rows;
  for (std::string line; std::getline(in, line);) {
    if (line.empty() || line.front() == '#') continue;
    const auto cells = cells_of(line);
    if (head.empty()) {
      head = cells;
      continue;
    }
    if (cells.size() != head.size()) throw std::runtime_error(file + ": " + line);
    Row row;
    for (std::size_t i = 0; i < head.size(); ++i) row[head[i]] = cells[i];
    rows.push_back(std::move(row));
  }
  return rows;
}

inline std::vector<double> numbers(const std::string& cell) {
  std::istringstream in(cell);
  std::vector<double> out;
  for (std::string one; in >> one;) out.push_back(std::stod(one));
  return out;
}

inline double number(const Row& row, const char* column) {
  return std::stod(row.at(column));
}

inline std::int64_t whole(const Row& row, const char* column) {
  return std::stoll(row.at(column));
}

// Equal to a part in 10^9, or to `within` where the numbers are small.
inline testing::AssertionResult same(double found, double wanted, double within = 1e-12) {
  const double off = std::abs(found - wanted);
  if (off <= std::max(within, 1e-9 * std::abs(wanted))) return testing::AssertionSuccess();
  return testing::AssertionFailure() << found << " for " << wanted << ", " << off << " off";
}
// A chance may be tiny: then it is its parts that are equal.
inline testing::AssertionResult same_chance(double found, double wanted) {
  return same(found, wanted, 1e-300);
}

}  // namespace jambline::outside
