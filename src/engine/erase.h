// engine/erase.h: what the shop's own entries say of somebody who has left, to be erased.
//
// Shape:   his notes and words on pictures, of every car, and signatures under any name that he
// had;
//          then what acts/decide.h lets go with the name, so that a try that was broken off can be
//          made again. Nothing is erased here.
// Errors:  those of log/entry_log.h.
// Threads: the work lane; the log is read in slices with `between` called after each.
#pragma once

#include <functional>
#include <vector>

#include "log/entry_log.h"

namespace jambline::engine {

Result<std::vector<Hash>> said_of_leaver(log::EntryLog& log, const PersonId& person,
                                         const std::function<void()>& between);

}  // namespace jambline::engine
