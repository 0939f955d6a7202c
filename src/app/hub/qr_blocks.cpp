#include "app/hub/qr_blocks.h"

#include <ZXing/BitMatrix.h>
#include <ZXing/MultiFormatWriter.h>
#include <exception>

namespace jambline::app {

namespace {
constexpr int quiet_modules = 4;
constexpr int level_l = 2;  // of ZXing's nine steps
constexpr const char* black_on_white = "\x1b[38;5;16;48;5;231m";
constexpr const char* as_before = "\x1b[0m";
}  // namespace

Result<std::string> qr_blocks(const std::string& text, bool colored) {
  try {
    const ZXing::BitMatrix code = ZXing::MultiFormatWriter(ZXing::BarcodeFormat::QRCode)
                                      .setEncoding(ZXing::CharacterSet::UTF8)
                                      .setEccLevel(level_l)
                                      .setMargin(quiet_modules)
                                      .encode(text, 0, 0);
    const auto inked = [&](int x, int y) {
      const bool dark = y < code.height() && code.get(x, y);
      return dark == colored;  // without colours the light modules are drawn
    };
    std::string out;
    for (int y = 0; y < code.height(); y += 2) {
      if (colored) out += black_on_white;
      for (int x = 0; x < code.width(); ++x) {
        const bool upper = inked(x, y);
        const bool lower = inked(x, y + 1);
        out += upper ? (lower ? "█" : "▀") : (lower ? "▄" : " ");
      }
      if (colored) out += as_before;
      out += '\n';
    }
    return out;
  } catch (const std::exception&) {
    return fail(Code::Malformed, "draw a square code", "text");
  }
}

}  // namespace jambline::app
