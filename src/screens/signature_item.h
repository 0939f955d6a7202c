// screens/signature_item.h: a signature on glass: what a finger or a mouse draws, or one that was
// drawn before.
//
// Shape:   a stroke is points in parts of the item's width, y down (job/check_in.h); the item is
//          never higher than wide. open: it can be drawn on. Strokes are a list of lists of points.
// Limits:  points closer than 1.5 px are one; after 4,900 nothing more is taken.
// Threads: GUI thread.
#pragma once

#include <QColor>
#include <QQuickPaintedItem>
#include <QVariantList>
#include <QtQml/qqmlregistration.h>
#include <vector>

#include "job/check_in.h"

namespace jambline::screens {

QVariantList strokes_shown(const std::vector<job::Stroke>& strokes);
std::vector<job::Stroke> strokes_drawn(const QVariantList& strokes);

class SignatureItem : public QQuickPaintedItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(QVariantList strokes READ strokes WRITE set_strokes NOTIFY strokesChanged)
  Q_PROPERTY(bool drawn READ drawn NOTIFY strokesChanged)  // there is enough to be a signature
  Q_PROPERTY(bool open READ open WRITE set_open NOTIFY openChanged)
  Q_PROPERTY(QColor ink MEMBER ink_ NOTIFY inkChanged)

 public:
  explicit SignatureItem(QQuickItem* parent = nullptr);

  void paint(QPainter* painter) override;
  QVariantList strokes() const { return strokes_shown(strokes_); }
  void set_strokes(const QVariantList& strokes);
  bool drawn() const;
  bool open() const { return open_; }
  void set_open(bool open);

  Q_INVOKABLE void clear();

 signals:
  void strokesChanged();
  void openChanged();
  void inkChanged();
  void touched();  // a stroke begins

 protected:
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;

 private:
  void add(const QPointF& at);

  std::vector<job::Stroke> strokes_;
  std::size_t points_ = 0;
  bool open_ = true;
  QColor ink_;
};

}  // namespace jambline::screens
