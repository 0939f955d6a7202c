// tests/picture/rendered_panels.h: pictures of panels of our own making, as a camera would take
// them.
//
// Seeded: one number gives one picture. Doors, fenders, close looks and jambs in eleven colours,
// under tubes of light, with gaps, body lines, handles, tape, nibs and a shop behind them; softened
// as by a lens and grained as by a sensor. 1280 x 960 px.
#pragma once

#include <QImage>
#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <array>
#include <cmath>
#include <random>

namespace jambline::picture {

class Draw {
 public:
  explicit Draw(unsigned seed) : engine_(seed) {}
  double between(double low, double high) {
    return low + (high - low) * static_cast<double>(engine_() >> 11U) / 9007199254740992.0;
  }
  int whole(int low, int high) { return static_cast<int>(between(low, high + 1)); }
  // About normal: twelve even draws.
  double normal() {
    double sum = -6;
    for (int i = 0; i < 12; ++i) sum += between(0, 1);
    return sum;
  }

 private:
  std::mt19937_64 engine_;
};

// Three passes of a running mean of `radius` on each side: near a Gaussian of the same spread.
inline void smear(QImage& image, int radius, bool across) {
  const int lines = across ? image.height() : image.width();
  const int length = across ? image.width() : image.height();
  const qsizetype step = across ? 4 : image.bytesPerLine();
  std::vector<int> from(static_cast<std::size_t>(length));
  for (int line = 0; line < lines; ++line)
    for (int channel = 0; channel < 3; ++channel) {
      uchar* first =
          image.bits() + (across ? line * image.bytesPerLine() : qsizetype{4} * line) + channel;
      for (int i = 0; i < length; ++i) from[static_cast<std::size_t>(i)] = first[i * step];
      const auto at = [&](int i) {
        return from[static_cast<std::size_t>(std::clamp(i, 0, length - 1))];
      };
      int sum = 0;
      for (int i = -radius; i <= radius; ++i) sum += at(i);
      for (int i = 0; i < length; ++i) {
        first[i * step] = static_cast<uchar>((sum + radius) / (2 * radius + 1));
        sum += at(i + radius + 1) - at(i - radius);
      }
    }
}

// The spread of one running mean of 2r+1 is sqrt(r(r+1)/3); one, two or three of them.
inline QImage blurred(QImage image, double sigma_px) {
  const int passes = sigma_px < 0.4 ? 0 : sigma_px < 1 ? 1 : sigma_px < 1.3 ? 2 : 3;
  const int radius =
      std::max(1, static_cast<int>(std::lround(std::sqrt(sigma_px * sigma_px + 0.25) - 0.5)));
  for (int pass = 0; pass < passes; ++pass) {
    smear(image, radius, true);
    smear(image, radius, false);
  }
  return image;
}

inline QImage grained(QImage image, double sigma, Draw draw) {
  std::array<int, 1024> grain{};
  for (int& one : grain) one = static_cast<int>(std::lround(draw.normal() * sigma));
  unsigned at = 0;
  for (int y = 0; y < image.height(); ++y) {
    at = static_cast<unsigned>(draw.whole(0, 1023));
    uchar* row = image.scanLine(y);
    for (int x = 0; x < image.width() * 4; ++x, at += 7 + (at >> 9U))
      row[x] = static_cast<uchar>(std::clamp(row[x] + grain[at % 1024], 0, 255));
  }
  return image;
}

class PanelPicture {
 public:
  explicit PanelPicture(unsigned seed)
      : draw_(seed), image_(1280, 960, QImage::Format_RGB32), painter_(&image_) {
    painter_.setRenderHint(QPainter::Antialiasing);
    constexpr std::array<QRgb, 11> colours{0xf2f2ee, 0xc4c8cc, 0x26282c, 0x9a1c20,
                                           0x1f3f78, 0x6c7074, 0x23573c, 0xd9c9a4,
                                           0x3a4650, 0xb85a1e, 0x8c8f88};
    paint_ = QColor(colours[seed % colours.size()]);
  }

  QImage taken() {
    behind();
    switch (draw_.whole(0, 3)) {
      case 0:
        wide();
        break;
      case 1:
        close();
        break;
      case 2:
        jamb();
        break;
      default:
        primed();
        break;
    }
    painter_.end();
    // A lens' softness and a sensor's grain.
    return grained(mixed(), 2, Draw(static_cast<unsigned>(draw_.whole(0, 1 << 30))));
  }

