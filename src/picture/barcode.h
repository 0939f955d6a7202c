// picture/barcode.h: barcodes in a picture, and a vehicle's number in a barcode.
//
// Reads:   Code 39, Code 128, Data Matrix, QR, turned by any angle; several in one picture. Tries
//          the picture as it is first, then smaller, larger and turned.
// Means:   the text as it was read. A number is found by its form only; whether its check sign is
//          right is trade/vin.h's to say, and whether it is this car's a person's.
// Cost:    2 to 20 ms when a code is plain to see; up to half a second a megapixel when none is.
// Errors:  none: what cannot be read is not in the list. Threads: any but the one that draws; pure.
// Source:  ISO/IEC 16388, 15417, 16022, 18004 (by ZXing); ISO 3779 for the signs of a number.
#pragma once

#include <QImage>
#include <QPolygon>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace jambline::picture {

struct Barcode {
  enum class Kind : std::uint8_t { Code39, Code128, DataMatrix, Qr };
  Kind kind{};
  std::string text;  // UTF-8
  QPolygon corners;  // in pixels of the picture
};

std::vector<Barcode> read_barcodes(const QImage& picture);

// Seventeen letters and digits without I, O, Q that stand by themselves in the text, in upper case;
// the I that Code 39 may carry before an imported car's number is taken off.
std::optional<std::string> vin_in(const Barcode& barcode);

}  // namespace jambline::picture
