#include "time_paper.h"

#include <QFontMetricsF>
#include <QPainterPath>
#include <algorithm>
#include <cmath>

#include "face.h"

namespace {

constexpr double kColonSlot = 0.26;

// The words cut at their colons: text, colon, text, colon, text.
double widthOf(const QStringList& parts, const QFontMetricsF& metrics, double size) {
  double width = 0.0;
  for (const QString& part : parts) {
    width += metrics.horizontalAdvance(part);
  }
  return width + static_cast<double>(parts.size() - 1) * kColonSlot * size;
}

}  // namespace

QFont TimePaper::font() const {
  QFont font;
  font.setFamilies(jambline::theme::faceFamilies(family_));
  font.setPixelSize(std::max(1, size_));
  font.setBold(bold_);
  return font;
}

void TimePaper::refresh() {
  const QFontMetricsF metrics(font());
  setImplicitSize(std::ceil(widthOf(words_.split(u':'), metrics, size_)),
                  std::ceil(metrics.height()));
  setBaselineOffset(metrics.ascent());
  Paper::refresh();
}

void TimePaper::paint(QPainter* painter) {
  painter->setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
  const QFont face = font();
  const QFontMetricsF metrics(face);
  painter->setFont(face);
  const double base = metrics.ascent();
  const double square = size_ * (bold_ ? 0.115 : 0.095);
  const double round = square * 0.18;
  double x = 0.0;
  const QStringList parts = words_.split(u':');
  for (qsizetype i = 0; i < parts.size(); ++i) {
    if (i > 0) {
      const double left = x + (kColonSlot * size_ - square) / 2;
      painter->setPen(Qt::NoPen);
      painter->setBrush(color_);
      for (const double rise : {0.527, 0.197}) {
        painter->drawRoundedRect(QRectF(left, base - rise * size_, square, square), round, round);
      }
      x += kColonSlot * size_;
    }
    painter->setPen(color_);
    painter->drawText(QPointF(x, base), parts[i]);
    x += metrics.horizontalAdvance(parts[i]);
  }
  if (doubtful_) {
    QPainterPath wave(QPointF(0, base + metrics.descent() * 0.6));
    for (double at = 0; at + 4 <= x; at += 4) {
      const double up = std::fmod(at, 8.0) < 4.0 ? -3.0 : 3.0;
      wave.quadTo(QPointF(at + 2, wave.currentPosition().y() + up),
                  QPointF(at + 4, wave.currentPosition().y()));
    }
    painter->setBrush(Qt::NoBrush);
    painter->setPen(QPen(color_, 1.2));
    painter->drawPath(wave);
  }
}
