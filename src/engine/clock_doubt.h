// engine/clock_doubt.h: what a person hears when this device's clock cannot be right.
//
// Shape:  an Error of subject "clock" with one flag (seal/header.h, clock_flag), or nothing.
#pragma once

#include <optional>

#include "base/clock.h"
#include "log/entry_log.h"

namespace jambline::engine {

std::optional<Error> clock_doubt(std::uint8_t flags);
// Before the first act: against the last entry of this device.
std::optional<Error> clock_doubt_at_start(log::EntryLog& log, const DeviceId& own,
                                          const Moment& now);

}  // namespace jambline::engine
