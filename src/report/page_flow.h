// report/page_flow.h: pieces one below the other, set onto pages.
//
// Shape:   lengths in dots of report/pdf_file.h. A piece is never torn; one that has to stay with
//          the next goes to a new page with it. A piece of a table whose page begins in the middle
//          of it gets the table's head above it. What is higher than a page has one for itself.
// Threads: one owner.
#pragma once

#include <QPainter>
#include <functional>
#include <memory>
#include <vector>

#include "base/error.h"

namespace jambline::report {

inline double points(double pt) {
  return pt * 300.0 / 72.0;
}
inline double millimetres(double mm) {
  return mm * 300.0 / 25.4;
}

struct Piece {
  double height = 0;
  double above = 0;  // free room; none at the head of a page
  bool with_next = false;
  std::shared_ptr<const Piece> head = {};  // of the table that it belongs to
  bool is_head = false;
  std::function<Status(QPainter&, double top)> draw;
};

struct Placed {
  const Piece* piece = nullptr;
  double top = 0;
};
using Page = std::vector<Placed>;

// `pieces` have to outlive what comes back.
std::vector<Page> onto_pages(const std::vector<Piece>& pieces, double page_height,
                             double first_page_top = 0);

}  // namespace jambline::report
