// folds/exposure_of_shift.h: samples of a person put together to shifts, and what the sum of a
// shift is asked from: its samples against the limits that hold.
//
// Shift:  a sample belongs to the shift before it when it begins less than 8 h after that one's end
//         and ends within 24 h of its beginning, over midnight too; else a shift begins with it.
// Limits: those that are not retired and have the substance and the unit of a sample; nothing is
//         converted. Of two that name the same authority, substance and kind the lower holds. A
//         substance with limits in two units is asked about under two names.
// Worn:   each respirator that was worn while a substance was sampled, with each limit of it. What
//         scheme a limit's factors belong to is the limit's own; none: no factor is applied.
// Pure.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "folds/air_view.h"

namespace jambline::folds {

struct Shift {
  PersonId person;
  std::int64_t from_ms{};
  std::int64_t to_ms{};
  std::vector<SampleView> samples;  // by their beginning
};

// Of everybody, the newest first.
std::vector<Shift> shifts_of(const AirView& air);

// A respirator and a limit: what may be asked of trade::maximum_use, or that nothing may.
struct UseOfLimit {
  RespiratorId respirator;
  LimitId limit;
  std::optional<trade::MaximumUse> asked;  // none: no factors go with that limit
};
UseOfLimit use_of(const RespiratorView& respirator, const LimitView& limit);

struct ShiftExposure {
  trade::Exposure asked;
  std::vector<LimitView> limits;     // in the order of asked.limits
  std::vector<SampleView> left_out;  // no limit that holds has their substance and unit
  std::vector<UseOfLimit> worn;      // by limit, then by respirator
};

ShiftExposure exposure_of(const Shift& shift, const AirView& air);

}  // namespace jambline::folds
