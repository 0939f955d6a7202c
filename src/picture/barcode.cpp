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
constexpr int largest_px = 4000;
constexpr std::size_t most_codes = 8;
constexpr std::size_t least_signs = 4;  // of rows of lines; less is read into texture now and then
constexpr std::array<double, 8> turns_deg{30, 60, 40, 50, 10, 20, 70, 80};

struct Try {
  int longest_px;
  double turn_deg;
  bool sharpened;
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

ZXing::DecodeHints hints() {
  using ZXing::BarcodeFormat;
  return ZXing::DecodeHints()
      .setFormats(BarcodeFormat::Code39 | BarcodeFormat::Code128 | BarcodeFormat::DataMatrix |
                  BarcodeFormat::QRCode)
      .setTryHarder(true)
      .setTryRotate(true)
      .setMinLineCount(3);
}

// ZXing 1.4 ends the program when it compares two equal rows of lines, so it is asked for one code
// at a time, and what it has read is covered.
void read(QImage gray, const QTransform& back, std::vector<Barcode>& out) {
  int cover_px = 24;
  for (std::size_t round = 0; round < most_codes; ++round) {
    const ZXing::ImageView view(gray.constBits(), gray.width(), gray.height(),
                                ZXing::ImageFormat::Lum, static_cast<int>(gray.bytesPerLine()));
    const ZXing::Result one = ZXing::ReadBarcode(view, hints());
    const auto kind = kind_of(one.format());
    if (!kind || !one.isValid()) return;
    QPolygon place;
    for (const auto& corner : one.position()) place << QPoint(corner.x, corner.y);
    Barcode code{*kind, one.text(), back.map(place)};
    const bool known = std::any_of(out.begin(), out.end(), [&](const Barcode& other) {
      return other.kind == code.kind && other.text == code.text;
    });
    if (known) cover_px *= 2;
    const bool lines = code.kind == Barcode::Kind::Code39 || code.kind == Barcode::Kind::Code128;
    const bool enough = code.text.size() >= (lines ? least_signs : 1);
    if (!known && enough) out.push_back(std::move(code));
    QPainter painter(&gray);
    painter.setBrush(Qt::white);
    painter.setPen(QPen(Qt::white, cover_px));
    painter.drawPolygon(place);
  }
}

// Adds twice what a small blur takes away: brings narrow bars back that a lens ran together.
QImage sharpened(const QImage& gray) {
  QImage out = gray;
  const int width = gray.width();
  const int height = gray.height();
  for (int y = 0; y < height; ++y) {
    const std::uint8_t* above = gray.constScanLine(std::max(0, y - 1));
    const std::uint8_t* row = gray.constScanLine(y);
    const std::uint8_t* below = gray.constScanLine(std::min(height - 1, y + 1));
    const auto column = [&](int x) { return above[x] + 2 * row[x] + below[x]; };
    std::uint8_t* to = out.scanLine(y);
    for (int x = 0; x < width; ++x) {
      const int around =
          column(std::max(0, x - 1)) + 2 * column(x) + column(std::min(width - 1, x + 1));
      to[x] = static_cast<std::uint8_t>(std::clamp(3 * row[x] - around / 8, 0, 255));
    }
  }
  return out;
}

std::vector<Try> tries_for(const QImage& picture, Effort effort) {
  const int longest = std::max(picture.width(), picture.height());
  const int usual = std::min(longest, usual_px);
  std::vector<Try> out{{usual, 0, false}, {usual, 0, true}};
  if (effort == Effort::Quick) return out;
  if (longest > usual_px) out.push_back({std::min(longest, largest_px), 0, false});
  out.push_back({std::min(2 * usual, largest_px), 0, true});
  for (const double turn : turns_deg) out.push_back({usual, turn, true});
  for (const double turn : turns_deg) out.push_back({std::max(usual / 2, 1), turn, false});
  for (const double turn : turns_deg)
    out.push_back({std::min(usual * 3 / 2, largest_px), turn + 5, true});
  return out;
}
}  // namespace

std::vector<Barcode> read_barcodes(const QImage& picture, Effort effort) {
  std::vector<Barcode> out;
  if (picture.isNull()) return out;
  const QImage gray = picture.convertToFormat(QImage::Format_Grayscale8);
  try {
    for (const Try& how : tries_for(gray, effort)) {
      QTransform back;
      const QImage tried = turned(gray, how, back);
      read(how.sharpened ? sharpened(tried) : tried, back, out);
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
