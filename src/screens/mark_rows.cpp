#include "screens/mark_rows.h"

#include "screens/map_geometry.h"

namespace jambline::screens {

std::vector<RowModel<MarkRow>::Column> mark_columns() {
  return {{"mark", [](const MarkRow& row) { return row.key; }},
          {"number", [](const MarkRow& row) { return row.number; }},
          {"kind", [](const MarkRow& row) { return static_cast<int>(row.defect); }},
          {"title", [](const MarkRow& row) { return row.title; }},
          {"note", [](const MarkRow& row) { return row.note; }},
          {"place", [](const MarkRow& row) { return row.place; }},
          {"spoken", [](const MarkRow& row) { return row.spoken; }},
          {"ended", [](const MarkRow& row) { return row.ended; }},
          {"xMm", [](const MarkRow& row) { return row.ring_at.x_mm; }},
          {"yMm", [](const MarkRow& row) { return row.ring_at.y_mm; }},
          {"together", [](const MarkRow& row) { return row.together; }},
          {"shown", [](const MarkRow& row) { return row.shown; }}};
}

void merge_rings(std::vector<MarkRow>& rows, double px_per_mm) {
  int number = 0;
  for (const bool ended : {false, true}) {
    std::vector<std::size_t> which;
    std::vector<Point_px> places;
    for (std::size_t i = 0; i < rows.size(); ++i) {
      if (rows[i].ended != ended) continue;
      which.push_back(i);
      places.push_back({rows[i].at.x_mm * px_per_mm, rows[i].at.y_mm * px_per_mm});
    }
    for (const auto& ring : merged(places, px_per_mm > 0 ? ring_apart_px : 0)) {
      trade::Point_mm sum;
      for (const std::size_t one : ring) {
        sum.x_mm += rows[which[one]].at.x_mm;
        sum.y_mm += rows[which[one]].at.y_mm;
      }
      const auto many = static_cast<double>(ring.size());
      for (const std::size_t one : ring) {
        MarkRow& row = rows[which[one]];
        row.ring = number;
        row.together = static_cast<int>(ring.size());
        row.shown = one == ring.front();
        row.ring_at = {sum.x_mm / many, sum.y_mm / many};
      }
      ++number;
    }
  }
}

}  // namespace jambline::screens
