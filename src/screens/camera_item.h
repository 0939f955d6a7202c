// screens/camera_item.h: what the camera sees, with the edges of an earlier picture over it.
//
// Shape:   `camera` is asked for its latest frame, drawn whole (or filling its place) as long as
//          the item is visible. `ghost`: an earlier picture of the same thing; its edges are drawn
//          as dashes at 40 %, laid as the frame is. `guide`: a frame to hold a barcode in.
// Threads: GUI; painting as QQuickPaintedItem. Edges are found on a thread of the pool, once for a
//          ghost.
// Source:  edges after Sobel: gradients of 3 by 3, 1 2 1.
#pragma once

#include <QColor>
#include <QImage>
#include <QPointer>
#include <QQuickPaintedItem>
#include <qqmlregistration.h>

#include "device/camera.h"

namespace jambline::screens {

class CameraItem : public QQuickPaintedItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(jambline::device::Camera* camera READ camera WRITE set_camera NOTIFY lookChanged)
  Q_PROPERTY(QImage ghost READ ghost WRITE set_ghost NOTIFY lookChanged)
  Q_PROPERTY(bool whole MEMBER whole_ NOTIFY lookChanged)
  Q_PROPERTY(bool guide MEMBER guide_ NOTIFY lookChanged)
  Q_PROPERTY(QColor line MEMBER line_ NOTIFY lookChanged)  // of dashes and guide

 public:
  explicit CameraItem(QQuickItem* parent = nullptr);
  void paint(QPainter* painter) override;

  device::Camera* camera() const { return camera_; }
  void set_camera(device::Camera* camera);
  QImage ghost() const { return ghost_; }
  void set_ghost(const QImage& ghost);
  const QImage& dashes() const { return dashes_; }  // null until the edges are found

 signals:
  void lookChanged();
  void dashesChanged();

 private:
  QRectF place_of(const QSize& picture) const;

  QPointer<device::Camera> camera_;
  QImage ghost_;
  QImage dashes_;
  bool whole_ = true;
  bool guide_ = false;
  QColor line_ = Qt::white;
};

// Dashes along the edges of a picture, 480 px long at most, on nothing. Any thread.
QImage edge_dashes(const QImage& picture, const QColor& line);

}  // namespace jambline::screens
