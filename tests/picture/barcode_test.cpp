// Barcodes: pictures drawn here, symbols made by ZXing's writers; numbers by ISO 3779's alphabet.
#include "picture/barcode.h"

#include <gtest/gtest.h>
#include <iostream>

#include "tests/picture/barcode_scenes.h"

namespace jambline::picture {
namespace {

std::optional<std::string> vin(Barcode::Kind kind, const std::string& text) {
  return vin_in({kind, text, {}});
}

// Every ninth picture; the bench prints the figures of all 240.
TEST(Barcodes, AreReadTurnedBlurredGrainyAndInAScene) {
  const BarcodeFigures figures = read_scenes(0, 9);
  std::cout << figures.read << " of 27 read; not " << figures.unread << '\n';
  EXPECT_GE(figures.read, 25);
  EXPECT_EQ(figures.wrong, 0);
  EXPECT_EQ(figures.vins, figures.read);
}

TEST(Barcodes, PanelsWithoutOneGiveNone) {
  for (unsigned seed = 300; seed < 306; ++seed)
    EXPECT_TRUE(read_barcodes(PanelPicture(seed).taken()).empty()) << seed;
}

TEST(Barcodes, SeveralInOnePictureAreAllGivenOnceEachWithTheirCorners) {
  QImage image(1200, 900, QImage::Format_RGB32);
  image.fill(Qt::white);
  QPainter painter(&image);
  int row = 0;
  for (const char* text : {"1M8GDM9AXKP042788", "PAINT 4711", "1M8GDM9AXKP042788"}) {
    QSizeF size;
    for (const QRectF& bar : bars_of(Barcode::Kind::Code128, text, size))
      painter.fillRect(QRectF(100 + bar.x() * 4, 60 + 280 * row, bar.width() * 4, 160), Qt::black);
    ++row;
  }
  painter.end();
  const auto codes = read_barcodes(image, Effort::Quick);
  ASSERT_EQ(codes.size(), 2U);
  for (const Barcode& code : codes) {
    EXPECT_EQ(code.kind, Barcode::Kind::Code128);
    EXPECT_EQ(code.corners.size(), 4);
    EXPECT_TRUE(image.rect().contains(code.corners.boundingRect()));
  }
  EXPECT_NE(codes[0].text, codes[1].text);
}

TEST(Barcodes, TheCornersLieInThePictureAsItWasGiven) {
  const BarcodeScene scene = barcode_scene(3);
  const auto codes = read_barcodes(scene.image.scaled(scene.image.size() * 2));
  ASSERT_EQ(codes.size(), 1U);
  const QPoint middle = codes[0].corners.boundingRect().center();
  EXPECT_NEAR(middle.x(), 1280, 160);
  EXPECT_NEAR(middle.y(), 960, 160);
}

TEST(Barcodes, NoPictureGivesNone) {
  EXPECT_TRUE(read_barcodes(QImage()).empty());
  QImage dot(1, 1, QImage::Format_RGB32);
  dot.fill(Qt::black);
  EXPECT_TRUE(read_barcodes(dot).empty());
}

TEST(VinInBarcode, IsFoundWithWhatMayStandAroundIt) {
  using enum Barcode::Kind;
  const std::string number = "1M8GDM9AXKP042788";
  EXPECT_EQ(vin(Code39, number), number);
  EXPECT_EQ(vin(Code39, 'I' + number), number);
  EXPECT_EQ(vin(Code128, "1m8gdm9axkp042788"), number);
  EXPECT_EQ(vin(Qr, "https://example.org/car/" + number + "?from=label"), number);
  EXPECT_EQ(vin(DataMatrix, "VIN" + number), number);
  EXPECT_EQ(vin(DataMatrix, "COLOR B7;" + number + ';'), number);
}

TEST(VinInBarcode, WhatCannotBeOneIsNone) {
  using enum Barcode::Kind;
  EXPECT_EQ(vin(Code39, ""), std::nullopt);
  EXPECT_EQ(vin(Code39, "1M8GDM9AXKP04278"), std::nullopt);     // sixteen
  EXPECT_EQ(vin(Code128, "1M8GDM9AXKP0427888"), std::nullopt);  // eighteen
  EXPECT_EQ(vin(Code128, "I1M8GDM9AXKP042788"), std::nullopt);  // the I is Code 39's only
  for (const char sign : {'I', 'O', 'Q', '-', '*'}) {
    std::string number = "1M8GDM9AXKP042788";
    number[4] = sign;
    EXPECT_EQ(vin(Qr, number), std::nullopt) << sign;
  }
}

}  // namespace
}  // namespace jambline::picture
