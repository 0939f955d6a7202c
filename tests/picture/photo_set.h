// tests/picture/photo_set.h: the pictures that the limits of judgement are measured on.
//
// Sources:  50 rendered panels of our own and the 14 photographs of the Debian 12 package
//           lomiri-wallpapers-16.04 (its copyright file: CC-BY-4.0, CC-BY-SA-4.0 and CC0-1.0); its
//           fifteenth picture is a drawing and is left out. Each 1280 px long.
// Variants: good (as it is); blurred, three strengths: a Gaussian of 0.3, 0.6 and 1.2 % of the long
//           side; moved: a hand that moved by 1.5 % of it; dark: five stops under; clipped: exposed
//           until a third of the picture is burnt out.
// Why 0.3:  a picture 130 mm long at arm's length (600 mm), seen with an acuity of one minute of
//           arc (0.17 mm): 0.3 % of it is 0.4 mm, more than two minutes (from memory, no source).
// Halves:   even numbers were used to choose the limits, odd ones to hold them against.
#pragma once

#include <QBuffer>
#include <QImage>
#include <QImageReader>
#include <QString>
#include <cmath>
#include <filesystem>
#include <string>
#include <vector>

#include "tests/picture/rendered_panels.h"

namespace jambline::picture {

enum class Variant : std::uint8_t { Good, Blurred, MoreBlurred, MostBlurred, Moved, Dark, Clipped };
inline constexpr std::array<const char*, 7> variant_names{
    "good", "blurred", "more blurred", "most blurred", "moved", "dark", "clipped"};

inline constexpr int panels = 50;
inline constexpr const char* photo_folder = "/usr/share/backgrounds/";
inline constexpr std::array<const char*, 14> photographs{"Bridge_by_Sander_Klootwijk.jpg",
                                                         "Dragonfly_by_Bolly.jpg",
                                                         "Picture_0B_by_freespace.jpg",
                                                         "Picture_1A_by_freespace.jpg",
                                                         "Wine_by_Jakkub_Mede.jpg",
                                                         "aitzgorri_by_Aitzol_Berasategi.jpg",
                                                         "analogpattern_by_Peter_Nerlich.jpg",
                                                         "free_by_Peter_Nerlich.jpg",
                                                         "friends_by_Aitzol_Berasategi.jpg",
                                                         "greentock_by_Peter_Nerlich.jpg",
                                                         "life_by_Aitzol_Berasategi.jpg",
                                                         "picosdeeuropa_by_Aitzol_Berasategi.jpg",
                                                         "seeding_by_Clements_Engelhardt.jpg",
                                                         "sunset_by_Aitzol_Berasategi.jpg"};
inline constexpr int sources = panels + static_cast<int>(photographs.size());

inline std::string source_name(int source) {
  if (source < panels) return "panel " + std::to_string(source);
  return photographs[static_cast<std::size_t>(source - panels)];
}

// Null when the package of photographs is not installed.
inline QImage source_picture(int source) {
  if (source < panels) return PanelPicture(static_cast<unsigned>(source)).taken();
  QImageReader reader(QString::fromStdString(photo_folder + source_name(source)));
  reader.setScaledSize(reader.size().scaled(1280, 1280, Qt::KeepAspectRatio));
  return reader.read().convertToFormat(QImage::Format_RGB32);
}

// Exposed anew: light times two to the power of `stops`, by a plain curve of 2.2.
inline QImage exposed(QImage image, double stops) {
  std::array<uchar, 256> curve{};
  const double by = std::pow(2.0, stops / 2.2);
  for (std::size_t i = 0; i < 256; ++i)
    curve[i] = static_cast<uchar>(std::min(255.0, std::round(static_cast<double>(i) * by)));
  for (int y = 0; y < image.height(); ++y) {
    uchar* row = image.scanLine(y);
    for (int x = 0; x < image.width() * 4; ++x) row[x] = curve[row[x]];
  }
  return image;
}

// The mean of what a hand saw that moved by `length_px` in this direction.
inline QImage moved(const QImage& from, double length_px, double angle) {
  QImage out(from.size(), QImage::Format_RGB32);
  const int steps = static_cast<int>(length_px);
  for (int y = 0; y < from.height(); ++y) {
    std::vector<int> sums(static_cast<std::size_t>(from.width()) * 4);
    for (int step = 0; step <= steps; ++step) {
      const double by = step - steps / 2.0;
      const int dx = static_cast<int>(std::lround(by * std::cos(angle)));
      const int dy = static_cast<int>(std::lround(by * std::sin(angle)));
      const uchar* row = from.constScanLine(std::clamp(y + dy, 0, from.height() - 1));
      for (int x = 0; x < from.width(); ++x) {
        const int at = std::clamp(x + dx, 0, from.width() - 1) * 4;
        for (int i = 0; i < 4; ++i) sums[static_cast<std::size_t>(x * 4 + i)] += row[at + i];
      }
    }
    uchar* row = out.scanLine(y);
    for (std::size_t i = 0; i < sums.size(); ++i)
      row[i] = static_cast<uchar>(sums[i] / (steps + 1));
  }
  return out;
}

// Exposed until a third of it is burnt out.
inline QImage burnt(const QImage& image) {
  for (double stops = 0.5; stops < 12; stops += 0.25) {
    const double by = std::pow(2.0, stops / 2.2);
    const auto most = [&](int value) { return static_cast<int>(std::min(255.0, value * by)); };
    int burnt_out = 0;
    int all = 0;
    for (int y = 0; y < image.height(); y += 6)
      for (int x = 0; x < image.width(); x += 6, ++all) {
        const QRgb at = image.pixel(x, y);
        burnt_out += qGray(most(qRed(at)), most(qGreen(at)), most(qBlue(at))) >= 252 ? 1 : 0;
      }
    if (burnt_out * 3 >= all) return exposed(image, stops);
  }
  return {};
}

inline QImage variant_of(const QImage& source, Variant variant, unsigned seed) {
  const double long_side = std::max(source.width(), source.height());
  const auto grain = [&](const QImage& image) { return grained(image, 2, Draw(seed)); };
  switch (variant) {
    case Variant::Good:
      return source;
    case Variant::Blurred:
      return grain(blurred(source, 0.003 * long_side));
    case Variant::MoreBlurred:
      return grain(blurred(source, 0.006 * long_side));
    case Variant::MostBlurred:
      return grain(blurred(source, 0.012 * long_side));
    case Variant::Moved:
      return grain(moved(source, 0.015 * long_side, Draw(seed).between(0, 3.14)));
    case Variant::Dark:
      return grain(exposed(source, -5));
    case Variant::Clipped:
      return burnt(source);
  }
  return {};
}

inline std::vector<std::uint8_t> as_jpeg(const QImage& image, int quality = 88) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  image.save(&buffer, "jpeg", quality);
  return {bytes.begin(), bytes.end()};
}

}  // namespace jambline::picture
