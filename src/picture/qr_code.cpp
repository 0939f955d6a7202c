#include "picture/qr_code.h"

#include <ZXing/BitMatrix.h>
#include <ZXing/MultiFormatWriter.h>
#include <exception>

namespace jambline::picture {

namespace {
constexpr int quiet_modules = 4;
constexpr int level_m = 4;  // of ZXing's nine steps
}  // namespace

Result<QImage> qr_code(const std::string& text) {
  if (text.empty()) return fail(Code::Malformed, "draw a square code", "text");
  if (text.size() > most_qr_bytes)
    return fail(Error{Code::TooLarge,
                      "draw a square code",
                      "text",
                      {{"limit", std::to_string(most_qr_bytes)},
                       {"is", std::to_string(text.size())},
                       {"unit", "byte"}}});
  try {
    const ZXing::BitMatrix code = ZXing::MultiFormatWriter(ZXing::BarcodeFormat::QRCode)
                                      .setEncoding(ZXing::CharacterSet::UTF8)
                                      .setEccLevel(level_m)
                                      .setMargin(quiet_modules)
                                      .encode(text, 0, 0);
    QImage out(code.width(), code.height(), QImage::Format_RGB32);
    for (int y = 0; y < code.height(); ++y)
      for (int x = 0; x < code.width(); ++x)
        out.setPixel(x, y, code.get(x, y) ? qRgb(0, 0, 0) : qRgb(255, 255, 255));
    return out;
  } catch (const std::exception&) {
    return fail(Code::Malformed, "draw a square code", "text");
  }
}

}  // namespace jambline::picture
