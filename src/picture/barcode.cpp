#include "picture/barcode.h"

#include <QPainter>
#include <QTransform>
#define ZX_USE_UTF8 1
#include <ZXing/ReadBarcode.h>
#include <algorithm>
#include <array>
#include <cctype>
#include <exception>
#include <string_view>

namespace jambline::picture {

namespace {
constexpr int usual_px = 1600;
constexpr int most_px = 4000;
constexpr std::array<double, 7> turns_deg{15, 30, 45, 60, 75, 22, 68};

struct Try {
  int longest_px;
  double turn_deg;
};

std::optional<Barcode::Kind> kind_of(ZXing::BarcodeFormat format) {
  switch (format) {
    case ZXing::BarcodeFormat::Code39:
      return Barcode::Kind::Code39;
    case ZXing::BarcodeFormat::Code128:
      return Barcode::Kind::Code128;
    case ZXing::BarcodeFormat::DataMatrix:
      return Barcode::Kind::DataMatrix;
    case ZXing::BarcodeFormat::QRCode:
      return Barcode::Kind::Qr;
    default:
      return {};
  }
}

// The picture scaled and turned about its middle onto white; `back` leads to the picture's pixels.
QImage turned(const QImage& gray, const Try& how, QTransform& back) {
  const double scale = static_cast<double>(how.longest_px) / std::max(gray.width(), gray.height());
  QTransform there = QTransform().rotate(how.turn_deg).scale(scale, scale);
  const QRectF box = there.mapRect(QRectF(gray.rect()));
  there *= QTransform::fromTranslate(-box.left(), -box.top());
  back = there.inverted();
  if (how.turn_deg == 0 && scale == 1) return gray;
  if (how.turn_deg == 0)
    return gray
        .scaled(box.size().toSize().expandedTo(QSize(1, 1)), Qt::IgnoreAspectRatio,
                Qt::SmoothTransformation)
        .convertToFormat(QImage::Format_Grayscale8);
  QImage out(box.size().toSize().expandedTo(QSize(1, 1)), QImage::Format_Grayscale8);
  out.fill(255);
  QPainter painter(&out);
  painter.setRenderHint(QPainter::SmoothPixmapTransform);
  painter.setTransform(there);
  painter.drawImage(0, 0, gray);
  return out;
}

void read(const QImage& gray, const QTransform& back, std::vector<Barcode>& out) {
  using ZXing::BarcodeFormat;
  const auto hints = ZXing::DecodeHints()
                         .setFormats(BarcodeFormat::Code39 | BarcodeFormat::Code128 |
                                     BarcodeFormat::DataMatrix | BarcodeFormat::QRCode)
                         .setTryHarder(true)
                         .setTryRotate(true)
                         .setMinLineCount(3);
  const ZXing::ImageView view(gray.constBits(), gray.width(), gray.height(),
                              ZXing::ImageFormat::Lum, static_cast<int>(gray.bytesPerLine()));
  for (const auto& one : ZXing::ReadBarcodes(view, hints)) {
    const auto kind = kind_of(one.format());
    if (!kind || !one.isValid()) continue;
    Barcode code{*kind, one.text(), {}};
    for (const auto& corner : one.position()) code.corners << back.map(QPoint(corner.x, corner.y));
    const bool known = std::any_of(out.begin(), out.end(), [&](const Barcode& other) {
      return other.kind == code.kind && other.text == code.text;
    });
    if (!known && !code.text.empty()) out.push_back(std::move(code));
  }
}

std::vector<Try> tries_for(const QImage& picture) {
  const int longest = std::max(picture.width(), picture.height());
  const int usual = std::min(longest, usual_px);
  std::vector<Try> out{{usual, 0}};
  if (longest > usual_px) out.push_back({std::min(longest, most_px), 0});
  for (const double turn : turns_deg) out.push_back({usual, turn});
  return out;
}
}  // namespace

std::vector<Barcode> read_barcodes(const QImage& picture) {
  std::vector<Barcode> out;
  if (picture.isNull()) return out;
  const QImage gray = picture.convertToFormat(QImage::Format_Grayscale8);
  try {
    for (const Try& how : tries_for(gray)) {
      QTransform back;
      const QImage tried = turned(gray, how, back);
      read(tried, back, out);
      if (!out.empty()) break;
    }
  } catch (const std::exception&) {
    return out;
  }
  return out;
}

std::optional<std::string> vin_in(const Barcode& barcode) {
  std::string text = barcode.text;
  std::transform(text.begin(), text.end(), text.begin(),
                 [](unsigned char sign) { return static_cast<char>(std::toupper(sign)); });
  constexpr std::string_view letters_and_digits = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ";
  constexpr std::size_t length = 17;
  for (std::size_t from = 0; (from = text.find_first_of(letters_and_digits, from)) < text.size();) {
    const std::size_t to = std::min(text.find_first_not_of(letters_and_digits, from), text.size());
    std::string_view word = std::string_view(text).substr(from, to - from);
    if (barcode.kind == Barcode::Kind::Code39 && word.size() == length + 1 && word[0] == 'I')
      word.remove_prefix(1);
    if (word.size() == length + 3 && word.substr(0, 3) == "VIN") word.remove_prefix(3);
    if (word.size() == length && word.find_first_of("IOQ") == std::string_view::npos)
      return std::string(word);
    from = to;
  }
  return {};
}

}  // namespace jambline::picture
