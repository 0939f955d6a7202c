#include "picture/facts.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <cstdio>
#include <exiv2/exiv2.hpp>
#include <mutex>
#include <string_view>

namespace jambline::picture {

namespace {
// Compressed text of a PNG grows a thousandfold at most when it is read.
constexpr std::size_t most_png_text_bytes = 256U << 10U;

void make_ready() {
  static std::once_flag once;
  static std::mutex mutex;
  std::call_once(once, [] {
    Exiv2::LogMsg::setLevel(Exiv2::LogMsg::mute);
    Exiv2::XmpParser::initialize(
        [](void* lock, bool take) {
          auto& held = *static_cast<std::mutex*>(lock);
          take ? held.lock() : held.unlock();
        },
        &mutex);
  });
}

std::optional<int> offset_min(const std::string& text) {
  char sign = 0;
  char rest = 0;
  int hours = 0;
  int minutes = 0;
  if (std::sscanf(text.c_str(), "%c%2d:%2d%c", &sign, &hours, &minutes, &rest) != 3) return {};
  if ((sign != '+' && sign != '-') || hours < 0 || hours > 14 || minutes < 0 || minutes > 59)
    return {};
  const int all = hours * 60 + minutes;
  return sign == '-' ? -all : all;
}

// "2026:11:24 15:40:12" of Exif, "2026-11-24T15:40:12+02:00" of XMP.
std::optional<Taken> taken_of(const std::string& text, const std::string& offset) {
  int year = 0;
  int month = 0;
  int day = 0;
  int hour = 0;
  int minute = 0;
  int second = 0;
  int used = 0;
  if (std::sscanf(text.c_str(), "%4d%*[:-]%2d%*[:-]%2d%*[ T]%2d:%2d:%2d%n", &year, &month, &day,
                  &hour, &minute, &second, &used) != 6)
    return {};
  constexpr std::array<int, 12> days{31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  if (year < 1 || month < 1 || month > 12 || day < 1 ||
      day > days[static_cast<std::size_t>(month - 1)] || hour < 0 || hour > 23 || minute < 0 ||
      minute > 59 || second < 0 || second > 60)
    return {};
  const bool leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
  if (month == 2 && day == 29 && !leap) return {};
  std::array<char, 80> local{};
  std::snprintf(local.data(), local.size(), "%04d-%02d-%02dT%02d:%02d:%02d", year, month, day, hour,
                minute, second);
  std::string zone = offset;
  if (zone.empty()) {
    zone = text.substr(static_cast<std::size_t>(used));
    if (!zone.empty() && zone[0] == '.') zone.erase(0, zone.find_first_not_of("0123456789", 1));
    if (zone == "Z") zone = "+00:00";
  }
  return Taken{local.data(), offset_min(zone)};
}

template <class Data, class Key>
std::string text_of(const Data& data, const char* key) {
  const auto found = data.findKey(Key(key));
  return found == data.end() ? std::string() : found->toString();
}

std::optional<Taken> taken_by(const Exiv2::Image& image) {
  const auto exif = [&](const char* key) {
    return text_of<Exiv2::ExifData, Exiv2::ExifKey>(image.exifData(), key);
  };
  if (auto taken =
          taken_of(exif("Exif.Photo.DateTimeOriginal"), exif("Exif.Photo.OffsetTimeOriginal")))
    return taken;
  if (auto taken =
          taken_of(exif("Exif.Photo.DateTimeDigitized"), exif("Exif.Photo.OffsetTimeDigitized")))
    return taken;
  for (const char* key :
       {"Xmp.exif.DateTimeOriginal", "Xmp.photoshop.DateCreated", "Xmp.xmp.CreateDate"})
    if (auto taken = taken_of(text_of<Exiv2::XmpData, Exiv2::XmpKey>(image.xmpData(), key), ""))
      return taken;
  return {};
}

bool any_of_names(std::string_view name, std::initializer_list<std::string_view> names) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

bool places(const Exiv2::Exifdatum& one) {
  return one.groupName() == "GPSInfo" &&
         any_of_names(one.tagName(), {"GPSLatitude", "GPSLongitude", "GPSAltitude",
                                      "GPSDestLatitude", "GPSDestLongitude", "GPSAreaInformation"});
}

bool places(const Exiv2::Iptcdatum& one) {
  return any_of_names(one.tagName(), {"LocationCode", "LocationName", "City", "SubLocation",
                                      "ProvinceState", "CountryCode", "CountryName"});
}

// Names of other makers are taken too: "Xmp.some.GpsLatitude".
bool places(const Exiv2::Xmpdatum& one) {
  std::string name = one.tagName();
  std::transform(name.begin(), name.end(), name.begin(),
                 [](unsigned char sign) { return static_cast<char>(std::tolower(sign)); });
  if (any_of_names(name, {"gpstimestamp", "gpsversionid"})) return false;
  if (any_of_names(name, {"city", "state", "country", "countrycode"})) return true;
  for (const char* part : {"gps", "latitude", "longitude", "location", "geotag"})
    if (name.find(part) != std::string::npos) return true;
  return false;
}

template <class Data, class Which>
void erase(Data& data, const Which& which) {
  for (auto one = data.begin(); one != data.end();)
    one = which(*one) ? data.erase(one) : std::next(one);
}
}  // namespace

std::unique_ptr<Exiv2::Image> opened(std::span<const std::uint8_t> bytes, const FileParts& parts) {
  make_ready();
  std::size_t text_bytes = 0;
  if (parts.format == Format::Png)
    for (const FilePart& part : parts.parts)
      if (any_of_names(part.name, {"zTXt", "iTXt", "tEXt", "iCCP"})) text_bytes += part.size;
  if (text_bytes > most_png_text_bytes) return nullptr;
  try {
    std::unique_ptr<Exiv2::Image> image(
        Exiv2::ImageFactory::open(bytes.data(), static_cast<long>(bytes.size())).release());
    image->readMetadata();
    return image;
  } catch (const std::exception&) {
    return nullptr;
  }
}

bool names_place(Exiv2::Image& image, bool take_out) {
  const auto place = [](const auto& one) { return places(one); };
  const bool found = std::any_of(image.exifData().begin(), image.exifData().end(), place) ||
                     std::any_of(image.iptcData().begin(), image.iptcData().end(), place) ||
                     std::any_of(image.xmpData().begin(), image.xmpData().end(), place);
  if (take_out) {
    erase(image.exifData(), [](const auto& one) { return one.groupName() == "GPSInfo"; });
    erase(image.iptcData(), place);
    erase(image.xmpData(), place);
  }
  return found;
}

Facts facts_of(std::span<const std::uint8_t> bytes, const FileParts& parts) {
  Facts out;
  try {
    const auto image = opened(bytes, parts);
    if (!image) return out;
    const auto turned = image->exifData().findKey(Exiv2::ExifKey("Exif.Image.Orientation"));
    if (turned != image->exifData().end() && turned->count() > 0) {
      const long way = turned->toLong();
      if (way >= 1 && way <= 8) out.orientation = static_cast<int>(way);
    }
    out.taken = taken_by(*image);
    out.has_location = names_place(*image, false);
  } catch (const std::exception&) {
    return out;
  }
  return out;
}

}  // namespace jambline::picture
