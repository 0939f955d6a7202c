#include "app/hub/local_hub.h"

#include "entries/entry.h"

namespace jambline::app {

Result<std::unique_ptr<LocalHub>> open_local_hub(const std::filesystem::path& folder,
                                                 sync::NoteEvent note) {
  auto out = std::make_unique<LocalHub>();
  hub::ShopFileOptions storage;
  storage.erasable_kinds = entries::erasable_kinds();
  JAMBLINE_ASSIGN(out->hub,
                  hub::Hub::open(folder, {out->clock, out->random, out->disk, storage, note}));
  return out;
}

}  // namespace jambline::app
