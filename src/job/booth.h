// job/booth.h: a place where cars are sprayed, and what is done to it that may change the dirt.
//
// Source: kinds by how the air moves and events that painters log; common practice, no source.
// Words:  stand in entries for ever; new ones are added at the end only.
#pragma once

#include <cstdint>

#include "base/describe.h"

namespace jambline::job {

enum class BoothKind : std::uint8_t { Downdraft, SemiDowndraft, SideDraft, CrossDraft, PrepDeck };

enum class BoothEvent : std::uint8_t {
  FiltersChanged,
  NewHose,
  NewSuits,
  AirlineFilterChanged,
  Cleaned,
};

}  // namespace jambline::job

template <>
inline constexpr auto jambline::enum_words<jambline::job::BoothKind> =
    std::to_array<std::string_view>({"downdraft", "semi-downdraft", "side draft", "cross draft",
                                     "prep deck"});
template <>
inline constexpr auto jambline::enum_words<jambline::job::BoothEvent> =
    std::to_array<std::string_view>({"filters changed", "new hose", "new suits",
                                     "airline filter changed", "cleaned"});
