// screens/picture_error_words.h: what a person reads when a picture cannot be taken or taken in.
#pragma once

#include <optional>

#include "screens/words.h"

namespace jambline::screens {

// None: the error is of something else.
std::optional<ErrorWords> picture_error_words(const Error& error);

}  // namespace jambline::screens