 private:
  QImage mixed() {
    QImage soft = blurred(image_, 1.2);
    for (int y = 0; y < soft.height(); ++y) {
      uchar* to = soft.scanLine(y);
      const uchar* sharp = image_.constScanLine(y);
      for (int x = 0; x < soft.width() * 4; ++x) to[x] = static_cast<uchar>((to[x] + sharp[x]) / 2);
    }
    return soft;
  }

  QColor lit(const QColor& colour, double by) const {
    const auto one = [&](int value) { return std::clamp(static_cast<int>(value * by), 4, 250); };
    return {one(colour.red()), one(colour.green()), one(colour.blue())};
  }

  void behind() {
    const int wall = draw_.whole(90, 180);
    QLinearGradient light(0, 0, 0, 960);
    light.setColorAt(0, QColor(wall + 30, wall + 30, wall + 26));
    light.setColorAt(1, QColor(wall - 30, wall - 32, wall - 36));
    painter_.fillRect(image_.rect(), light);
    for (int i = draw_.whole(6, 16); i > 0; --i) {
      const int gray = draw_.whole(40, 210);
      painter_.fillRect(QRectF(draw_.between(-100, 1280), draw_.between(0, 700),
                               draw_.between(20, 220), draw_.between(10, 160)),
                        QColor(gray, gray, gray - 20));
    }
    for (int i = draw_.whole(3, 10); i > 0; --i) {
      painter_.setPen(QPen(QColor(60, 60, 58), draw_.between(1, 4)));
      const double x = draw_.between(0, 1280);
      painter_.drawLine(QPointF(x, 0), QPointF(x + draw_.between(-60, 60), 960));
    }
    painter_.setPen(Qt::NoPen);
  }

  void fill_paint(const QPainterPath& shape) {
    QLinearGradient body(draw_.between(0, 300), 0, draw_.between(-200, 400), 960);
    body.setColorAt(0, lit(paint_, draw_.between(1.0, 1.35)));
    body.setColorAt(draw_.between(0.3, 0.6), lit(paint_, draw_.between(0.85, 1.1)));
    body.setColorAt(1, lit(paint_, draw_.between(0.5, 0.8)));
    painter_.setPen(Qt::NoPen);
    painter_.fillPath(shape, body);
    painter_.save();
    painter_.setClipPath(shape);
    for (int i = draw_.whole(1, 3); i > 0; --i) reflection();
    painter_.restore();
  }

  // A tube of light in the paint, its edge as crisp as the paint is flat.
  void reflection() {
    const double y = draw_.between(60, 700);
    const double height = draw_.between(8, 60);
    const double bend = draw_.between(-160, 160);
    QPainterPath tube(QPointF(draw_.between(-100, 300), y));
    tube.quadTo(QPointF(640, y + bend), QPointF(draw_.between(900, 1400), y + bend / 3));
    painter_.setBrush(Qt::NoBrush);
    painter_.setPen(QPen(QColor(255, 255, 250, 60), height * 1.8, Qt::SolidLine, Qt::RoundCap));
    painter_.drawPath(tube);
    painter_.setPen(QPen(QColor(250, 250, 246, 190), height, Qt::SolidLine, Qt::RoundCap));
    painter_.drawPath(tube);
    painter_.setPen(Qt::NoPen);
  }

  void line(const QPainterPath& way, double width) {
    painter_.setBrush(Qt::NoBrush);
    painter_.setPen(QPen(lit(paint_, 1.35), width));
    painter_.drawPath(way.translated(0, -width));
    painter_.setPen(QPen(lit(paint_, 0.4), width));
    painter_.drawPath(way);
    painter_.setPen(Qt::NoPen);
  }

  void gap(const QPointF& from, const QPointF& to) {
    painter_.setPen(QPen(QColor(12, 12, 13), draw_.between(4, 8)));
    painter_.drawLine(from, to);
    painter_.setPen(QPen(lit(paint_, 1.3), 2));
    painter_.drawLine(from + QPointF(6, 0), to + QPointF(6, 0));
    painter_.setPen(Qt::NoPen);
  }

  void nibs(int count, double largest_px) {
    for (; count > 0; --count) {
      const QPointF at(draw_.between(150, 1130), draw_.between(150, 810));
      const double size = draw_.between(1.5, largest_px);
      painter_.setBrush(lit(paint_, 0.55));
      painter_.drawEllipse(at, size, size);
      painter_.setBrush(QColor(250, 250, 250, 220));
      painter_.drawEllipse(at - QPointF(size / 3, size / 3), size / 3, size / 3);
    }
  }

