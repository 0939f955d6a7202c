// screens/shot_live_item.h: what the camera sees for the shot that is taken, and the picture of it
// that is not in the record yet.
//
// Threads: GUI; painting as QQuickPaintedItem.
#pragma once

#include <QPointer>
#include <qqmlregistration.h>

#include "screens/camera_item.h"
#include "screens/shot_view_model.h"

namespace jambline::screens {

// The live view with the dashes of the earlier picture.
class ShotLiveItem : public jambline::screens::CameraItem {  // in full, for the linter of QML
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(jambline::screens::ShotViewModel* shot READ shot WRITE set_shot NOTIFY shotChanged)

 public:
  explicit ShotLiveItem(QQuickItem* parent = nullptr) : CameraItem(parent) {}
  ShotViewModel* shot() const { return shot_; }
  void set_shot(ShotViewModel* shot);

 signals:
  void shotChanged();

 private:
  QPointer<ShotViewModel> shot_;
};

// The picture that waits, whole.
class ShotStillItem : public QQuickPaintedItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(jambline::screens::ShotViewModel* shot READ shot WRITE set_shot NOTIFY shotChanged)

 public:
  explicit ShotStillItem(QQuickItem* parent = nullptr) : QQuickPaintedItem(parent) {}
  void paint(QPainter* painter) override;
  ShotViewModel* shot() const { return shot_; }
  void set_shot(ShotViewModel* shot);

 signals:
  void shotChanged();

 private:
  QPointer<ShotViewModel> shot_;
  qint64 painted_ = 0;
};

}  // namespace jambline::screens
