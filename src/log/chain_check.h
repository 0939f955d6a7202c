// log/chain_check.h: the chain of a whole log, by two threads with half of the entries each.
//
// Promise: an audit only when every entry is in its place, hashes to what its row says and hangs on
//          the one before it of its device, across the halves too. Nothing = somewhere it does not,
//          or could not be read: a walk from the first entry on says where.
// Errors:  Stopped; those of reading `database`.
// Threads: one of its own with a connection of its own; both are gone when it returns.
#pragma once

#include "log/open_file.h"
#include "seal/chain.h"

namespace jambline::log {

// Who belongs, from all entries of membership.
Result<seal::Members> members_of(Database& database);
// In the order of devices.
std::vector<Head> heads_of(const seal::ChainWalk::Links& links);

Result<std::optional<Audit>> chain_that_holds(
    const std::filesystem::path& folder, Database& database, const std::stop_token& stop,
    const std::function<void(double part_done)>& progress);

}  // namespace jambline::log
