#include "hours_screens.h"

#include "acts.h"
#include "item.h"
#include "rules.h"
#include "screens/car_hours_view_model.h"
#include "screens/hours_view_model.h"
#include "screens/wait_view_model.h"

namespace jambline::walk {

namespace {
void wait_for(Shop& shop, const screens::HoursViewModel& hours) {
  settle_until(shop, [&] { return hours.loaded(); });
  settle(shop.window());
}

// Who clocked something in the last seven days, on the day on which it was; nobody in an empty
// shop.
screens::HoursViewModel* day_with_hours(Shop& shop) {
  auto* hours = model<screens::HoursViewModel>(shop, "hours");
  if (!hours || !place(shop, "Record", "Hours")) return nullptr;
  wait_for(shop, *hours);
  hours->showWeek(false);
  hours->toNow();
  wait_for(shop, *hours);
  for (int back = 0; back < 7; ++back) {
    for (const auto& person : shop.program().session().shop().people) {
      hours->choosePerson(QString::fromStdString(person.person.hex()));
      if (hours->sheet().spans.size() > 1) return hours;
    }
    hours->turn(-1);
    wait_for(shop, *hours);
  }
  hours->toNow();
  wait_for(shop, *hours);
  return hours;
}

bool hours_week(Shop& shop) {
  auto* hours = day_with_hours(shop);
  if (!hours) return false;
  hours->showWeek(true);
  wait_for(shop, *hours);
  return true;
}

bool table(Shop& shop) {
  return day_with_hours(shop) && press(shop, "hoursTable");
}

bool car_hours(Shop& shop, bool amends) {
  auto* hours = model<screens::CarHoursViewModel>(shop, "carHours");
  if (!hours || !place(shop, "Floor", "CarHours")) return false;
  for (int row = 0; row < hours->operationCount() && hours->spanCount() == 0; ++row)
    hours->open(
        hours->operations()
            ->data(hours->operations()->index(row, 0), hours->operations()->roleNames().key("key"))
            .toString());
  settle(shop.window());
  if (!amends || hours->spanCount() == 0) return true;
  if (!press(shop, "carSpan0")) return false;
  hours->amend()->set_typed(QStringLiteral("2359"));
  hours->amend()->keep({});
  settle(shop.window());
  return true;
}

// A wait; the record and the time line have heard of it before the next look.
bool waits(Shop& shop) {
  auto* wait = model<screens::WaitViewModel>(shop, "wait");
  const auto& session = shop.program().session();
  if (!wait || !place(shop, "Floor", "Car")) return false;
  if (wait->waitCount() == 0) {
    if (!act(shop, acts::SayWait{*session.job(), job::WaitReason::Part}, session.person()))
      return false;
    for (int i = 0; i < 5; ++i) settle(shop.window());
  }
  wait->ask();
  wait->openWait(QStringLiteral("part"));
  settle(shop.window());
  return wait->waitCount() > 0;
}
}  // namespace

std::vector<Screen> hours_screens() {
  return {
      {"hours", true, [](Shop& shop) { return day_with_hours(shop) != nullptr; }},
      {"hours-week", true, hours_week},
      {"hours-table", true, table},
      {"car-hours", true, [](Shop& shop) { return car_hours(shop, false); }},
      {"amend-clock", true, [](Shop& shop) { return car_hours(shop, true); }},
      {"wait", true, waits},
  };
}

}  // namespace jambline::walk
