// engine/rights_of_log.h: who may say what in a log, and what changes when that changes.
//
// Errors:  those of reading the log. Threads: the log's owner.
#pragma once

#include <functional>
#include <set>
#include <string>
#include <utility>

#include "folds/rights_fold.h"
#include "folds/shop_fold.h"
#include "log/entry_log.h"

namespace jambline::engine {

folds::DeviceStandings standings_of(const seal::Members& members);
Result<folds::RightsFold> rights_of(log::EntryLog& log);

// The shop as the log has it.
Result<std::pair<folds::ShopFold, folds::StreamRights>> shop_of(log::EntryLog& log,
                                                                const folds::RightsFold& rights);

// A word that is another one as soon as anybody may say more or less, or a device was cut.
std::string stamp_of(const folds::RightsFold& rights);

// Jobs with entries of devices that are obeyed further, or less far, than before.
Status look_at_changed_devices(log::EntryLog& log, const folds::DeviceStandings& before,
                               const folds::DeviceStandings& now,
                               const std::function<void(const JobId&)>& changed);
std::set<PersonId> people_with_other_rights(const folds::RightsFold& before,
                                            const folds::RightsFold& now);

}  // namespace jambline::engine
