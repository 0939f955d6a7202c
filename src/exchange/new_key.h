// exchange/new_key.h: a device whose folder was copied and used twice goes on under a new key.
//
// Why:     both copies signed other entries with one key and one number; the hub keeps the chain
//          that came first. Nothing that the other copy wrote may be lost.
// Shape:   device.key.new is the key that asks to be admitted. move_to_new_key() then puts the
//          folder in order before the engine opens it: log.db is made anew without own entries
//          after `common_seq`, and without what stood on them: who was let in by them, and from
//          where they erased a payload (the hub sends that again). The own ones lie, as they were,
//          in divergent/ until they have been said again under the new key (Engine::take_over);
//          the old log and key stay as log.forked.db and device.key.forked.
// Crash:   every step may be cut off; the next start goes on.
// Errors:  those of EntryLog; FileFailed.
// Threads: none other on the folder; no engine is open.
#pragma once

#include <filesystem>
#include <vector>

#include "base/random.h"
#include "log/entry_log.h"

namespace jambline::exchange {

// The key that asks; made when there is none yet.
Result<seal::SigningKey> asking_key(const std::filesystem::path& folder, Random& random);
// From the next start on the folder goes on under it.
Status note_new_key(const std::filesystem::path& folder, std::uint64_t common_seq);
bool new_key_noted(const std::filesystem::path& folder);
Status move_to_new_key(const std::filesystem::path& folder, const log::OpenOptions& options = {});

// What waits to be said again; empty when nothing does.
Result<std::vector<seal::SealedEntry>> divergent_entries(const std::filesystem::path& folder);
Status divergent_entries_said(const std::filesystem::path& folder);

}  // namespace jambline::exchange
