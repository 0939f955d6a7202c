#include "app/demo/invented.h"

#include <string>

#include "seal/digest.h"
#include "trade/vin.h"

namespace jambline::demo {

namespace {
struct InventedColor {
  std::string_view code, name, hex;
};
constexpr std::array<InventedColor, 12> colors{{
    {"TY 104", "chalk white", "#eceae4"},
    {"TY 118", "river pebble", "#8d928f"},
    {"TY 131", "wet slate", "#4a5057"},
    {"TY 140", "soot", "#1d1f21"},
    {"TY 202", "rowan red", "#9c2b2a"},
    {"TY 217", "brick dust", "#7d4436"},
    {"TY 305", "deep green", "#1f4a3a"},
    {"TY 322", "lichen", "#7e8a6a"},
    {"TY 409", "lake blue", "#2b557f"},
    {"TY 416", "night blue", "#1b2a44"},
    {"TY 503", "tansy yellow", "#d3a72c"},
    {"TY 611", "oyster, three coats", "#d9d3c7"},
}};
constexpr std::string_view plate_letters = "ABCDEFGHKLMNPRTVWXYZ";
constexpr std::string_view vin_signs = "ABCDEFGHJKLMNPRSTUVWXYZ0123456789";
constexpr std::string_view vin_years = "HJKLMNPRST";  // at place 10, with a letter at place 7
}  // namespace

SeededRandom stream(std::uint64_t seed, std::string_view subject) {
  seal::Sha256 digest;
  const Hash hash =
      digest.add("jambline demo 1").add(std::to_string(seed) + " ").add(subject).finish();
  std::uint64_t value = 0;
  for (int i = 0; i < 8; ++i) value = value << 8U | hash.bytes[static_cast<std::size_t>(i)];
  return SeededRandom(value);
}

int between(SeededRandom& random, int low, int high) {
  return low + static_cast<int>(random.below(static_cast<std::uint64_t>(high - low + 1)));
}

bool chance(SeededRandom& random, double part) {
  return random.unit() < part;
}

std::string plate(SeededRandom& random) {
  if (chance(random, 0.2)) return "stock " + std::to_string(between(random, 1000, 9999));
  std::string out(1, plate_letters[random.below(plate_letters.size())]);
  out += " " + std::to_string(between(random, 10, 99)) + "-" +
         std::to_string(between(random, 100, 999));
  return out;
}

std::string vin(SeededRandom& random) {
  std::string out = "0TY";
  for (int place = 4; place <= 8; ++place)
    out.push_back(place == 7 ? plate_letters[random.below(plate_letters.size())]
                             : vin_signs[random.below(vin_signs.size())]);
  out.push_back('0');
  out.push_back(vin_years[random.below(vin_years.size())]);
  out.push_back(plate_letters[random.below(plate_letters.size())]);
  for (int place = 12; place <= 17; ++place)
    out.push_back(static_cast<char>('0' + random.below(10)));
  out[8] = trade::check_vin(out).expected;
  return out;
}

job::Color color(SeededRandom& random) {
  const auto& one = colors[random.below(colors.size())];
  return {std::string(one.code), std::string(one.name), std::string(one.hex)};
}

job::BodyShape body(SeededRandom& random) {
  const double part = random.unit();
  if (part < 0.30) return job::BodyShape::FourDoorSedan;
  if (part < 0.65) return job::BodyShape::SuvWagon;
  if (part < 0.82) return job::BodyShape::CrewCabPickup;
  if (part < 0.94) return job::BodyShape::TwoDoorHatchback;
  return job::BodyShape::CargoVan;
}

job::Drive drive(SeededRandom& random) {
  const double part = random.unit();
  if (part < 0.72) return job::Drive::Combustion;
  if (part < 0.86) return job::Drive::Hybrid;
  if (part < 0.90) return job::Drive::PlugIn;
  return job::Drive::Electric;
}

}  // namespace jambline::demo
