#include "hand_over_screens.h"

#include "acts.h"
#include "item.h"
#include "rules.h"
#include "screens/check_in_view_model.h"
#include "screens/hand_over_view_model.h"
#include "screens/walk_around_view_model.h"

namespace jambline::walk {

namespace {
// A car that is all but gone, where there is one; else the one on the tape.
bool nearly_gone(Shop& shop) {
  QString chosen;
  for (const auto& row : *shop.program().session().snapshot().floor)
    if (row.next_stage == job::Stage::WalkAround) chosen = QString::fromStdString(row.job.hex());
  return chosen.isEmpty() || shop.put_on_tape(chosen);
}

// One that is gone, where there is one.
bool gone(Shop& shop) {
  shop.program().engine().want_record();
  shop.program().engine().drain();
  settle(shop.window());
  const auto record = shop.program().session().snapshot().record;
  if (!record) return false;
  for (const auto& row : *record)
    if (row.delivered_ms) return shop.put_on_tape(QString::fromStdString(row.job.hex()));
  return true;
}

bool check_in(Shop& shop) {
  auto* screen = model<screens::CheckInViewModel>(shop, "checkIn");
  if (!screen || !place(shop, "Floor", "CheckIn")) return false;
  if (screen->odometer().isEmpty()) screen->setOdometer(QStringLiteral("1248210"));
  if (screen->keys() < 0) screen->sayKeys(2);
  screen->setDamage(QStringLiteral("dent in the right rocker, chip at the fuel door"));
  settle(shop.window());
  return true;
}

bool walk_around(Shop& shop) {
  auto* walk = model<screens::WalkAroundViewModel>(shop, "walkAround");
  if (!walk || !nearly_gone(shop) || !place(shop, "Floor", "WalkAround")) return false;
  settle_until(shop, [&] { return walk->ready(); });
  settle(shop.window());
  return walk->ready();
}

bool signature(Shop& shop) {
  if (!walk_around(shop)) return false;
  QQuickItem* sheet = find(*shop.window().contentItem(),
                           [](QQuickItem& item) { return is_kind(item, "WalkAround"); });
  if (!sheet) return false;
  for (QQuickItem* child : sheet->childItems())
    if (is_kind(*child, "SignatureSheet")) QMetaObject::invokeMethod(child, "show");
  settle(shop.window());
  return true;
}

bool hand_over(Shop& shop) {
  auto* note = model<screens::HandOverViewModel>(shop, "handOver");
  if (!note || !gone(shop) || !place(shop, "Floor", "HandOver")) return false;
  note->ask();
  settle_until(shop, [&] { return note->lines()->rowCount() != 0; });
  settle(shop.window());
  return note->lines()->rowCount() > 0;
}

bool comeback(Shop& shop) {
  return gone(shop) && place(shop, "Floor", "Comeback");
}
}  // namespace

std::vector<Screen> hand_over_screens() {
  return {
      {"check-in", true, check_in},   {"walk-around", true, walk_around},
      {"signature", true, signature}, {"hand-over", true, hand_over},
      {"comeback", true, comeback},
  };
}

}  // namespace jambline::walk
