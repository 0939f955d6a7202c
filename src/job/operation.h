// job/operation.h: what kind of work an operation is, so that hours of different kinds are never
// added up unseen, and what was said to a supplement.
//
// Kinds: first-time work; a supplement is work that nobody saw when the job was written; redo is
//        work done again in the same visit; comeback is work of a car that came back.
// Words: stand in entries for ever; new ones are added at the end only.
#pragma once

#include <cstdint>

#include "base/describe.h"

namespace jambline::job {

enum class WorkKind : std::uint8_t { FirstTime, Supplement, Redo, Comeback };
enum class Approval : std::uint8_t { NotNeeded, Asked, Given, Refused };

}  // namespace jambline::job

template <>
inline constexpr auto jambline::enum_words<jambline::job::WorkKind> =
    std::to_array<std::string_view>({"first time", "supplement", "redo", "comeback"});
template <>
inline constexpr auto jambline::enum_words<jambline::job::Approval> =
    std::to_array<std::string_view>({"not needed", "asked", "given", "refused"});
