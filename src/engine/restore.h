// engine/restore.h: an exported shop into an empty folder.
//
// Promise: an own shop is never mixed with another: AlreadyDone when the folder holds entries. All
// of
//          the export has to pass the checks of the log, else the first refusal is the error; what
//          passed stays in the folder. Without the device.key of that shop it can only be read;
//          with it the device goes on, and the old folder must not be used any more (else: a fork).
// Errors:  those of log/shop_folder.h. Blocks; no engine may be open on the folder.
#pragma once

#include "log/shop_folder.h"

namespace jambline::engine {

Result<log::Imported> restore_shop(const std::filesystem::path& from,
                                   const std::filesystem::path& to);

}  // namespace jambline::engine
