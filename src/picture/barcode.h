// picture/barcode.h: barcodes in a picture, and a vehicle's number in a barcode.
//
// Reads:   Code 39, Code 128, Data Matrix, QR, turned by any angle; eight in one picture at most.
//          Tries the picture as it is first, then sharpened, turned, larger and smaller, until a
//          code is read. A row of lines has four signs at least.
// Means:   the text as it was read. A number is found by its form only; whether its check sign is
//          right is trade/vin.h's to say, and whether it is this car's a person's.
// Cost:    of one core, 1280 x 960 px, measured: 12 ms where a code is plain to see; Quick 37 ms at
//          most; Thorough 0.2 s at the middle of 240 turned and blurred codes, about a second where
//          there is none.
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

// Quick is for the frames of a live view: as it is and sharpened, not turned (rows of lines then
// have to lie within ten degrees of upright or level; the guide on the view asks for that).
enum class Effort : std::uint8_t { Quick, Thorough };

std::vector<Barcode> read_barcodes(const QImage& picture, Effort effort = Effort::Thorough);

// Seventeen letters and digits without I, O, Q that stand by themselves in the text, in upper case;
// the I that Code 39 may carry before an imported car's number is taken off.
std::optional<std::string> vin_in(const Barcode& barcode);

}  // namespace jambline::picture
