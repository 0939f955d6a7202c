// app/hub/qr_blocks.h: a text as a square code (QR) in a terminal, two modules a sign.
//
// Shape:   black on white with the quiet zone around it; `colored` says both colours by escapes, so
//          that it reads on any background; without, light modules are the blocks (a dark
//          terminal).
// Errors:  Malformed when the text does not fit a square code.
// Source:  ISO/IEC 18004, error correction L, for fewer modules on a screen that nothing soils
//          (by ZXing).
#pragma once

#include <string>

#include "base/error.h"

namespace jambline::app {

Result<std::string> qr_blocks(const std::string& text, bool colored);

}  // namespace jambline::app
