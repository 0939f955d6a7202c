#include "screens/picture_origins.h"

#include "screens/text.h"

namespace jambline::screens {

PictureOrigins::PictureOrigins(Session& session, PictureStore& store, QObject* parent)
    : QObject(parent), session_(session), store_(store) {
  // Before the screens that show where a picture was taken, and for the names of devices.
  connect(&session_, &Session::carOrShopChanged, this, &PictureOrigins::refresh);
  connect(&session_, &Session::snapshotChanged, this, &PictureOrigins::refresh);
  refresh();
}

void PictureOrigins::refresh() {
  const auto& snapshot = session_.snapshot();
  std::vector<QString> names;
  for (const auto& one : snapshot.devices) names.push_back(text(one.name));
  if (snapshot.timeline == seen_ && names == names_seen_) return;
  seen_ = snapshot.timeline;
  names_seen_ = names;
  std::map<Hash, PictureOrigin> origins;
  if (seen_)
    for (const auto& entry : *seen_) {
      const auto* taken = entry.payload.get_if<entries::PictureTaken>();
      if (!taken) continue;
      PictureOrigin origin{taken->facts.preview, {}};
      for (const auto& one : snapshot.devices)
        if (one.device == entry.order.device && !one.own) origin.device = text(one.name);
      origins[taken->facts.file] = std::move(origin);
    }
  store_.set_origins(std::move(origins));
}

}  // namespace jambline::screens
