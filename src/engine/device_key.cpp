#include "engine/device_key.h"

namespace jambline::engine {

namespace {
bool belongs_to(const log::EntryLog& log, const DeviceId& device) {
  if (log.device()) return device == log.device();
  return log.members().find(device) != nullptr;
}
}  // namespace

Result<seal::SigningKey> device_key(const std::filesystem::path& folder, const log::EntryLog& log,
                                    bool fresh, Random& random) {
  const auto file = folder / "device.key";
  auto known = seal::SigningKey::load(file);
  if (known && !fresh && !belongs_to(log, known->device()))
    return fail(Error{Code::WrongKey, "open", "device.key", {{"device", known->device().hex()}}});
  if (known || !fresh || known.error().code != Code::NoSuchFile) return known;
  auto key = seal::SigningKey::make(random);
  JAMBLINE_TRY(key.save(file));
  return key;
}

}  // namespace jambline::engine
