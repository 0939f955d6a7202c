#include "report/page_flow.h"

namespace jambline::report {

namespace {
double height_of(const Piece& piece) {
  return piece.above + piece.height;
}

// How many pieces from `at` on stay together.
std::size_t block_of(const std::vector<Piece>& pieces, std::size_t at) {
  std::size_t end = at;
  while (end + 1 < pieces.size() && pieces[end].with_next) ++end;
  return end + 1 - at;
}
}  // namespace

std::vector<Page> onto_pages(const std::vector<Piece>& pieces, double page_height,
                             double first_page_top) {
  std::vector<Page> out(1);
  double top = first_page_top;
  for (std::size_t at = 0; at < pieces.size();) {
    const std::size_t count = block_of(pieces, at);
    double needed = 0;
    for (std::size_t i = at; i < at + count; ++i) needed += height_of(pieces[i]);
    if (!out.back().empty() && top + needed > page_height) {
      out.emplace_back();
      top = 0;
    }
    for (std::size_t i = at; i < at + count; ++i) {
      const Piece& piece = pieces[i];
      // A block that is higher than a page goes on where it has to.
      if (!out.back().empty() && top + height_of(piece) > page_height) {
        out.emplace_back();
        top = 0;
      }
      if (out.back().empty() && piece.head && !piece.is_head) {
        out.back().push_back({piece.head.get(), top});
        top += piece.head->height;
      } else if (!out.back().empty()) {
        top += piece.above;
      }
      out.back().push_back({&piece, top});
      top += piece.height;
    }
    at += count;
  }
  return out;
}

}  // namespace jambline::report
