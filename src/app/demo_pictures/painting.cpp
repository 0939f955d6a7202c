#include "app/demo_pictures/painting.h"

#include <algorithm>

#include "app/demo_pictures/scene.h"

namespace jambline::demo {

namespace {
constexpr int height_px = 900;
constexpr int width_px = 1200;
constexpr int usual_grain = 9;   // of the sensor, 0 to 255
constexpr int blurred_part = 4;  // percent of the height that is left, then drawn large again
constexpr int dark_part = 9;     // percent of the light

void paint_view(Scene& scene) {
  using View = job::ShotView;
  switch (scene.wish().view) {
    case View::FrontLeftCorner:
      return paint_corner(scene, true, true);
    case View::FrontRightCorner:
      return paint_corner(scene, true, false);
    case View::RearLeftCorner:
      return paint_corner(scene, false, true);
    case View::RearRightCorner:
      return paint_corner(scene, false, false);
    case View::Inside:
      return paint_inside(scene);
    case View::PlateOrLabel:
      return paint_label(scene);
    case View::PanelWide:
      return paint_panel(scene);
    case View::PanelClose:
      return paint_close(scene, false);
    case View::SideLight:
      return paint_close(scene, true);
    case View::AlongEdge:
      return paint_edge(scene);
    case View::Jamb:
      return paint_jamb(scene);
    case View::Gap:
      return paint_gap(scene);
    case View::Underneath:
      return paint_underneath(scene);
  }
}

// Light that is left in percent, and the sensor's grain on it.
void expose(QImage& image, int light_percent, int grain, std::uint64_t seed) {
  std::uint32_t state = static_cast<std::uint32_t>(seed) | 1U;
  for (int y = 0; y < image.height(); ++y) {
    auto* pixel = reinterpret_cast<QRgb*>(image.scanLine(y));
    for (int x = 0; x < image.width(); ++x) {
      state = state * 1664525U + 1013904223U;
      const int more = static_cast<int>(state >> 24U) * grain / 128 - grain;
      const auto lit = [&](int value) {
        return std::clamp(value * light_percent / 100 + more, 0, 255);
      };
      pixel[x] = qRgb(lit(qRed(pixel[x])), lit(qGreen(pixel[x])), lit(qBlue(pixel[x])));
    }
  }
}

}  // namespace

QImage painting_of(const PictureWish& wish) {
  QImage image(width_px, height_px, QImage::Format_RGB32);
  {
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.scale(height_px, height_px);
    Scene scene(painter, wish);
    paint_view(scene);
  }
  const bool blurred = wish.word == trade::PhotoWord::Blurred;
  if (blurred)
    image = image.scaledToHeight(height_px * blurred_part / 100, Qt::SmoothTransformation)
                .scaled(width_px, height_px, Qt::IgnoreAspectRatio, Qt::SmoothTransformation)
                .convertToFormat(QImage::Format_RGB32);
  const bool dark = wish.word == trade::PhotoWord::TooDark;
  expose(image, dark ? dark_part : 100, blurred ? usual_grain / 3 : usual_grain, wish.seed);
  return image;
}

}  // namespace jambline::demo
