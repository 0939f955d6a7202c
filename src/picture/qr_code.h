// picture/qr_code.h: a text as a square code (QR), to be read by another device's camera.
//
// Shape:   one pixel a module, black on white, with four modules of white around it. Whoever draws
//          it larger keeps the edges hard.
// Errors:  TooLarge (over most_qr_bytes), Malformed (nothing to say). Threads: any; pure.
// Source:  ISO/IEC 18004, error correction M (by ZXing).
#pragma once

#include <QImage>
#include <cstddef>
#include <string>

#include "base/error.h"

namespace jambline::picture {

inline constexpr std::size_t most_qr_bytes = 1000;

Result<QImage> qr_code(const std::string& text);

}  // namespace jambline::picture
