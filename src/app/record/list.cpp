#include <iostream>
#include <memory>

#include "app/command_line_words.h"
#include "app/record/car_lines.h"
#include "app/record/commands.h"
#include "app/record/read_folder.h"
#include "base/json.h"
#include "folds/floor_view.h"

namespace jambline::app {

int list(const ListAsked& asked) {
  const auto folder = read_folder(asked.folder);
  if (!folder) {
    std::cerr << said(folder.error());
    return 2;
  }
  std::vector<folds::FloorRow> rows;
  for (const auto& car : folder->cars) rows.push_back(folds::floor_row(car));
  if (asked.json) {
    std::cout << to_json(rows) << '\n';
    return 0;
  }
  for (const auto& row : rows) std::cout << car_line(row, folder->shop.zone) << '\n';
  std::cout << rows.size() << (rows.size() == 1 ? " car\n" : " cars\n");
  return 0;
}

}  // namespace jambline::app
