#include "screens/kind_item.h"

#include <QPainter>
#include <QPainterPath>

#include "job/mark.h"

namespace jambline::screens {

using job::DefectKind;

KindItem::KindItem(QQuickItem* parent) : QQuickPaintedItem(parent) {
  setAntialiasing(true);
  connect(this, &KindItem::lookChanged, this, [this] { update(); });
}

// On a grid of 24, as the icons are.
void KindItem::paint(QPainter* painter) {
  painter->setRenderHint(QPainter::Antialiasing);
  const double size = std::min(width(), height());
  painter->translate((width() - size) / 2, (height() - size) / 2);
  painter->scale(size / 24, size / 24);
  const QPen stroke(color_, 2, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin);
  painter->setPen(stroke);
  painter->setBrush(Qt::NoBrush);
  const auto dot = [&](double x, double y, double r) {
    painter->save();
    painter->setPen(Qt::NoPen);
    painter->setBrush(color_);
    painter->drawEllipse(QPointF(x, y), r, r);
    painter->restore();
  };
  const auto ring = [&](double x, double y, double r) {
    painter->drawEllipse(QPointF(x, y), r, r);
  };
  const auto lines = [&](std::initializer_list<QLineF> all) {
    for (const QLineF& one : all) painter->drawLine(one);
  };
  QPainterPath path;

  switch (kind_ < 0 ? DefectKind::AdhesionLoss : static_cast<DefectKind>(kind_)) {
    case DefectKind::Nib:  // a grain under the skin
      path.moveTo(2, 18);
      path.lineTo(7, 18);
      path.cubicTo(9, 18, 8, 10, 12, 10);
      path.cubicTo(16, 10, 15, 18, 17, 18);
      path.lineTo(22, 18);
      painter->drawPath(path);
      dot(12, 15.5, 2);
      break;
    case DefectKind::RunOrSag:
    case DefectKind::RunInBase:
      path.moveTo(3, 5);
      path.lineTo(21, 5);
      path.moveTo(6, 5);
      path.lineTo(6, 11);
      path.cubicTo(6, 14, 10, 14, 10, 11);
      path.lineTo(10, 9);
      path.cubicTo(10, 7, 13, 7, 13, 9);
      path.lineTo(13, 17);
      path.cubicTo(13, 21, 18, 21, 18, 17);
      path.lineTo(18, 5);
      painter->drawPath(path);
      break;
    case DefectKind::Fisheye:
      ring(12, 12, 9);
      ring(12, 12, 4);
      dot(12, 12, 1.2);
      break;
    case DefectKind::Crater:
      path.moveTo(2, 9);
      path.lineTo(6, 9);
      path.cubicTo(8, 9, 8, 18, 12, 18);
      path.cubicTo(16, 18, 16, 9, 18, 9);
      path.lineTo(22, 9);
      painter->drawPath(path);
      break;
    case DefectKind::SolventPop:
    case DefectKind::Pinhole:
      ring(8, 8, 3);
      ring(16, 10, 2.2);
      ring(10, 17, 2.2);
      ring(17, 17.5, 3);
      break;
    case DefectKind::OrangePeel:
      for (const double y : {6.0, 12.0, 18.0}) {
        path.moveTo(2, y);
        path.cubicTo(5, y - 5, 6, y + 5, 9, y);
        path.cubicTo(11, y - 4, 13, y + 4, 15, y);
        path.cubicTo(17, y - 4, 19, y + 4, 22, y);
      }
      painter->drawPath(path);
      break;
    case DefectKind::DrySpray:
    case DefectKind::Mottle:
      for (const QPointF& at : {QPointF(4, 6),
                                {9, 4},
                                {14, 7},
                                {20, 5},
                                {6, 11},
                                {12, 12},
                                {18, 11},
                                {4, 17},
                                {9, 18},
                                {15, 17},
                                {20, 18},
                                {12, 21}})
        dot(at.x(), at.y(), 1.3);
      break;
    case DefectKind::TapeLine:
    case DefectKind::TapeBleed:
      path.moveTo(2, 17);
      path.lineTo(12, 17);
      path.lineTo(12, 8);
      path.lineTo(22, 8);
      painter->drawPath(path);
      painter->setPen(QPen(color_, 1.4, Qt::DashLine, Qt::FlatCap));
      painter->drawLine(QPointF(12, 2), QPointF(12, 7));
      painter->drawLine(QPointF(12, 18.5), QPointF(12, 23));
      break;
    case DefectKind::PrimerShowing:
    case DefectKind::BurnThrough:
      painter->drawRect(QRectF(4, 4, 16, 16));
      path.moveTo(4, 13);
      path.cubicTo(8, 10, 12, 15, 13, 20);
      painter->drawPath(path);
      painter->setPen(QPen(color_, 1.2));
      lines({{5, 16, 7, 14}, {5, 19.5, 9.5, 15}, {9, 19.5, 11.5, 17}});
      break;
    case DefectKind::SandingScratch:
    case DefectKind::ScratchSwelling:
    case DefectKind::HandlingScratch:
      lines({{4, 15, 15, 4}, {6, 20, 20, 6}, {12, 21, 21, 12}});
      break;
    case DefectKind::Haze:
    case DefectKind::DieBack:
    case DefectKind::WhiteBlush:
      for (const double r : {3.0, 6.5, 10.0})
        painter->drawArc(QRectF(12 - r, 12 - r, 2 * r, 2 * r), r == 6.5 ? 200 * 16 : 20 * 16,
                         210 * 16);
      break;
    default:
      dot(5, 12, 2);
      dot(12, 12, 2);
      dot(19, 12, 2);
  }
}

}  // namespace jambline::screens
