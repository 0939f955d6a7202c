#include "car_tint.h"

#include <algorithm>
#include <cmath>

namespace {

// sRGB (IEC 61966-2-1) and CIE 1976 L*a*b* with the D65 white point.
constexpr double kWhiteX = 0.95047;
constexpr double kWhiteZ = 1.08883;

double linear(double v) {
  return v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4);
}

double encoded(double v) {
  const double c = std::clamp(v, 0.0, 1.0);
  return c <= 0.0031308 ? c * 12.92 : 1.055 * std::pow(c, 1 / 2.4) - 0.055;
}

double cubeRoot(double t) {
  return t > 216.0 / 24389.0 ? std::cbrt(t) : (24389.0 / 27.0 * t + 16.0) / 116.0;
}

double cube(double f) {
  return f * f * f > 216.0 / 24389.0 ? f * f * f : (116.0 * f - 16.0) * 27.0 / 24389.0;
}

}  // namespace

CarTint::CarTint(QObject* parent) : QObject(parent) {
  connect(this, &CarTint::carChanged, this, &CarTint::tintChanged);
  connect(this, &CarTint::darkChanged, this, &CarTint::tintChanged);
}

QColor CarTint::of(const QColor& car, bool dark) {
  const double r = linear(car.redF());
  const double g = linear(car.greenF());
  const double b = linear(car.blueF());
  const double fx = cubeRoot((0.4124564 * r + 0.3575761 * g + 0.1804375 * b) / kWhiteX);
  const double fy = cubeRoot(0.2126729 * r + 0.7151522 * g + 0.0721750 * b);
  const double fz = cubeRoot((0.0193339 * r + 0.1191920 * g + 0.9503041 * b) / kWhiteZ);
  const double a_star = 500 * (fx - fy);
  const double b_star = 200 * (fy - fz);
  const double chroma = std::hypot(a_star, b_star);
  const double wanted = chroma < 8.0 ? 3.0 : (dark ? 8.0 : 9.0);
  const double ua = chroma > 1e-3 ? a_star / chroma : 1.0;
  const double ub = chroma > 1e-3 ? b_star / chroma : 0.0;

  const double ty = ((dark ? 17.0 : 88.0) + 16.0) / 116.0;
  const double x = kWhiteX * cube(ty + ua * wanted / 500.0);
  const double y = cube(ty);
  const double z = kWhiteZ * cube(ty - ub * wanted / 200.0);
  return QColor::fromRgbF(
      static_cast<float>(encoded(3.2404542 * x - 1.5371385 * y - 0.4985314 * z)),
      static_cast<float>(encoded(-0.9692660 * x + 1.8760108 * y + 0.0415560 * z)),
      static_cast<float>(encoded(0.0556434 * x - 0.2040259 * y + 1.0572252 * z)));
}
