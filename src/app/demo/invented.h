// app/demo/invented.h: names and numbers of the demo shop, all made up by us.
//
// Numbers: a VIN begins with 0, which stands for no country (from memory; ISO 3780 gives out A to Z
//          and 1 to 9), and its check sign is right. Plates and color codes follow no authority's
//          and no maker's pattern.
#pragma once

#include <array>
#include <string>
#include <string_view>

#include "app/demo/times.h"
#include "base/random.h"
#include "job/car.h"
#include "job/person.h"

namespace jambline::demo {

inline constexpr std::string_view shop_name = "Tansy Yard Refinish";
inline constexpr std::string_view shop_zone = "America/New_York";

struct InventedPerson {
  Who who;
  std::string_view name;
  job::Role role;
};
inline constexpr std::array<InventedPerson, 6> people{{
    {Who::Rosa, "Rosa", job::Role::Manager},
    {Who::Ivo, "Ivo", job::Role::Painter},
    {Who::Jo, "Jo", job::Role::BodyTechnician},
    {Who::Mara, "Mara", job::Role::GlassTech},
    {Who::Ana, "Ana", job::Role::Detailer},
    {Who::Ben, "Ben", job::Role::Helper},
}};
inline constexpr std::array<std::string_view, 4> rack_names{"rack 1", "rack 2", "rack 3",
                                                            "bumper rail"};

// The stream of one subject of a seed.
SeededRandom stream(std::uint64_t seed, std::string_view subject);

std::string plate(SeededRandom& random);
std::string vin(SeededRandom& random);
job::Color color(SeededRandom& random);
job::BodyShape body(SeededRandom& random);
job::Drive drive(SeededRandom& random);
int between(SeededRandom& random, int low, int high);  // both can come
bool chance(SeededRandom& random, double part);

}  // namespace jambline::demo
