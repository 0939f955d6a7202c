// app/hub/local_hub.h: a hub with this machine's clock, randomness and disk.
#pragma once

#include <filesystem>
#include <memory>

#include "hub/hub.h"

namespace jambline::app {

struct LocalHub {
  SystemClock clock;
  SystemRandom random;
  blobs::PosixFiles disk;
  std::unique_ptr<hub::Hub> hub;  // last: it uses the others
};
Result<std::unique_ptr<LocalHub>> open_local_hub(const std::filesystem::path& folder,
                                                 sync::NoteEvent note = {});

}  // namespace jambline::app
