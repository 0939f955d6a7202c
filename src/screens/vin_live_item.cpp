#include "screens/vin_live_item.h"

namespace jambline::screens {

void VinLiveItem::set_scan(VinScanViewModel* scan) {
  if (scan == scan_) return;
  scan_ = scan;
  set_camera(scan ? scan->camera() : nullptr);
  emit scanChanged();
}

}  // namespace jambline::screens
