// engine/work_again.h: work of another device, said again by this one.
//
// Shape:   a WorkTakenOver that names the origins, then each of them with its person and times, in
//          one transaction. What an earlier WorkTakenOver of this log names is left out. What a
//          copied folder had erased is erased again, each in a transaction of its own after that.
// Errors:  AlreadyDone when nothing is left; those of EntryLog::say_again().
// Threads: the log's owner.
#pragma once

#include <vector>

#include "entries/entry.h"
#include "log/entry_log.h"

namespace jambline::engine {

Result<std::vector<log::Stored>> say_work_again(log::EntryLog& log, const seal::SigningKey& key,
                                                const std::vector<seal::SealedEntry>& origins,
                                                entries::TakenOverWhy why, const PersonId& by,
                                                const Moment& now, Random& random);

}  // namespace jambline::engine
