// screens/mark_rows.h: the standing marks of one panel, merged where their rings would overlap.
//
// Roles:   mark (hex), number, kind (job::DefectKind), title ("Nib 4"), note ("size 1 · in clear"),
//          place ("upper rear"), spoken ("Nib 4, open, size 1, upper rear of left quarter panel"),
//          ended (gone or burnt through: its ring is struck), xMm, yMm (of its ring, on the panel
//          drawn upright), together (how many the ring holds), shown (false: the ring of an earlier
//          row holds it).
// Merging: rings closer than 24 dp become one, open ones and ended ones apart. pxPerMm 0: nothing
// is
//          merged.
// Threads: GUI thread. Rows are given by InspectViewModel.
#pragma once

#include "base/ids.h"
#include "job/mark.h"
#include "screens/row_model.h"
#include "trade/geometry.h"

namespace jambline::screens {

struct MarkRow {
  QString key;  // the id, hex
  MarkId mark;
  int number = 0;
  job::DefectKind defect{};
  int size = 1;
  job::Layer layer{};
  std::optional<job::ParticleLook> look;
  bool ended = false;
  trade::Point_mm at;  // on the panel drawn upright
  QString title;
  QString note;
  QString place;
  QString spoken;
  int ring = 0;  // which ring holds it, counted from 0
  int together = 1;
  bool shown = true;
  trade::Point_mm ring_at;
  friend bool operator==(const MarkRow&, const MarkRow&) = default;
};

std::vector<RowModel<MarkRow>::Column> mark_columns();

// Fills what is said of the rings.
void merge_rings(std::vector<MarkRow>& rows, double px_per_mm);

}  // namespace jambline::screens
