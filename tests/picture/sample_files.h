// tests/picture/sample_files.h: small picture files of known content, and what others write in
// them.
#pragma once

#include <QBuffer>
#include <QImage>
#include <cstdint>
#include <exiv2/exiv2.hpp>
#include <functional>
#include <string>
#include <vector>

namespace jambline::picture {

using File = std::vector<std::uint8_t>;

inline File encoded(const QImage& image, const char* format, int quality = 90) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  image.save(&buffer, format, quality);
  return {bytes.begin(), bytes.end()};
}

// Four corners of four colours: upper left red, upper right green, lower left blue, lower right
// white.
inline QImage four_corners(int width, int height) {
  QImage out(width, height, QImage::Format_RGB32);
  for (int y = 0; y < height; ++y)
    for (int x = 0; x < width; ++x) {
      const bool left = x < width / 2;
      const bool upper = y < height / 2;
      out.setPixel(x, y, upper ? (left ? 0xffff0000 : 0xff00ff00) : left ? 0xff0000ff : 0xffffffff);
    }
  return out;
}

// The file with what `write` puts into it, written by Exiv2.
inline File with_facts(const File& file, const std::function<void(Exiv2::Image&)>& write) {
  const auto image = Exiv2::ImageFactory::open(file.data(), static_cast<long>(file.size()));
  image->readMetadata();
  write(*image);
  image->writeMetadata();
  Exiv2::BasicIo& io = image->io();
  io.open();
  File out(io.size());
  io.read(out.data(), static_cast<long>(out.size()));
  return out;
}

inline bool contains(const File& file, const std::string& text) {
  return std::search(file.begin(), file.end(), text.begin(), text.end(),
                     [](std::uint8_t a, char b) { return a == static_cast<std::uint8_t>(b); }) !=
         file.end();
}

}  // namespace jambline::picture
