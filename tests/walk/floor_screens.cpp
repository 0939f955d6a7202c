#include "floor_screens.h"

#include "acts.h"
#include "rules.h"
#include "screens/typed_times.h"

namespace jambline::walk {

namespace {
// The page of a manager, with days closed and Saturday chosen; an empty shop has no page.
bool calendar(Shop& shop) {
  auto& session = shop.program().session();
  if (session.shop().people.empty()) return true;
  const PersonId manager = manager_of(shop).value_or(PersonId{});
  if (manager) session.choosePerson(QString::fromStdString(manager.hex()));
  if (manager && session.shop().calendar_heads.empty()) {
    acts::SetCalendar set{session.shop().calendar};
    const int today = screens::today_of(session.now().wall_ms, session.zone());
    set.calendar.week[5] = {7 * 60 + 30, 12 * 60};
    set.calendar.holidays = {today + 9, today + 46};
    if (!act(shop, set, manager)) return false;
  }
  if (!place(shop, "Floor", "None") || !press(shop, "personTile") || !press(shop, "theShop") ||
      !press(shop, "shopCalendar"))
    return false;
  return !manager || press(shop, "calendarDay5");
}

// A car without work has no forecast to open.
bool ready_sum(Shop& shop) {
  return place(shop, "Floor", "Car") && (press(shop, "readyRow") || true);
}
}  // namespace

std::vector<Screen> floor_screens() {
  return {{"calendar", false, calendar}, {"ready-sum", true, ready_sum}};
}

}  // namespace jambline::walk
