#include "retention_screens.h"

#include "acts.h"
#include "rules.h"
#include "screens/retention_view_model.h"

namespace jambline::walk {

namespace {
bool anybody_left(Shop& shop) {
  for (const auto& person : shop_of(shop).people)
    if (person.left) return true;
  return false;
}

// Who never did anything here, and who was sampled, both gone; nobody where no manager is.
bool somebody_leaves(Shop& shop) {
  const auto manager = manager_of(shop);
  if (!manager) return true;
  shop.program().session().choosePerson(QString::fromStdString(manager->hex()));
  if (anybody_left(shop)) return true;
  for (const bool sampled : {false, true}) {
    if (!act(shop, acts::AddPerson{sampled ? "Odile" : "Bertram", job::Role::Painter}, *manager))
      return false;
    const PersonId person = shop_of(shop).people.back().person;
    const std::int64_t now_ms = shop.program().session().now().wall_ms;
    if (sampled &&
        !act(shop,
             acts::LogSample{person, "HDI", 0.001, "ppm", now_ms - 7'200'000, now_ms - 3'600'000},
             *manager))
      return false;
    if (!act(shop, acts::LetPersonGo{person}, *manager)) return false;
  }
  return act(shop, acts::SetRetention{job::RecordClass::TimeCards, 1}, *manager) &&
         act(shop, acts::SetRetention{job::RecordClass::CarJobs, 7}, *manager);
}

// By the row in People, which is there as soon as anybody is.
bool to_page(Shop& shop) {
  if (shop_of(shop).people.empty()) return place(shop, "Record", "KeepAndForget");
  return place(shop, "Record", "None") && press(shop, "personTile") && press(shop, "keepAndForget");
}

screens::RetentionViewModel* page(Shop& shop) {
  auto* keep = model<screens::RetentionViewModel>(shop, "retention");
  if (!keep || !somebody_leaves(shop) || !to_page(shop)) return nullptr;
  settle_until(shop, [&] { return keep->loaded(); });
  settle(shop.window());
  return keep->loaded() ? keep : nullptr;
}

bool years(Shop& shop) {
  auto* keep = page(shop);
  if (!keep || !press(shop, "retention1")) return false;
  if (keep->mayKeep()) keep->keep(QStringLiteral("400"));
  settle(shop.window());
  return true;
}

// The leaver who was sampled, asked once more; the page alone where nobody left.
bool forget(Shop& shop) {
  if (!page(shop)) return false;
  if (!anybody_left(shop)) return true;
  auto* models = shop.window().property("models").value<QObject*>();
  auto* of_shop = models ? models->property("shop").value<QObject*>() : nullptr;
  if (!of_shop || !press(shop, "forget")) return false;
  QMetaObject::invokeMethod(
      of_shop, "open",
      Q_ARG(QString, QString::fromStdString(shop_of(shop).people.back().person.hex())));
  settle(shop.window());
  if (!press(shop, "eraseName")) return false;
  for (int i = 0; i < 20; ++i) settle(shop.window());
  return true;
}
}  // namespace

std::vector<Screen> retention_screens() {
  return {
      {"keep-and-forget", false, [](Shop& shop) { return page(shop) != nullptr; }},
      {"keep-years", false, years},
      {"forget-somebody", false, forget},
  };
}

}  // namespace jambline::walk
