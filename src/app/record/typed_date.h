// app/record/typed_date.h: a day as it is typed on a command line: 2026-09-21.
#pragma once

#include <string>

#include "base/error.h"
#include "base/zones.h"

namespace jambline::app {

// Malformed (args: field) when it is none.
Result<LocalDate> typed_date(const std::string& text, const char* field);

}  // namespace jambline::app
