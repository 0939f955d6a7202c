// job/person.h: what a person does in the shop and may do in the log.
#pragma once

#include <cstdint>

#include "base/describe.h"

namespace jambline::job {

enum class Role : std::uint8_t { Painter, BodyTechnician, GlassTech, Detailer, Helper, Manager };

}  // namespace jambline::job

template <>
inline constexpr auto jambline::enum_words<jambline::job::Role> = std::to_array<std::string_view>(
    {"painter", "body technician", "glass tech", "detailer", "helper", "manager"});
