#include "cure_screens.h"

#include "acts.h"
#include "item.h"
#include "rules.h"
#include "screens/bond_view_model.h"
#include "screens/cure_view_model.h"
#include "screens/product_view_model.h"

namespace jambline::walk {

namespace {
using trade::CureMilestone;

std::optional<ProductId> named(Shop& shop, const std::string& name) {
  for (const auto& one : shop_of(shop).air.products)
    if (one.said.product_name == name) return one.product;
  return std::nullopt;
}

// The car of the demo shop that has glass, or that was sprayed last; else the one on the tape.
bool put_on(Shop& shop, bool glass) {
  QString chosen;
  for (const auto& row : *shop.program().session().snapshot().floor) {
    const bool sprayed = row.next_stage == job::Stage::Spray;
    if (glass ? !row.glass.empty() : sprayed) chosen = QString::fromStdString(row.job.hex());
  }
  const bool demo = shop_of(shop).air.products.size() > 4;
  return !demo || chosen.isEmpty() || shop.put_on_tape(chosen);
}

// Long names and all milestones on a car where nobody sprayed; a bare shop stays as it is.
bool spray(Shop& shop) {
  const auto boss = manager_of(shop);
  const auto car = shop.program().engine().snapshot()->car;
  const std::string clear = "scratch-resistant clear with the slow hardener for large vehicles";
  const std::string glass = "one-part windshield urethane, long nozzle, warm from the oven";
  const bool demo = named(shop, "Yarrow clear 12").has_value();
  if (demo || !boss || !car || car->stages.empty() || !car->air.bonds.empty()) return true;
  bool good = true;
  if (!named(shop, clear)) {
    job::Product said;
    said.product_name = clear;
    said.kind = job::ProductKind::Clear;
    said.activated = true;
    for (std::size_t i = 0; i <= static_cast<std::size_t>(CureMilestone::Full); ++i)
      said.steps.push_back({static_cast<CureMilestone>(i),
                            {{15, 600.0 + 300 * static_cast<double>(i)},
                             {60, 20.0 + 10 * static_cast<double>(i)},
                             {80, 15.0 + 5 * static_cast<double>(i)}}});
    good = act(shop, acts::SetProduct{{}, said}, *boss);
    job::Product urethane;
    urethane.product_name = glass;
    urethane.kind = job::ProductKind::GlassUrethane;
    urethane.cure = trade::CureKind::MoistureCure;
    urethane.steps = {{CureMilestone::HandlingStrength, {{5, 90}}}};
    urethane.drive_away = {{"two front airbags and curtain airbags, belts fastened, 48 km/h crash",
                            {{5, 30, 720}, {5, 50, 480}, {15, 30, 480}, {23, 50, 90}}}};
    good = act(shop, acts::SetProduct{{}, urethane}, *boss) && good;
  }
  const PersonId mine = shop.program().session().person();
  good = act(shop, acts::MixProduct{car->job, *named(shop, clear), "88-12"}, mine) && good;
  acts::SayCoats coats{
      car->job, shop.program().engine().snapshot()->car->air.mixes.back().mix, {}, 2, {8}, "1.3 mm",
      true};
  for (const auto& panel : car->panels) coats.panels.push_back(panel.plan.panel);
  good = act(shop, coats, mine) && good;
  good = act(shop, acts::ReadPanelTemperature{car->job, job::PanelGroup::Roof, 58}, mine) && good;
  good = act(shop, acts::ReadPanelTemperature{car->job, job::PanelGroup::Sides, 12}, mine) && good;
  return act(shop,
             acts::SayBonded{car->job,
                             *named(shop, glass),
                             "windshield with camera bracket",
                             "two front airbags and curtain airbags, belts fastened, 48 km/h crash",
                             {}},
             mine) &&
         good;
}

bool cure(Shop& shop, bool glass) {
  if (!put_on(shop, glass) || !spray(shop) || !place(shop, "Floor", "Cure")) return false;
  for (int i = 0; i < 5; ++i) settle(shop.window());
  return true;
}

bool temperature(Shop& shop) {
  if (!cure(shop, false)) return false;
  if (!shop.program().cure().readable()) return true;
  if (!press(shop, "cureMain")) return false;
  shop.program().cure().logTemperature(999, false);
  settle(shop.window());
  return true;
}

bool sum(Shop& shop, bool glass) {
  if (!cure(shop, glass)) return false;
  auto& shown = shop.program().cure();
  auto* rows = glass ? shown.bonds() : shown.clocks();
  if (rows->rowCount() == 0) return true;
  return press(shop, glass ? "bondCard" : "cureSurface") || true;
}

bool bond(Shop& shop, bool typed) {
  if (!cure(shop, true)) return false;
  if (!press(shop, "cureBond")) return false;
  if (!typed) return true;
  auto& form = shop.program().bond();
  form.sayPart(QStringLiteral("windshield"));
  if (form.productCount() > 0)
    form.chooseProduct(form.products()
                           ->data(form.products()->index(form.productCount() - 1, 0),
                                  form.products()->roleNames().key("key"))
                           .toString());
  form.sayTime(QStringLiteral("23:59"));
  settle(shop.window());
  return true;
}

// A product's page, one of its milestones or of its tables; of a shop without products the new one.
bool products(Shop& shop, const char* name, const char* milestone, bool wrong) {
  const auto boss = manager_of(shop);
  if (!boss) return place(shop, "Floor", "None");
  if (shop.program().session().job()) spray(shop);
  shop.program().session().choosePerson(QString::fromStdString(boss->hex()));
  if (!place(shop, "Floor", "None") || !press(shop, "personTile") || !press(shop, "theShop") ||
      !press(shop, "shopProducts"))
    return false;
  auto& page = shop.program().products();
  if (!name) return true;
  QString key;
  for (const auto& one : shop_of(shop).air.products)
    if (word_of(one.said.kind) == name) key = QString::fromStdString(one.product.hex());
  page.open(key);
  if (milestone) page.openMilestone(QLatin1String(milestone));
  if (!milestone && page.glass()) page.openTable(QStringLiteral("0"));
  if (wrong) {
    page.sayRow(QStringLiteral("0"), 0, QStringLiteral("700"));
    page.back();
  }
  settle(shop.window());
  return true;
}
}  // namespace

std::vector<Screen> cure_screens() {
  return {
      {"cure", true, [](Shop& shop) { return cure(shop, false); }},
      {"cure-glass", true, [](Shop& shop) { return cure(shop, true); }},
      {"cure-temperature", true, temperature},
      {"cure-sum", true, [](Shop& shop) { return sum(shop, false); }},
      {"cure-glass-sum", true, [](Shop& shop) { return sum(shop, true); }},
      {"cure-bond", true, [](Shop& shop) { return bond(shop, false); }},
      {"cure-bond-typed", true, [](Shop& shop) { return bond(shop, true); }},
      {"cure-air", true,
       [](Shop& shop) { return cure(shop, true) && (press(shop, "logAir") || true); }},
      {"car-glass", true,
       [](Shop& shop) { return put_on(shop, true) && place(shop, "Floor", "Car"); }},
      {"floor-glass", true,
       [](Shop& shop) { return put_on(shop, true) && place(shop, "Floor", "None"); }},
      {"products", true, [](Shop& shop) { return products(shop, nullptr, nullptr, false); }},
      {"product", true, [](Shop& shop) { return products(shop, "clear", nullptr, false); }},
      {"product-milestone", true,
       [](Shop& shop) { return products(shop, "clear", "sand from", true); }},
      {"product-table", true,
       [](Shop& shop) { return products(shop, "glass urethane", nullptr, true); }},
  };
}

}  // namespace jambline::walk
