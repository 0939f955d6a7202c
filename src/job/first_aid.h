// job/first_aid.h: what first aid was opened for.
//
// Words: stand in entries for ever; new ones are added at the end only. What is done in each case
//        is said by the screens' fixed texts.
#pragma once

#include "base/describe.h"

namespace jambline::job {

enum class FirstAid : std::uint8_t { Breathing, Eye, Skin, Injection, FanStopped };

}  // namespace jambline::job

template <>
inline constexpr auto jambline::enum_words<jambline::job::FirstAid> =
    std::to_array<std::string_view>({"hard to breathe", "in the eye", "on the skin",
                                     "injected by the gun", "fan stopped"});
