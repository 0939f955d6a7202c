#include "folds/exposure_of_shift.h"

#include <algorithm>
#include <map>
#include <set>

#include "base/spans.h"

namespace jambline::folds {

namespace {
constexpr std::int64_t rest_ms = 8 * hour_ms;
constexpr std::int64_t longest_shift_ms = 24 * hour_ms;

bool fits(const LimitView& limit, const SampleView& sample) {
  return !limit.said.retired && limit.said.substance == sample.substance &&
         limit.said.unit == sample.unit;
}
}  // namespace

std::vector<Shift> shifts_of(const AirView& air) {
  std::map<PersonId, std::vector<Shift>> by_person;
  for (const auto& sample : air.samples) {  // by their beginning
    auto& shifts = by_person[sample.person];
    Shift* last = shifts.empty() ? nullptr : &shifts.back();
    if (!last || sample.from_ms - last->to_ms >= rest_ms ||
        sample.to_ms - last->from_ms > longest_shift_ms) {
      shifts.push_back({sample.person, sample.from_ms, sample.to_ms, {sample}});
      continue;
    }
    last->to_ms = std::max(last->to_ms, sample.to_ms);
    last->samples.push_back(sample);
  }
  std::vector<Shift> out;
  for (auto& [person, shifts] : by_person)
    for (auto& shift : shifts) out.push_back(std::move(shift));
  std::stable_sort(out.begin(), out.end(),
                   [](const Shift& a, const Shift& b) { return a.from_ms > b.from_ms; });
  return out;
}

UseOfLimit use_of(const RespiratorView& respirator, const LimitView& limit) {
  UseOfLimit out{respirator.respirator, limit.limit, {}};
  if (!limit.said.scheme) return out;
  trade::MaximumUse use;
  use.assigned_factor = respirator.said.assigned_factor;
  use.factor_scheme = respirator.said.scheme;
  use.limit = limit.said.value;
  use.unit = limit.said.unit;
  use.authority = limit.said.authority;
  use.year = limit.said.year;
  use.limit_scheme = *limit.said.scheme;
  use.dangerous = limit.said.dangerous;
  out.asked = use;
  return out;
}

ShiftExposure exposure_of(const Shift& shift, const AirView& air) {
  ShiftExposure out;
  for (const auto& limit : air.limits) {
    if (std::none_of(shift.samples.begin(), shift.samples.end(),
                     [&](const auto& sample) { return fits(limit, sample); }))
      continue;
    const auto twin = std::find_if(out.limits.begin(), out.limits.end(), [&](const auto& known) {
      return known.said.substance == limit.said.substance && known.said.unit == limit.said.unit &&
             known.said.kind == limit.said.kind && known.said.authority == limit.said.authority;
    });
    if (twin == out.limits.end())
      out.limits.push_back(limit);
    else if (limit.said.value < twin->said.value)
      *twin = limit;
  }
  std::map<std::string, std::set<std::string>> units;
  for (const auto& limit : out.limits) units[limit.said.substance].insert(limit.said.unit);
  const auto called = [&](const std::string& substance, const std::string& unit) {
    return units[substance].size() > 1 ? substance + " (" + unit + ')' : substance;
  };
  for (const auto& sample : shift.samples) {
    if (std::none_of(out.limits.begin(), out.limits.end(),
                     [&](const auto& limit) { return fits(limit, sample); })) {
      out.left_out.push_back(sample);
      continue;
    }
    const auto hours = [&](std::int64_t at_ms) {
      return static_cast<double>(at_ms - shift.from_ms) / static_cast<double>(hour_ms);
    };
    out.asked.samples.push_back({called(sample.substance, sample.unit), sample.value,
                                 hours(sample.from_ms), hours(sample.to_ms)});
  }
  for (const auto& limit : out.limits) {
    const auto& said = limit.said;
    out.asked.limits.push_back({called(said.substance, said.unit), said.kind, said.value, said.unit,
                                said.authority, said.year});
    std::set<RespiratorId> worn;
    for (const auto& sample : shift.samples)
      if (sample.respirator && fits(limit, sample)) worn.insert(*sample.respirator);
    for (const auto& respirator : worn)
      if (const auto* known = air.find(respirator)) out.worn.push_back(use_of(*known, limit));
  }
  return out;
}

}  // namespace jambline::folds
