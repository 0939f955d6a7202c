#include "gun_screens.h"

#include "acts.h"
#include "item.h"
#include "rules.h"
#include "screens/before_gun_view_model.h"
#include "screens/sprayed_view_model.h"

namespace jambline::walk {

namespace {
using job::GunItem;

QString key_of(GunItem item) {
  const auto word = word_of(item);
  return QString::fromUtf8(word.data(), static_cast<qsizetype>(word.size()));
}

// What a shop in use has: a respirator, two products, and on the car a mix with coats and one
// without. A shop with nothing in it stays as it is.
bool equip(Shop& shop) {
  const auto boss = manager_of(shop);
  if (!boss || shop_of(shop).booths.empty()) return true;
  bool good = true;
  if (shop_of(shop).air.respirators.empty())
    good = act(shop,
               acts::SetRespirator{
                   {},
                   {"air hood on the long blue hose, number 14", job::RespiratorKind::SuppliedHood,
                    trade::FactorScheme::Us, 25, "29 CFR 1910.134", 2006, "", false}},
               *boss);
  const auto product = [&](const char* name, job::ProductKind kind, bool activated) {
    for (const auto& one : shop_of(shop).air.products)
      if (one.said.product_name == name) return one.product;
    job::Product said;
    said.product_name = name;
    said.kind = kind;
    said.activated = activated;
    said.air_min_c = 18;
    said.air_max_c = 30;
    said.humidity_max_percent = 70;
    said.steps = {{trade::CureMilestone::PotLife, {{20, 60}, {30, 35}}}};
    good = act(shop, acts::SetProduct{{}, said}, *boss) && good;
    return shop_of(shop).air.products.back().product;
  };
  const ProductId base =
      product("waterborne base, deep pearlescent evergreen", job::ProductKind::Base, false);
  const ProductId clear = product("hard clear with slow hardener", job::ProductKind::Clear, true);
  const auto car = shop.program().engine().snapshot()->car;
  if (!car || car->panels.empty()) return good;
  const PersonId mine = shop.program().session().person();
  for (const auto& mix : car->air.mixes)
    if (mix.product == clear) return good;
  if (!car->air.mixes.empty())
    return act(shop, acts::MixProduct{car->job, clear, "88-12"}, mine) && good;
  good = act(shop, acts::MixProduct{car->job, base, "PEARL-4471-B 0926", true}, mine) && good;
  const MixId mix = shop.program().engine().snapshot()->car->air.mixes.back().mix;
  good = act(shop,
             acts::SayCoats{car->job,
                            mix,
                            {car->panels.front().plan.panel},
                            3,
                            {8, 8},
                            "gravity gun, 1.3 mm, 2 bar"},
             mine) &&
         good;
  good = act(shop, acts::MixProduct{car->job, clear, "88-12"}, mine) && good;
  return act(shop, acts::ReadClimate{car->job, {}, 22, 19, 58}, mine) && good;
}

bool before_gun(Shop& shop) {
  if (!equip(shop)) return false;
  auto& gun = shop.program().before_gun();
  gun.open({});
  if (gun.boothCount() > 0 && gun.boothWords().isEmpty())
    gun.chooseBooth(QString::fromStdString(shop_of(shop).booths.front().booth.hex()));
  return place(shop, "Floor", "BeforeGun");
}

bool stopped(Shop& shop) {
  if (!before_gun(shop)) return false;
  auto& gun = shop.program().before_gun();
  for (const GunItem item : {GunItem::SealOrFlow, GunItem::GlovesSuitEyes}) gun.press(key_of(item));
  gun.openItem(key_of(GunItem::ExhaustFreshAir));
  gun.choose(1, {});
  gun.openItem(key_of(GunItem::TrainedAndGun));
  gun.choose(2, QStringLiteral("the sheet is at the other shop"));
  settle(shop.window());
  QQuickItem& sheet = scope_of(shop.window());
  if (sheet.property("opened").toBool()) QMetaObject::invokeMethod(&sheet, "close");
  settle(shop.window());
  return true;
}

bool sprayed(Shop& shop) {
  return equip(shop) && place(shop, "Floor", "Sprayed");
}

bool air(Shop& shop) {
  if (!sprayed(shop) || !press(shop, "sprayedAir")) return false;
  auto* typed = shop.program().sprayed().climate();
  typed->type(72);
  typed->type(66);
  typed->type(81);
  settle(shop.window());
  return true;
}
}  // namespace

std::vector<Screen> gun_screens() {
  return {
      {"before-gun", true, before_gun},
      {"before-gun-stop", true, stopped},
      {"before-gun-must", true,
       [](Shop& shop) {
         if (!before_gun(shop)) return false;
         shop.program().before_gun().openItem(key_of(GunItem::TrainedAndGun));
         settle(shop.window());
         return true;
       }},
      {"before-gun-product", true,
       [](Shop& shop) { return before_gun(shop) && press(shop, "gunProduct"); }},
      {"sprayed", true, sprayed},
      {"sprayed-mix", true,
       [](Shop& shop) {
         if (!sprayed(shop)) return false;
         if (!press(shop, "sprayedMix") && !press(shop, "sprayedMain")) return false;
         press(shop, "mixProduct0");
         return true;
       }},
      {"sprayed-coats", true,
       [](Shop& shop) {
         return sprayed(shop) && (press(shop, "mixCoats") || press(shop, "sprayedMain"));
       }},
      {"sprayed-air", true, air},
      {"sprayed-bake", true,
       [](Shop& shop) {
         return sprayed(shop) && press(shop, "sprayedBake") && press(shop, "bakeLimit");
       }},
  };
}

}  // namespace jambline::walk
