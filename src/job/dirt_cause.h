// job/dirt_cause.h: what a person says threw the dirt. The program only ever points to something.
//
// Source: after the usual table of signs and what to look at; common practice, no source.
// Words:  stand in entries for ever; new ones are added at the end only. Things, never people.
#pragma once

#include <cstdint>

#include "base/describe.h"

namespace jambline::job {

enum class DirtCause : std::uint8_t {
  Hose,
  Suit,
  GunOrCup,
  Masking,
  SeamsAndGaps,
  FellFromAbove,
  Floor,
  AirLine,
  Material,
  Static,
  PrepDust,
  TackOrWipe,
  BakeAir,
  InteriorFiber,
  Insect,
  Chance,
};

}  // namespace jambline::job

template <>
inline constexpr auto jambline::enum_words<jambline::job::DirtCause> =
    std::to_array<std::string_view>({"hose", "suit or sleeve", "gun or cup", "masking",
                                     "seams and gaps", "fell from above", "stirred-up floor",
                                     "air line", "material", "static", "prep dust",
                                     "tack cloth or wipe", "bake air", "interior fiber", "insect",
                                     "chance"});
