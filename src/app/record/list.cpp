#include <cstdio>
#include <iostream>
#include <memory>

#include "app/command_line_words.h"
#include "app/record/commands.h"
#include "app/record/entry_lines.h"
#include "app/record/read_folder.h"
#include "base/json.h"
#include "folds/floor_view.h"

namespace jambline::app {

namespace {
// Columns by signs, not by bytes.
std::string padded(std::string text, std::size_t width) {
  std::size_t signs = 0;
  for (const char byte : text) signs += (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U;
  if (signs < width) text.append(width - signs, ' ');
  return text + "  ";
}

std::string stage_words(const folds::FloorRow& row) {
  if (row.next_stage) return std::string(word_of(*row.next_stage));
  return row.stages > 0 ? "all done" : "nothing planned";
}

}  // namespace

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
  for (const auto& row : rows) {
    std::cout << padded(one_line(row.plate.empty() ? row.vin : row.plate), 12)
              << padded(one_line(row.color.name), 16) << padded(std::string(word_of(row.body)), 18)
              << padded(stage_words(row), 18)
              << padded(std::to_string(row.marks_open) +
                            (row.marks_open == 1 ? " mark open" : " marks open"),
                        14)
              << (row.delivered_ms ? "delivered " + time_of(*row.delivered_ms, folder->shop.zone)
                                   : std::string("in the shop"))
              << '\n';
  }
  std::cout << rows.size() << (rows.size() == 1 ? " car\n" : " cars\n");
  return 0;
}

}  // namespace jambline::app
