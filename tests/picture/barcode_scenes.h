// tests/picture/barcode_scenes.h: 240 pictures of barcodes as a hand with a telephone takes them.
//
// Seeded: four symbologies in turn, each with a made-up vehicle number (some with what stands
// around one: the I of Code 39, words in QR and Data Matrix). The label is turned by any angle,
// seen a little from the side, 2.2 to 5 px a module (matrix codes 3 to 7), on a panel or alone, in
// weaker contrast, blurred by up to 0.4 of a module, under grain of up to 8 of 255.
#pragma once

#define ZX_USE_UTF8 1
#include <QImage>
#include <QPainter>
#include <QSizeF>
#include <QTransform>
#include <ZXing/BitMatrix.h>
#include <ZXing/MultiFormatWriter.h>
#include <string>

#include "picture/barcode.h"
#include "tests/picture/rendered_panels.h"

namespace jambline::picture {

struct BarcodeScene {
  Barcode::Kind kind{};
  std::string text;
  std::string vin;
  QImage image;
};

inline constexpr int barcode_scenes = 240;

inline std::string made_up_vin(Draw& draw) {
  constexpr const char* signs = "ABCDEFGHJKLMNPRSTUVWXYZ0123456789";
  std::string out;
  for (int i = 0; i < 17; ++i) out += signs[i < 12 ? draw.whole(0, 32) : draw.whole(23, 32)];
  return out;
}

inline ZXing::BitMatrix modules_of(Barcode::Kind kind, const std::string& text) {
  using ZXing::BarcodeFormat;
  constexpr std::array formats{BarcodeFormat::Code39, BarcodeFormat::Code128,
                               BarcodeFormat::DataMatrix, BarcodeFormat::QRCode};
  const bool lines = kind == Barcode::Kind::Code39 || kind == Barcode::Kind::Code128;
  return ZXing::MultiFormatWriter(formats[static_cast<std::size_t>(kind)])
      .setMargin(lines ? 10 : 4)
      .encode(text, 0, lines ? 36 : 0);
}

// The dark bars and modules, in modules; a wide bar of Code 39 is 2.5 of them (ISO/IEC 16388 allows
// 2 to 3).
inline std::vector<QRectF> bars_of(Barcode::Kind kind, const std::string& text, QSizeF& size) {
  const ZXing::BitMatrix modules = modules_of(kind, text);
  const bool matrix = kind == Barcode::Kind::DataMatrix || kind == Barcode::Kind::Qr;
  std::vector<QRectF> out;
  for (int y = 0; y < (matrix ? modules.height() : 1); ++y) {
    double left = 0;
    for (int x = 0, to = 0; x < modules.width(); x = to) {
      for (to = x; to < modules.width() && modules.get(to, y) == modules.get(x, y);) ++to;
      const double wide = kind == Barcode::Kind::Code39 && to - x == 2 ? 2.5 : to - x;
      if (modules.get(x, y)) out.emplace_back(left, y, wide, matrix ? 1 : modules.height());
      left += wide;
    }
    size = QSizeF(left, modules.height());
  }
  return out;
}

inline BarcodeScene barcode_scene(int number) {
  Draw draw(7000U + static_cast<unsigned>(number));
  BarcodeScene out;
  out.kind = static_cast<Barcode::Kind>(number % 4);
  out.vin = made_up_vin(draw);
  out.text = out.vin;
  const bool matrix = out.kind == Barcode::Kind::DataMatrix || out.kind == Barcode::Kind::Qr;
  const int around = draw.whole(0, 3);
  if (out.kind == Barcode::Kind::Code39 && around == 0) out.text = 'I' + out.vin;
  if (matrix && around == 0) out.text = "VIN:" + out.vin + ";COLOR:B7";
  if (matrix && around == 1) out.text = "https://example.org/car/" + out.vin + "?from=label";

  QSizeF size;
  const std::vector<QRectF> bars = bars_of(out.kind, out.text, size);
  const double module_px = matrix ? draw.between(3, 7) : draw.between(2.2, 5);
  QTransform place;
  place.translate(640 + draw.between(-60, 60), 480 + draw.between(-60, 60));
  place.rotate(draw.between(0, 360));
  place.scale(module_px, module_px);
  place.shear(draw.between(-0.12, 0.12), 0);
  place.translate(-size.width() / 2.0, -size.height() / 2.0);

  // As large as the label needs, as a person steps back until it is all in the picture.
  const QRectF box = place.mapRect(QRectF(-8, -8, size.width() + 16, size.height() + 16));
  const QRectF all = box.united(QRectF(0, 0, 1280, 960));
  const QImage panel = PanelPicture(static_cast<unsigned>(number) + 100).taken();
  out.image = number % 3 == 0 ? QImage(1280, 960, QImage::Format_RGB32) : panel;
  if (number % 3 == 0) out.image.fill(QColor(190, 190, 186));
  out.image = out.image.scaled(all.size().toSize(), Qt::IgnoreAspectRatio);
  place *= QTransform::fromTranslate(-all.left(), -all.top());

  const int paper = draw.whole(185, 250);
  const int ink = draw.whole(15, 75);
  QPainter painter(&out.image);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setTransform(place);
  painter.fillRect(QRectF(-6, -6, size.width() + 12, size.height() + 12),
                   QColor(paper, paper, paper - 6));
  for (const QRectF& bar : bars) painter.fillRect(bar, QColor(ink, ink, ink));
  painter.end();
  out.image = blurred(out.image, draw.between(0, 0.4) * module_px);
  out.image = grained(out.image, draw.between(1, 8), Draw(static_cast<unsigned>(number)));
  return out;
}

struct BarcodeFigures {
  int read = 0;
  int wrong = 0;  // texts that stand in no picture
  int vins = 0;
  std::string unread;
};

inline BarcodeFigures read_scenes(int first, int step) {
  BarcodeFigures out;
  for (int number = first; number < barcode_scenes; number += step) {
    const BarcodeScene scene = barcode_scene(number);
    bool read = false;
    for (const Barcode& code : read_barcodes(scene.image)) {
      const bool right = code.kind == scene.kind && code.text == scene.text;
      read = read || right;
      out.wrong += right ? 0 : 1;
      out.vins += vin_in(code) == scene.vin ? 1 : 0;
    }
    out.read += read ? 1 : 0;
    if (!read) out.unread += std::to_string(number) + ' ';
  }
  return out;
}

}  // namespace jambline::picture
