// BodyDrawing: one of the five cars as a small paper pattern, to choose by.
// shape: 0 to 4 as job::BodyShape; painted: words of the panels that are filled; line, fill, glass:
// colors. panelAt(x, y): the word of the panel there, thin ones within 36 dp, or "". Read only,
// scales to its size.
#pragma once

#include <QColor>
#include <QQuickPaintedItem>
#include <QStringList>
#include <QtQml/qqmlregistration.h>

class BodyDrawing : public QQuickPaintedItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(int shape MEMBER shape_ NOTIFY changed)
  Q_PROPERTY(QStringList painted MEMBER painted_ NOTIFY changed)
  Q_PROPERTY(QColor line MEMBER line_ NOTIFY changed)
  Q_PROPERTY(QColor fill MEMBER fill_ NOTIFY changed)
  Q_PROPERTY(QColor glass MEMBER glass_ NOTIFY changed)
 public:
  explicit BodyDrawing(QQuickItem* parent = nullptr);
  void paint(QPainter* painter) override;
  Q_INVOKABLE QString panelAt(double x, double y) const;

 signals:
  void changed();

 private:
  int shape_ = -1;
  QStringList painted_;
  QColor line_;
  QColor fill_;
  QColor glass_;
};
