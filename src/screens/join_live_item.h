// screens/join_live_item.h: what the camera sees while a hub's square code is looked for.
//
// Threads: GUI; painting as QQuickPaintedItem.
#pragma once

#include <QPointer>
#include <qqmlregistration.h>

#include "screens/camera_item.h"
#include "screens/join_scan_view_model.h"

namespace jambline::screens {

// With its whole name, so that the QML tools find what it is.
class JoinLiveItem : public jambline::screens::CameraItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(jambline::screens::JoinScanViewModel* scan READ scan WRITE set_scan NOTIFY scanChanged)

 public:
  explicit JoinLiveItem(QQuickItem* parent = nullptr) : CameraItem(parent) {}
  JoinScanViewModel* scan() const { return scan_; }
  void set_scan(JoinScanViewModel* scan);

 signals:
  void scanChanged();

 private:
  QPointer<JoinScanViewModel> scan_;
};

}  // namespace jambline::screens
