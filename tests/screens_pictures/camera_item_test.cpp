// What the camera sees, painted; the dashes of an earlier picture over it.
#include "screens/camera_item.h"

#include <QCoreApplication>
#include <QPainter>
#include <gtest/gtest.h>

#include "tests/device/fake_camera.h"
#include "tests/screens/until.h"

namespace jambline::screens {
namespace {

struct CameraPaint : testing::Test {
  int none = 0;
  QCoreApplication application{none, nullptr};
  device::FakeCamera camera;
  CameraItem item;

  CameraPaint() {
    item.setSize({200, 100});
    item.set_camera(&camera);
  }
  QImage painted() {
    QImage out(200, 100, QImage::Format_RGB32);
    out.fill(Qt::black);
    QPainter painter(&out);
    item.paint(&painter);
    return out;
  }
};

// Left half black, right half white: one edge, upright in the middle.
QImage half_and_half(int width_px, int height_px) {
  QImage out(width_px, height_px, QImage::Format_RGB32);
  out.fill(Qt::black);
  QPainter(&out).fillRect(width_px / 2, 0, width_px / 2, height_px, Qt::white);
  return out;
}

TEST_F(CameraPaint, TheFrameIsShownWholeOrFillsItsPlace) {
  QImage frame(100, 100, QImage::Format_RGB32);
  frame.fill(Qt::green);
  camera.show(frame);
  const QColor green = Qt::green;
  EXPECT_EQ(painted().pixelColor(100, 50), green);
  EXPECT_EQ(painted().pixelColor(10, 50), QColor(Qt::black)) << "a square in a wide place";
  item.setProperty("whole", false);
  EXPECT_EQ(painted().pixelColor(10, 50), green);
  camera.show({});
  EXPECT_EQ(painted().pixelColor(100, 50), QColor(Qt::black));
}

TEST_F(CameraPaint, DashesLieOnTheEdgeAndNowhereElse) {
  const QImage dashes = edge_dashes(half_and_half(480, 240), Qt::red);
  int drawn = 0, left_out = 0;
  for (int y = 1; y < dashes.height() - 1; ++y) {
    for (int x = 0; x < dashes.width(); ++x)
      if (std::abs(x - 240) > 3) {
        ASSERT_EQ(qAlpha(dashes.pixel(x, y)), 0) << x << ' ' << y;
      }
    (qAlpha(dashes.pixel(240, y)) != 0 ? drawn : left_out) += 1;
  }
  EXPECT_GT(drawn, 80);
  EXPECT_GT(left_out, 80);
}

TEST_F(CameraPaint, TheGhostIsWorkedOutOutOfSightAndPaintedOverTheFrame) {
  QImage frame(200, 100, QImage::Format_RGB32);
  frame.fill(Qt::black);
  camera.show(frame);
  item.setProperty("line", QColor(Qt::white));
  item.set_ghost(half_and_half(400, 200));
  EXPECT_TRUE(item.dashes().isNull()) << "not within the call";
  ASSERT_TRUE(until([&] { return !item.dashes().isNull(); }));
  const QImage image = painted();
  int brightest = 0;
  for (int y = 0; y < 100; ++y) brightest = std::max(brightest, qGray(image.pixel(100, y)));
  EXPECT_GT(brightest, 40);
  EXPECT_LE(brightest, 103) << "40 % of white is 102";
  EXPECT_EQ(qGray(image.pixel(30, 50)), 0);
  item.set_ghost({});
  EXPECT_EQ(painted(), frame);
}

}  // namespace
}  // namespace jambline::screens
