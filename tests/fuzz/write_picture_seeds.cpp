// picture-seeds FOLDER: writes small JPEG and PNG files with and without facts into FOLDER.
#include <filesystem>
#include <fstream>
#include <iostream>

#include "tests/picture/sample_files.h"

namespace {
using namespace jambline::picture;

void write_facts(Exiv2::Image& image) {
  image.exifData()["Exif.Image.Make"] = "A maker";
  image.exifData()["Exif.Image.Orientation"] = std::uint16_t{6};
  image.exifData()["Exif.Photo.DateTimeOriginal"] = "2026:11:24 15:40:12";
  image.exifData()["Exif.Photo.OffsetTimeOriginal"] = "+01:00";
  image.exifData()["Exif.GPSInfo.GPSLatitude"] = "48/1 8/1 1234/100";
  image.iptcData()["Iptc.Application2.City"] = "Anytown";
  image.xmpData()["Xmp.exif.GPSLatitude"] = "48,8.2N";
}
}  // namespace

int main(int argc, char** argv) {
  if (argc != 2) {
    std::cerr << "picture-seeds FOLDER\n";
    return 2;
  }
  const std::filesystem::path folder = argv[1];
  std::filesystem::create_directories(folder);
  for (const char* format : {"jpeg", "png"}) {
    const File plain = encoded(four_corners(24, 16), format);
    const File facts = with_facts(plain, write_facts);
    for (const auto& [name, file] : {std::pair("plain", plain), std::pair("facts", facts)})
      std::ofstream(folder / (std::string(name) + '.' + format), std::ios::binary)
          .write(reinterpret_cast<const char*>(file.data()),
                 static_cast<std::streamsize>(file.size()));
  }
}
