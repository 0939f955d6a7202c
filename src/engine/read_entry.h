// engine/read_entry.h: an entry as the folds see it, from the bytes as they are kept.
//
// Errors:  none; what this version cannot read comes as UnknownEntry, what was erased as
//          ErasedPayload. Any thread.
#pragma once

#include "entries/entry.h"
#include "log/entry_log.h"

namespace jambline::engine {

entries::Entry read_entry(const log::Said& said);
entries::Entry read_entry(const seal::SealedEntry& sealed);

bool may_be_erased(std::uint16_t kind);

}  // namespace jambline::engine
