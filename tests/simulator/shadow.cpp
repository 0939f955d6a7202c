#include "tests/simulator/shadow.h"

#include "engine/read_entry.h"
#include "sync/limits.h"
#include "tests/property/devices.h"

namespace jambline::simulator {

Shadow::Shadow() : device_(std::make_unique<property::Device>(std::uint8_t{1}, 0)) {}
Shadow::~Shadow() = default;

void Shadow::take(const seal::SealedEntry& sealed) {
  const auto entry = engine::read_entry(sealed);
  device_->take(entry);
  known_.insert(sealed.hash);
  if (const auto* taken = entry.payload.get_if<entries::PictureTaken>()) {
    if (taken->facts.preview && named_once_.insert(*taken->facts.preview).second)
      named_.push_back({*taken->facts.preview, sync::most_blob_bytes, true});
    if (named_once_.insert(taken->facts.file).second)
      named_.push_back(
          {taken->facts.file, static_cast<std::uint64_t>(taken->facts.size_bytes), false});
  }
}

}  // namespace jambline::simulator
