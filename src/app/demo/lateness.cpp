#include "app/demo/lateness.h"

#include <algorithm>
#include <iterator>

#include "app/demo/invented.h"
#include "base/spans.h"

namespace jambline::demo {

namespace {
constexpr double part_late = 0.125;
constexpr std::int64_t tap_after_ms = 4 * minute_ms;

Step said(std::int64_t at_ms, PersonId by, job::WaitReason reason, bool waits) {
  Step out{at_ms, by, {}};
  out.air = [=](const folds::CarView& car, const folds::ShopView&, const Moment&) {
    return Commands{acts::SayWait{car.job, reason, waits, {}}};
  };
  return out;
}
}  // namespace

std::optional<Lateness> lateness_of(SeededRandom random) {
  // A part is what most cars wait for, then somebody's word.
  constexpr job::WaitReason reasons[] = {job::WaitReason::Part,     job::WaitReason::Part,
                                         job::WaitReason::Part,     job::WaitReason::Approval,
                                         job::WaitReason::Approval, job::WaitReason::Sublet,
                                         job::WaitReason::Cure,     job::WaitReason::Booth};
  if (!chance(random, part_late)) return std::nullopt;
  const std::int64_t days = between(random, 4, 5);
  return Lateness{days * day_ms, reasons[between(random, 0, std::ssize(reasons) - 1)]};
}

void add_wait(Visit& visit, job::WaitReason reason, const Calendar& calendar, int came_workday,
              PersonId by) {
  const auto first_from = [&](int workday) {
    return std::ranges::find_if(visit.steps, [&](const Step& step) {
      return step.at_ms >= calendar.morning_ms(came_workday + workday);
    });
  };
  const auto second_day = first_from(1);
  const auto third_day = first_from(2);
  if (second_day == visit.steps.begin() || third_day == visit.steps.end()) return;
  const Step begins = said((second_day - 1)->at_ms + tap_after_ms, by, reason, true);
  const Step ends = said(third_day->at_ms - tap_after_ms, by, reason, false);
  const auto place = third_day - visit.steps.begin();
  visit.steps.insert(second_day, begins);
  visit.steps.insert(visit.steps.begin() + place + 1, ends);
}

}  // namespace jambline::demo
