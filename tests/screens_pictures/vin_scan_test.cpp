// A VIN by barcode: barcodes written by ZXing; check signs by 49 CFR 565.15 (ones alone sum to 89,
// 89 mod 11 = 1). The words are this program's own.
#include "screens/open_car_view_model.h"
#include "screens/vin_scan_view_model.h"
#include "tests/device/fake_camera.h"
#include "tests/picture/barcode_scenes.h"
#include "tests/screens_pictures/shot_desk.h"

namespace jambline::screens {
namespace {

using device::Camera;
using picture::Barcode;

const std::string ones(17, '1');
const QString wrong = QStringLiteral("11111111211111111");

// Labels side by side on gray, as a camera would show them from near by.
QImage labels(const std::vector<std::pair<Barcode::Kind, std::string>>& codes) {
  QImage out(1280, 480, QImage::Format_RGB32);
  out.fill(QColor(120, 118, 112));
  QPainter painter(&out);
  double left = 20;
  const double room = 1240.0 / static_cast<double>(codes.size()) - 20;
  for (const auto& [kind, text] : codes) {
    QSizeF size;
    const auto bars = picture::bars_of(kind, text, size);
    const double scale = std::min(room / (size.width() + 20), 300 / size.height());
    const double middle = left + (room - size.width() * scale) / 2;
    painter.fillRect(QRectF(left, 60, room, 360), Qt::white);
    for (const QRectF& bar : bars)
      painter.fillRect(QRectF(middle + bar.x() * scale, 100 + bar.y() * scale, bar.width() * scale,
                              bar.height() * scale),
                       Qt::black);
    left += room + 20;
  }
  return out;
}

class VinScan : public ShotDesk {
 protected:
  void SetUp() override {
    ShotDesk::SetUp();
    scan_ = std::make_unique<VinScanViewModel>(camera_);
    form_ = std::make_unique<OpenCarViewModel>(*session_);
    form_->scan_with(*scan_);
  }
  void TearDown() override {
    form_.reset();
    scan_.reset();
    ShotDesk::TearDown();
  }
  QVariant of(int row, const char* role) {
    return static_cast<RowList*>(scan_->found())->value(row, role);
  }
  std::unique_ptr<VinScanViewModel> scan_;
  std::unique_ptr<OpenCarViewModel> form_;
};

TEST_F(VinScan, WhatIsReadIsShownWithItsCheckAndUsedOnlyWhenAPersonSaysSo) {
  scan_->setFront(true);
  EXPECT_TRUE(scan_->live());
  camera_.show(labels({{Barcode::Kind::Code39, 'I' + ones}}));
  ASSERT_TRUE(jambline::until([&] { return scan_->foundCount() == 1; }));
  EXPECT_EQ(of(0, "signs"), "111 11111 1 11111111");
  EXPECT_EQ(of(0, "words"), "The check sign fits. A wrong sign can still pass.");
  EXPECT_TRUE(of(0, "years").toString().startsWith("Model year by place 10: 2001"));
  EXPECT_EQ(of(0, "useText"), "Use this VIN");
  EXPECT_EQ(form_->vin(), "") << "never silently";
  EXPECT_EQ(camera_.now, Camera::State::Off) << "nothing is looked for any more";
  scan_->use(of(0, "vin").toString());
  EXPECT_EQ(form_->vin().toStdString(), ones);
  EXPECT_EQ(form_->vinState(), OpenCarViewModel::VinState::Passes);
}

TEST_F(VinScan, OneThatDoesNotCheckSaysWhereAndIsUsedMarkedAsTyped) {
  scan_->setFront(true);
  camera_.show(labels({{Barcode::Kind::Qr, "VIN:" + wrong.toStdString() + ";X:1"}}));
  ASSERT_TRUE(jambline::until([&] { return scan_->foundCount() == 1; }));
  EXPECT_FALSE(of(0, "good").toBool());
  EXPECT_TRUE(of(0, "words").toString().startsWith("This VIN does not check. Look at place "))
      << of(0, "words").toString().toStdString();
  EXPECT_EQ(of(0, "useText"), "Use it as read");
  scan_->use(wrong);
  EXPECT_EQ(form_->vin(), wrong);
  EXPECT_EQ(form_->vinState(), OpenCarViewModel::VinState::AsTyped);
}

TEST_F(VinScan, TwoInOneFrameAreBothShown) {
  scan_->setFront(true);
  camera_.show(labels({{Barcode::Kind::Qr, ones}, {Barcode::Kind::Qr, "11111111111111112"}}));
  ASSERT_TRUE(jambline::until([&] { return scan_->foundCount() > 0; }));
  EXPECT_EQ(scan_->foundCount(), 2);
}

TEST_F(VinScan, ScanAgainForgetsAndOtherBarcodesAreNamed) {
  scan_->setFront(true);
  camera_.show(labels({{Barcode::Kind::Code128, ones}}));
  ASSERT_TRUE(jambline::until([&] { return scan_->foundCount() == 1; }));
  scan_->scanAgain();
  EXPECT_EQ(scan_->foundCount(), 0);
  EXPECT_TRUE(scan_->live());
  camera_.show(labels({{Barcode::Kind::Code128, "PART 4711"}}));
  ASSERT_TRUE(jambline::until([&] { return !scan_->notice().isEmpty(); }));
  EXPECT_EQ(scan_->notice(), "A barcode was read, and there is no VIN in it.");
  scan_->setFront(false);
  EXPECT_EQ(camera_.now, Camera::State::Off);
}

TEST_F(VinScan, FiveFramesASecondAtMostAreRead) {
  scan_->setFront(true);
  QImage gray(640, 480, QImage::Format_RGB32);
  gray.fill(Qt::gray);
  int said = 0;
  QObject counts;
  QObject::connect(scan_.get(), &VinScanViewModel::changed, &counts, [&] { ++said; });
  QElapsedTimer timer;
  timer.start();
  while (timer.elapsed() < 1000) {
    camera_.show(gray);
    QCoreApplication::processEvents();
    QThread::msleep(5);
  }
  EXPECT_GE(said, 1);
  EXPECT_LE(said, static_cast<int>(timer.elapsed()) / VinScanViewModel::apart_ms + 1);
}

TEST_F(VinScan, WithoutACameraItSaysWhyAndReadsAPictureFile) {
  camera_.now = Camera::State::NoCamera;
  scan_->setFront(true);
  EXPECT_FALSE(scan_->live());
  EXPECT_EQ(scan_->troubleWhat(), "There is no camera on this device.");
  scan_->readFiles({put("label.jpg", file_of(labels({{Barcode::Kind::DataMatrix, ones}})))});
  EXPECT_TRUE(scan_->reading());
  ASSERT_TRUE(jambline::until([&] { return scan_->foundCount() == 1; }));
  EXPECT_FALSE(scan_->reading());
  scan_->readFiles({put("empty.jpg", {})});
  ASSERT_TRUE(jambline::until([&] { return !scan_->reading(); }));
  EXPECT_FALSE(scan_->notice().isEmpty());
  EXPECT_EQ(scan_->foundCount(), 0);
  scan_->readFiles({put("panel.jpg", good())});
  ASSERT_TRUE(jambline::until([&] { return !scan_->reading(); }));
  EXPECT_TRUE(scan_->notice().startsWith("No barcode could be read"))
      << scan_->notice().toStdString();
}

}  // namespace
}  // namespace jambline::screens
