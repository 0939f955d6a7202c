#include "screens/join_live_item.h"

namespace jambline::screens {

void JoinLiveItem::set_scan(JoinScanViewModel* scan) {
  if (scan == scan_) return;
  scan_ = scan;
  set_camera(scan ? scan->camera() : nullptr);
  emit scanChanged();
}

}  // namespace jambline::screens
