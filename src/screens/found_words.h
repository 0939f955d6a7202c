// screens/found_words.h: what people find a car by, in their language, and where a word was found.
//
// Threads: any, while no translation is being changed.
#pragma once

#include <QString>
#include <memory>

#include "engine/engine.h"

namespace jambline::screens {

// Every kind of the record under the name that the screens give it, in the language that is on.
std::shared_ptr<const shelf::Names> names_of_kinds();

// "note: ... door open ...", "VIN ...", "cause: hose"; "" for what stands in the row itself.
QString words_of(const shelf::FindHit& hit, const folds::FloorRow& row);

}  // namespace jambline::screens
