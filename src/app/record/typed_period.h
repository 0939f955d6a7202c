// app/record/typed_period.h: days as they are typed on a command line, as a time in the shop's
// zone.
#pragma once

#include <filesystem>
#include <string>

#include "base/error.h"
#include "folds/questions.h"

namespace jambline::app {

// From the beginning of the first day to the end of the last; an empty one is open to that side.
// Malformed (args: field) when it is none; OutOfRange when it goes back.
Result<folds::Period> typed_period(const std::string& from, const std::string& to,
                                   const std::string& zone);
// The zone of the shop in the folder; "UTC" until it has one.
Result<std::string> zone_of(const std::filesystem::path& folder);

}  // namespace jambline::app
