#include <QPen>
#include <algorithm>

#include "report/report_pieces.h"

namespace jambline::report {

namespace {
const QColor row_line(190, 190, 190);
constexpr int most_lines = 14;  // of a piece; a longer row goes on in the next

struct Row {
  std::vector<SetText> cells;
  std::vector<double> lefts;
  int lines = 0;
  double width = 0;
};

std::vector<double> widths_of(const ReportTable& table, double width) {
  double sum = 0;
  for (const auto& column : table.columns) sum += column.share;
  std::vector<double> out;
  for (const auto& column : table.columns) out.push_back(width * column.share / sum);
  return out;
}

Row row_of(const Paper& paper, const ReportTable& table, const QStringList& words, Look look) {
  Row out;
  out.width = paper.width();
  const auto widths = widths_of(table, paper.width());
  double left = 0;
  for (std::size_t i = 0; i < table.columns.size(); ++i) {
    const double between = points(i + 1 == table.columns.size() ? 0
                                  : table.columns[i].number     ? 14
                                                                : 8);
    out.cells.emplace_back(paper, words.value(static_cast<int>(i)), look, widths[i] - between,
                           table.columns[i].number);
    out.lefts.push_back(left);
    out.lines = std::max(out.lines, out.cells.back().lines());
    left += widths[i];
  }
  return out;
}

double height_of(const Row& row, int from, int to) {
  double height = 0;
  for (const auto& cell : row.cells)
    height = std::max(height, cell.height_of(from, std::min(to, cell.lines())));
  return height;
}

void draw_row(const Row& row, QPainter& painter, double top, int from, int to) {
  for (std::size_t i = 0; i < row.cells.size(); ++i)
    row.cells[i].draw(painter, row.lefts[i], top, from, std::min(to, row.cells[i].lines()));
}

std::shared_ptr<const Piece> head_of(const Paper& paper, const ReportTable& table) {
  QStringList titles;
  for (const auto& column : table.columns) titles << column.title;
  const Row row = row_of(paper, table, titles, Look::SmallStrong);
  auto out = std::make_shared<Piece>();
  out->height = height_of(row, 0, row.lines) + points(5);
  out->draw = [row](QPainter& painter, double top) -> Status {
    draw_row(row, painter, top, 0, row.lines);
    painter.setPen(QPen(Qt::black, points(0.5)));
    const double y = top + height_of(row, 0, row.lines) + points(2);
    painter.drawLine(QPointF(0, y), QPointF(row.width, y));
    return {};
  };
  return out;
}

void add_row(std::vector<Piece>& to, const Row& row, const std::shared_ptr<const Piece>& head) {
  for (int from = 0; from < row.lines; from += most_lines) {
    const int until = std::min(row.lines, from + most_lines);
    const bool last = until == row.lines;
    Piece piece;
    piece.head = head;
    piece.height = height_of(row, from, until) + points(last ? 5 : 0);
    piece.draw = [row, from, until, last](QPainter& painter, double top) -> Status {
      draw_row(row, painter, top, from, until);
      if (!last) return {};
      painter.setPen(QPen(row_line, points(0.35)));
      const double y = top + height_of(row, from, until) + points(2.5);
      painter.drawLine(QPointF(0, y), QPointF(row.width, y));
      return {};
    };
    to.push_back(std::move(piece));
  }
}
}  // namespace

void add_table(std::vector<Piece>& to, const Paper& paper, const ReportTable& table) {
  if (table.rows.empty()) return;
  const auto head = head_of(paper, table);
  Piece first = *head;
  first.above = points(6);
  first.with_next = true;
  first.head = head;
  first.is_head = true;
  to.push_back(std::move(first));
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    add_row(to, row_of(paper, table, table.rows[i], Look::Body), head);
    // Two rows at least stand below a head, and two at least go over to the next page.
    const bool keep = i == 0 || i + 2 == table.rows.size();
    if (keep && i + 1 < table.rows.size()) to.back().with_next = true;
  }
}

}  // namespace jambline::report
