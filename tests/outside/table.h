// tests/outside/table.h: values from outside the program, one file each, beside the tests.
//
// A line is comma-separated; the first one names the columns; lines that begin with # say where the
// values are from.
#pragma once

#include <fstream>
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

}  // namespace jambline::outside
