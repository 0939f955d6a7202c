// screens/sign_item.h: draws the chosen sign and the marks over a PatternItem, to scale.
//
// evidence: whose sign; originX, originY, pxPerMm: those of the PatternItem. mark, quiet: marks
// that speak for the sign and the others; casing: around each; area: the sign itself, line: its
// outline. Painted once, again when the sign, a color or the view changes. Silent to the reader:
// the words stand beside it. GUI thread.
#pragma once

#include <QColor>
#include <QPainterPath>
#include <QPointer>
#include <QQuickPaintedItem>
#include <QtQml/qqmlregistration.h>

#include "screens/evidence_view_model.h"

namespace jambline::screens {

class SignItem : public QQuickPaintedItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(jambline::screens::EvidenceViewModel* evidence READ evidence WRITE setEvidence NOTIFY
                 lookChanged)
  Q_PROPERTY(double originX MEMBER origin_x_ NOTIFY lookChanged)
  Q_PROPERTY(double originY MEMBER origin_y_ NOTIFY lookChanged)
  Q_PROPERTY(double pxPerMm MEMBER px_per_mm_ NOTIFY lookChanged)
  Q_PROPERTY(QColor mark MEMBER mark_ NOTIFY lookChanged)
  Q_PROPERTY(QColor quiet MEMBER quiet_ NOTIFY lookChanged)
  Q_PROPERTY(QColor casing MEMBER casing_ NOTIFY lookChanged)
  Q_PROPERTY(QColor area MEMBER area_ NOTIFY lookChanged)
  Q_PROPERTY(QColor line MEMBER line_ NOTIFY lookChanged)
 public:
  explicit SignItem(QQuickItem* parent = nullptr);
  void paint(QPainter* painter) override;
  EvidenceViewModel* evidence() const { return evidence_; }
  void setEvidence(EvidenceViewModel* evidence);

 signals:
  void lookChanged();

 private:
  QPointF on_screen(trade::Point_mm point) const;
  QPainterPath path_of(const trade::Polygon& polygon) const;

  QPointer<EvidenceViewModel> evidence_;
  double origin_x_ = 0;
  double origin_y_ = 0;
  double px_per_mm_ = 0;
  QColor mark_, quiet_, casing_, area_, line_;
};

}  // namespace jambline::screens
