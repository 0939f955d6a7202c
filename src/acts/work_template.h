// acts/work_template.h: the usual jobs, so that a usual car is opened with one tap: which panels
// are painted and which operations with how many minutes come of it.
//
// Source:  common practice, no source; a starting point that the shop changes on the form.
// Units:   minutes of one person.
// Threads: pure.
#pragma once

#include <cstdint>
#include <vector>

#include "acts/commands.h"

namespace jambline::acts {

enum class WorkTemplate : std::uint8_t {
  BumperAndFender,
  OneSide,
  WholeFront,
  SinglePanel,
  OwnChoice
};

// The panels that body has; OwnChoice gives none. SinglePanel is the left fender.
std::vector<job::PanelPlan> panels_of(WorkTemplate work, job::BodyShape body);
// A panel as it usually is: substrate and on or off the car by the pattern, gloss, full.
job::PanelPlan usual_plan(job::Panel panel, job::BodyShape body);
// Empty without panels.
std::vector<PlannedOperation> operations_of(const std::vector<job::PanelPlan>& panels);

}  // namespace jambline::acts

template <>
inline constexpr auto jambline::enum_words<jambline::acts::WorkTemplate> =
    std::to_array<std::string_view>({"bumper and fender", "one side", "whole front", "single panel",
                                     "own choice"});
