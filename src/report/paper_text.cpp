#include "report/paper_text.h"

#include <QTextOption>
#include <algorithm>

namespace jambline::report {

namespace {
double size_pt(Look look) {
  switch (look) {
    case Look::Title:
      return 20;
    case Look::Subtitle:
      return 13;
    case Look::Heading:
      return 12;
    case Look::Small:
    case Look::SmallStrong:
      return 7.5;
    default:
      return 9;
  }
}
}  // namespace

QFont Paper::font(Look look) const {
  QFont out(family_);
  out.setPointSizeF(size_pt(look));
  if (look == Look::Strong || look == Look::SmallStrong || look == Look::Heading ||
      look == Look::Title)
    out.setBold(true);
  return out;
}

QColor Paper::ink(Look look) {
  return look == Look::Quiet || look == Look::Small ? QColor(70, 70, 70) : QColor(Qt::black);
}

SetText::SetText(const Paper& paper, const QString& words, Look look, double width, bool right)
    : ink_(Paper::ink(look)) {
  QString text = words;
  text.replace(QChar('\n'), QChar(QChar::LineSeparator));
  layout_ = std::make_shared<QTextLayout>(text, paper.font(look), paper.device());
  QTextOption option(right ? Qt::AlignRight : Qt::AlignLeft);
  option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
  layout_->setTextOption(option);
  layout_->beginLayout();
  double y = 0;
  for (QTextLine line = layout_->createLine(); line.isValid(); line = layout_->createLine()) {
    line.setLineWidth(width);
    line.setPosition({0, y});
    y += line.height() * 1.08;
  }
  layout_->endLayout();
}

double SetText::height_of(int from, int to) const {
  if (to <= from) return 0;
  const QTextLine last = layout_->lineAt(to - 1);
  return last.y() + last.height() - layout_->lineAt(from).y();
}

void SetText::draw(QPainter& painter, double left, double top, int from, int to) const {
  if (to <= from) return;
  painter.setPen(ink_);
  const double first = layout_->lineAt(from).y();
  for (int i = from; i < to; ++i) layout_->lineAt(i).draw(&painter, {left, top - first});
}

}  // namespace jambline::report
