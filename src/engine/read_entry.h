// engine/read_entry.h: an entry as the folds see it, from the bytes as they are kept.
//
// Errors:  none; what this version cannot read comes as UnknownEntry, what was erased as
//          ErasedPayload. Any thread.
#pragma once

#include "entries/entry.h"
#include "seal/header.h"

namespace jambline::engine {

entries::Entry read_entry(const seal::SealedEntry& sealed);

}  // namespace jambline::engine
