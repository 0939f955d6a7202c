// tests/fault/hub_disk.h: what a test does to the files of the simulator's hub, whether they lie in
// its memory or on a disk of their own.
#pragma once

#include "base/ids.h"

namespace jambline::simulator {

template <class Hub>
std::size_t blobs_at(Hub& hub) {
  if constexpr (requires { hub.blobs(); })
    return hub.blobs().size();
  else
    return hub.disk().blobs.size();
}
template <class Hub>
bool is_at(Hub& hub, const Hash& blob) {
  if constexpr (requires { hub.has_blob(blob); })
    return hub.has_blob(blob);
  else
    return hub.disk().blobs.count(blob) != 0;
}
template <class Hub>
void damage_at(Hub& hub, const Hash& blob) {
  if constexpr (requires { hub.damage(blob); })
    hub.damage(blob);
  else
    hub.disk().damage(blob);
}
template <class Hub>
void forget_uploads_at(Hub& hub) {
  if constexpr (requires { hub.forget_parts(); })
    hub.forget_parts();
  else
    hub.disk().parts.clear();
}

}  // namespace jambline::simulator
