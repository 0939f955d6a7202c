#include <QPen>
#include <algorithm>

#include "report/report_pieces.h"
#include "report/strokes.h"

namespace jambline::report {

namespace {
const QColor hairline(150, 150, 150);
constexpr double label_share = 0.32;
constexpr int short_words = 31;  // of a fact that takes half the width

struct FactRow {
  std::vector<std::pair<SetText, SetText>> facts;  // label, words
  double height = 0;
};
}  // namespace

void add_heading(std::vector<Piece>& to, const Paper& paper, const QString& words) {
  const SetText text(paper, words, Look::Heading, paper.width());
  Piece piece;
  piece.height = text.height() + points(4);
  piece.above = points(16);
  piece.with_next = true;
  piece.draw = [text, width = paper.width()](QPainter& painter, double top) -> Status {
    text.draw(painter, 0, top);
    painter.setPen(QPen(Qt::black, points(0.8)));
    const double y = top + text.height() + points(1.5);
    painter.drawLine(QPointF(0, y), QPointF(width, y));
    return {};
  };
  to.push_back(std::move(piece));
}

void add_paragraph(std::vector<Piece>& to, const Paper& paper, const QString& words, Look look,
                   double above) {
  if (words.isEmpty()) return;
  const SetText text(paper, words, look, paper.width());
  for (int line = 0; line < text.lines(); ++line) {
    Piece piece;
    piece.height = text.height_of(line, line + 1);
    if (line == 0) piece.above = above;
    const bool first = line == 0 && text.lines() > 1;
    piece.with_next = first || line == text.lines() - 2;  // no line stands alone
    piece.draw = [text, line](QPainter& painter, double top) -> Status {
      text.draw(painter, 0, top, line, line + 1);
      return {};
    };
    to.push_back(std::move(piece));
  }
}

void add_facts(std::vector<Piece>& to, const Paper& paper, const ReportFacts& facts) {
  const double gap = millimetres(6);
  const double half = (paper.width() - gap) / 2;
  const auto set = [&](const ReportFact& fact, double width) {
    const double label = half * label_share;
    return std::pair{SetText(paper, fact.label, Look::Quiet, label - points(4)),
                     SetText(paper, fact.words, Look::Body, width - label)};
  };
  const auto is_short = [](const ReportFact& fact) {
    return fact.words.size() <= short_words && !fact.words.contains(QChar('\n'));
  };
  for (std::size_t i = 0; i < facts.size();) {
    FactRow row;
    const bool two = i + 1 < facts.size() && is_short(facts[i]) && is_short(facts[i + 1]);
    if (two) {
      row.facts = {set(facts[i], half), set(facts[i + 1], half)};
      i += 2;
    } else {
      row.facts = {set(facts[i], is_short(facts[i]) ? half : paper.width())};
      i += 1;
    }
    for (const auto& [label, words] : row.facts)
      row.height = std::max({row.height, label.height(), words.height()});
    Piece piece;
    piece.height = row.height;
    piece.above = points(3);
    piece.draw = [row, half, gap](QPainter& painter, double top) -> Status {
      double left = 0;
      for (const auto& [label, words] : row.facts) {
        label.draw(painter, left, top);
        words.draw(painter, left + half * label_share, top);
        left += half + gap;
      }
      return {};
    };
    to.push_back(std::move(piece));
  }
}

void add_signature(std::vector<Piece>& to, const Paper& paper, const ReportSignature& signature) {
  const QImage image = drawn(signature.strokes);
  const double width = millimetres(60);
  const double height = std::min(width * image.height() / image.width(), millimetres(24));
  const SetText words(paper, signature.words, Look::Body, paper.width());
  Piece piece;
  piece.height = height + points(3) + words.height();
  piece.above = points(10);
  piece.draw = [image, height, words](QPainter& painter, double top) -> Status {
    painter.drawImage(QRectF(0, top, height * image.width() / image.height(), height), image);
    painter.setPen(QPen(hairline, points(0.5)));
    painter.drawLine(QPointF(0, top + height), QPointF(millimetres(60), top + height));
    words.draw(painter, 0, top + height + points(3));
    return {};
  };
  to.push_back(std::move(piece));
}

}  // namespace jambline::report
