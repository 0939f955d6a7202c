// engine/device_key.h: the key with which this folder's own device signs.
//
// Shape:   device.key of the folder; made when the folder is new. A restored shop has no own device
//          yet: one of its members may go on in it.
// Errors:  WrongKey for a key of another device; those of seal/sign.h.
#pragma once

#include <filesystem>

#include "base/random.h"
#include "log/entry_log.h"
#include "seal/sign.h"

namespace jambline::engine {

Result<seal::SigningKey> device_key(const std::filesystem::path& folder, const log::EntryLog& log,
                                    bool fresh, Random& random);

}  // namespace jambline::engine
