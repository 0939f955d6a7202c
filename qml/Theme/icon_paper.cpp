#include "icon_paper.h"

#include <QFile>
#include <QSvgRenderer>
#include <QtQml/qqmlinfo.h>

void IconPaper::paint(QPainter* painter) {
  if (source_.isEmpty()) {
    return;
  }
  QFile file(QStringLiteral(":/jambline/icons/%1.svg").arg(source_));
  if (!file.open(QIODevice::ReadOnly)) {
    qmlWarning(this) << "no icon named " << source_;
    return;
  }
  QByteArray drawing = file.readAll();
  drawing.replace("currentColor", color_.name().toLatin1());
  QSvgRenderer renderer(drawing);
  painter->setRenderHint(QPainter::Antialiasing);
  renderer.render(painter, QRectF(0, 0, width(), height()));
}
