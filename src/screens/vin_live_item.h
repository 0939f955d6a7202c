// screens/vin_live_item.h: what the camera sees while a VIN is looked for, with the frame to hold
// its barcode in.
//
// Threads: GUI; painting as QQuickPaintedItem.
#pragma once

#include <QPointer>
#include <qqmlregistration.h>

#include "screens/camera_item.h"
#include "screens/vin_scan_view_model.h"

namespace jambline::screens {

// With its whole name, so that the QML tools find what it is.
class VinLiveItem : public jambline::screens::CameraItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(jambline::screens::VinScanViewModel* scan READ scan WRITE set_scan NOTIFY scanChanged)

 public:
  explicit VinLiveItem(QQuickItem* parent = nullptr) : CameraItem(parent) {}
  VinScanViewModel* scan() const { return scan_; }
  void set_scan(VinScanViewModel* scan);

 signals:
  void scanChanged();

 private:
  QPointer<VinScanViewModel> scan_;
};

}  // namespace jambline::screens
