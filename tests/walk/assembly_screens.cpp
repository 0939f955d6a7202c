#include "assembly_screens.h"

#include "acts.h"
#include "base/spans.h"
#include "item.h"
#include "rules.h"
#include "screens/assembly_view_model.h"
#include "screens/operations_view_model.h"
#include "screens/orders_view_model.h"
#include "screens/parts_view_model.h"

namespace jambline::walk {

namespace {
using job::Step;

QString key(const std::string& words) {
  return QString::fromStdString(words);
}

// A supplement that waits, parts that are late and wrong, work outside, a rule that was broken. A
// car without work stays as it is.
bool tell(Shop& shop) {
  const auto car = shop.program().engine().snapshot()->car;
  if (!car || car->stages.empty() || !car->visit.parts.empty()) return true;
  const JobId job = car->job;
  const PersonId mine = shop.program().session().person();
  const std::int64_t now_ms = shop.program().session().now().wall_ms;
  acts::PlannedOperation more{
      job::Stage::Teardown, "Straighten the bumper beam and its two brackets", 150,
      job::WorkKind::Supplement, "bumper beam bent behind the cover, both brackets torn"};
  more.approval = job::Approval::Asked;
  bool good = act(shop, acts::PlanOperation{job, more}, mine);
  good = act(shop,
             acts::PlanOperation{
                 job, {job::Stage::Spray, "", 60, job::WorkKind::Redo, "run along the lower edge"}},
             mine) &&
         good;
  const std::pair<const char*, job::OrderedPart> parts[] = {
      {"late",
       {"left headlamp with cornering light", job::PartState::Ordered, now_ms - day_ms / 4}},
      {"no day", {"fender liner, front half", job::PartState::Ordered, {}}},
      {"wrong", {"radar bracket", job::PartState::Wrong, {}}}};
  for (const auto& [why, part] : parts)
    good = act(shop, acts::SayPart{job, {}, part}, mine) && good;
  good = act(shop,
             acts::SaySublet{job,
                             {},
                             {job::SubletKind::Calibration, "a firm at the other end of the town",
                              job::SubletState::Out, now_ms + day_ms}},
             mine) &&
         good;
  for (const auto step : {Step::IgnitionOn, Step::LampsPolished}) {
    const auto steps = folds::steps_of_car(*car, shop_of(shop), shop.program().session().now());
    for (const auto& one : steps)
      if (one.step == step && !one.by_itself && !one.done)
        good =
            act(shop, acts::SayStep{job, step, true, job::RuleReason::CarmakerSays}, mine) && good;
  }
  return good;
}

bool at(Shop& shop, const char* work) {
  if (!tell(shop) || !place(shop, "Floor", work)) return false;
  for (int i = 0; i < 5; ++i) settle(shop.window());
  return true;
}

QString first(QAbstractItemModel* rows, int row = 0) {
  return rows->data(rows->index(row, 0), rows->roleNames().key("key")).toString();
}

bool operations(Shop& shop) {
  auto* shown = model<screens::OperationsViewModel>(shop, "operations");
  if (!shown || !at(shop, "Operations")) return false;
  for (const auto& one : shop.program().session().car()->operations)
    if (one.work == job::WorkKind::Supplement) shown->open(key(one.operation.hex()));
  settle(shop.window());
  return true;
}

bool more_work(Shop& shop) {
  auto* shown = model<screens::OperationsViewModel>(shop, "operations");
  if (!shown || !at(shop, "Operations") || !press(shop, "operationsMain")) return false;
  shown->setKind(1);
  shown->setHours(QStringLiteral("10000"));
  shown->chooseStage(QStringLiteral("prep"));
  shown->setWhy(shown->reasons().first());
  shown->keep();
  settle(shop.window());
  return true;
}

bool orders(Shop& shop, bool form) {
  auto* shown = model<screens::OrdersViewModel>(shop, "orders");
  if (!shown || !at(shop, "Car") || !press(shop, "carOrdersRow")) return false;
  if (!form) return true;
  if (!press(shop, "orderPart")) return false;
  shown->keepPart(QString(), QString());
  settle(shop.window());
  return true;
}

bool step(Shop& shop) {
  auto* shown = model<screens::AssemblyViewModel>(shop, "assembly");
  if (!shown || !at(shop, "Assembly")) return false;
  for (int row = 0; row < shown->count(); ++row) {
    const QString one = first(shown->steps(), row);
    shown->open(one);
    if (shown->stepMode() != screens::AssemblyViewModel::StepMode::Reason) continue;
    return press(shop, qPrintable(QStringLiteral("step ") + one));
  }
  shown->open(QString());
  return true;
}

bool rules(Shop& shop) {
  const auto boss = manager_of(shop);
  if (boss) shop.program().session().choosePerson(key(boss->hex()));
  return at(shop, "Assembly") && press(shop, "assemblyRules");
}

// Something that can be sent back, where there is a loose part.
bool send_back(Shop& shop) {
  auto* shown = model<screens::PartsViewModel>(shop, "parts");
  if (!shown || !at(shop, "Parts")) return false;
  const auto* car = shop.program().session().car();
  const PersonId mine = shop.program().session().person();
  const JobId job = car->job;
  if (car->car_release.state == folds::ReleaseState::None &&
      !act(shop, acts::OfferRelease{job, {}, job::Role::BodyTechnician, {}}, mine))
    return false;
  return press(shop, "sendBack") || true;  // two people disagree: it cannot be sent anywhere
}
}  // namespace

std::vector<Screen> assembly_screens() {
  return {
      {"operations", true, operations},
      {"operation-new", true, more_work},
      {"orders", true, [](Shop& shop) { return orders(shop, false); }},
      {"order-part", true, [](Shop& shop) { return orders(shop, true); }},
      {"assembly", true, [](Shop& shop) { return at(shop, "Assembly"); }},
      {"assembly-step", true, step},
      {"rules", true, rules},
      {"part-back", true, send_back},
      {"where", true,
       [](Shop& shop) {
         return place(shop, "Floor", "None") && (press(shop, "whereIsIt") || true);  // no part yet
       }},
  };
}

}  // namespace jambline::walk
