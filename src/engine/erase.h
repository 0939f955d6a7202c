// engine/erase.h: erases what the shop's own entries say of somebody who has left.
//
// Errors:  those of log/entry_log.h at the first payload that could not be erased; the ones before
//          it stay erased.
// Threads: the work lane.
#pragma once

#include "log/entry_log.h"

namespace jambline::engine {

Status erase_said_of(log::EntryLog& log, const seal::SigningKey& key, const PersonId& person,
                     const PersonId& by, const Moment& now, Random& random);

}  // namespace jambline::engine