  void tape(double y) {
    painter_.save();
    painter_.translate(0, y);
    painter_.rotate(draw_.between(-4, 4));
    painter_.fillRect(QRectF(-100, 0, 1500, draw_.between(50, 110)), QColor(206, 190, 120));
    for (int x = -100; x < 1400; x += 6)
      painter_.fillRect(QRectF(x, 0, 2, draw_.between(30, 50)), QColor(190, 172, 100));
    painter_.restore();
  }

  QPainterPath whole() const {
    QPainterPath out;
    out.addRect(image_.rect());
    return out;
  }

  void wide() {
    QPainterPath door(QPointF(draw_.between(60, 160), draw_.between(120, 220)));
    door.cubicTo(QPointF(400, draw_.between(60, 160)), QPointF(800, draw_.between(60, 160)),
                 QPointF(1180, draw_.between(140, 220)));
    door.lineTo(QPointF(draw_.between(1120, 1240), 860));
    door.lineTo(QPointF(draw_.between(60, 140), 880));
    door.closeSubpath();
    fill_paint(door);
    QPainterPath crease(QPointF(100, draw_.between(380, 520)));
    crease.quadTo(QPointF(640, draw_.between(360, 500)), QPointF(1180, draw_.between(380, 520)));
    line(crease, draw_.between(2, 5));
    gap(QPointF(draw_.between(300, 420), 130), QPointF(draw_.between(300, 420), 880));
    gap(QPointF(draw_.between(900, 1100), 130), QPointF(draw_.between(900, 1100), 880));
    const QRectF handle(draw_.between(480, 760), draw_.between(300, 360), 120, 32);
    painter_.setBrush(QColor(24, 24, 25));
    painter_.drawRoundedRect(handle.translated(0, 6), 14, 14);
    painter_.setBrush(lit(paint_, 1.1));
    painter_.drawRoundedRect(handle, 14, 14);
    nibs(draw_.whole(2, 8), 3);
  }

  // 20 to 40 cm away: a nib in a ring of a pen, and an edge to know the place by.
  void close() {
    fill_paint(whole());
    nibs(draw_.whole(3, 9), 9);
    painter_.setBrush(Qt::NoBrush);
    painter_.setPen(QPen(QColor(30, 30, 200), 6));
    painter_.drawEllipse(QPointF(draw_.between(400, 900), draw_.between(300, 650)), 80, 74);
    painter_.setPen(Qt::NoPen);
    const double x = draw_.between(60, 260);
    gap(QPointF(x, -10), QPointF(x + draw_.between(-80, 80), 970));
    QPainterPath crease(QPointF(x, draw_.between(500, 900)));
    crease.lineTo(QPointF(1290, draw_.between(500, 900)));
    line(crease, draw_.between(3, 7));
  }

  void jamb() {
    fill_paint(whole());
    for (int i = 0; i < 4; ++i) {
      const double x = 200 + 260 * i + draw_.between(-50, 50);
      gap(QPointF(x, -10), QPointF(x + draw_.between(-120, 120), 970));
    }
    for (int i = draw_.whole(3, 7); i > 0; --i) {
      const QPointF at(draw_.between(100, 1180), draw_.between(80, 880));
      painter_.setBrush(QColor(40, 40, 42));
      painter_.drawEllipse(at, 26, 26);
      painter_.setBrush(QColor(150, 150, 146));
      painter_.drawEllipse(at, 15, 15);
      painter_.fillRect(QRectF(at.x() - 10, at.y() - 2, 20, 4), QColor(50, 50, 50));
    }
    if (draw_.whole(0, 1)) tape(draw_.between(300, 700));
  }

  // Sanded primer with scratches, taped at one side.
  void primed() {
    paint_ = QColor(draw_.whole(90, 160), draw_.whole(90, 160), draw_.whole(86, 150));
    QLinearGradient body(0, 0, draw_.between(200, 1280), 960);
    body.setColorAt(0, lit(paint_, 1.15));
    body.setColorAt(1, lit(paint_, 0.75));
    painter_.fillRect(image_.rect(), body);
    for (int i = draw_.whole(150, 500); i > 0; --i) {
      painter_.setPen(QPen(lit(paint_, draw_.between(0.8, 1.25)), draw_.between(1, 2)));
      const QPointF at(draw_.between(0, 1280), draw_.between(0, 960));
      painter_.drawLine(at, at + QPointF(draw_.between(-90, 90), draw_.between(-40, 40)));
    }
    painter_.setPen(Qt::NoPen);
    tape(draw_.between(20, 200));
    gap(QPointF(draw_.between(900, 1200), -10), QPointF(draw_.between(900, 1200), 970));
  }

  Draw draw_;
  QImage image_;
  QPainter painter_;
  QColor paint_;
};

}  // namespace jambline::picture
