// How a point of a chart stands out, by shape and color. QML: ChartLook.Above and so on.
// Above: triangle up; Below: triangle down; RunAbove, RunBelow: a ring; Plain: a dot.
#pragma once

#include <QColor>
#include <QObject>
#include <QPainter>
#include <QtQml/qqmlregistration.h>

namespace ChartLook {
Q_NAMESPACE
QML_ELEMENT
enum class Value { Plain, Above, Below, RunAbove, RunBelow };
Q_ENUM_NS(Value)
}  // namespace ChartLook

namespace jambline::theme {

struct LookColors {
  QColor plain;
  QColor more;
  QColor less;
  QColor ground;
};

// size: the width of the shape; a look that is not known is a dot.
void draw_look(QPainter& painter, const QPointF& at, int look, double size,
               const LookColors& colors);

}  // namespace jambline::theme
