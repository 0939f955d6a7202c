#include "app/record/car_lines.h"

#include "app/record/entry_lines.h"

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

std::string car_line(const folds::FloorRow& row, const std::string& zone) {
  return padded(one_line(row.plate.empty() ? row.vin : row.plate), 12) +
         padded(one_line(row.color.name), 16) + padded(std::string(word_of(row.body)), 18) +
         padded(stage_words(row), 18) +
         padded(
             std::to_string(row.marks_open) + (row.marks_open == 1 ? " mark open" : " marks open"),
             14) +
         (row.delivered_ms ? "delivered " + time_of(*row.delivered_ms, zone)
                           : std::string("in the shop"));
}

}  // namespace jambline::app
