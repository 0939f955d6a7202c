#include <algorithm>
#include <map>

#include "acts/decisions.h"
#include "folds/cure_of_car.h"
#include "folds/gun_facts.h"

namespace jambline::acts {

namespace {
Error do_not_spray(const char* doing, job::GunItem item) {
  return {Code::NotAllowed, doing, std::string(word_of(item)), {{"class", "stop"}}};
}

// In the order of the list, each item once, and every stop and must with its answer.
Result<std::vector<job::GunCheck>> checks_of(const std::vector<folds::GunFact>& facts,
                                             const std::vector<job::GunCheck>& said,
                                             const char* doing) {
  std::map<job::GunItem, job::GunCheck> by_item;
  for (const auto& check : said)
    if (!by_item.emplace(check.item, check).second)
      return fail(Code::AlreadyDone, doing, std::string(word_of(check.item)));
  std::vector<job::GunCheck> out;
  for (const auto& fact : facts) {
    const auto kind = job::class_of(fact.item);
    const std::string subject(word_of(fact.item));
    const auto found = by_item.find(fact.item);
    job::GunCheck check{fact.item, job::CutAnswer::Yes, {}, {}};
    if (found != by_item.end())
      check = found->second;
    else if (fact.known == true && !job::is_of_now(fact.item))
      check.answer = job::CutAnswer::Yes;
    else if (kind == job::CheckClass::Should)
      continue;
    else if (kind == job::CheckClass::Stop && fact.known == false)
      return fail(do_not_spray(doing, fact.item));
    else
      return fail(Code::Missing, doing, subject);

    if (kind == job::CheckClass::Stop) {
      if (check.answer != job::CutAnswer::Yes || fact.known == false)
        return fail(do_not_spray(doing, fact.item));
      // Without a record of it nobody knows which respirator is worn.
      if (!job::is_of_now(fact.item) && !fact.known) return fail(Code::Missing, doing, subject);
      check.reason = {};
    } else if (kind == job::CheckClass::Must) {
      // What the records do not bear out is passed over by name, never ticked.
      const bool borne_out = job::is_of_now(fact.item) || fact.known == true;
      if (check.answer == job::CutAnswer::Yes && !borne_out)
        return fail(Error{Code::NotYet, doing, subject, {{"what", "record"}}});
      if (check.answer != job::CutAnswer::Yes && !check.reason)
        return fail(Error{Code::Missing, doing, "reason", {{"item", subject}}});
      if (check.answer == job::CutAnswer::Yes) check.reason = {};
    }
    out.push_back(std::move(check));
    if (found != by_item.end()) by_item.erase(found);
  }
  // What does not apply is not kept as answered.
  return out;
}
}  // namespace

Drafts decide_one(const Scene& scene, const StartSpray& command) {
  const char* const doing = "start spraying";
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, doing));
  const auto& shop = scene.world.shop;
  const PersonId& person = scene.context.person;
  if (!person) return fail(Code::Missing, doing, "person");
  const auto* booth = shop.find(command.booth);
  if (!booth) return fail(Code::Unknown, doing, "booth");
  if (!job::may_be_sprayed_in(booth->kind)) return fail(Code::NotAllowed, doing, booth->name);
  const auto* respirator = shop.air.find(command.respirator);
  if (!respirator) return fail(Code::Unknown, doing, "respirator");
  for (const auto& other : shop.booths)
    for (const auto& said :
         folds::booth_state(other, shop.air.find(other.booth), scene.context.now).up)
      if (said.by == person) return fail(Code::AlreadyRunning, doing, other.name);
  const auto facts = folds::gun_facts({shop, *car, command.booth, person, command.respirator,
                                       command.activated, scene.context.now});
  JAMBLINE_ASSIGN(auto checks, checks_of(facts, command.checks, doing));
  const SprayId spray = scene.context.random.make<SprayId>();
  return std::vector<Draft>{
      {command.job, entries::SprayStarted{spray, command.booth, command.respirator,
                                          command.activated, std::move(checks)}},
      {{},
       entries::BoothSaid{command.booth, job::BoothWord::SprayStarted, spray, command.job,
                          command.respirator}}};
}

Drafts decide_one(const Scene& scene, const ReportSprayedWithout& command) {
  const char* const doing = "report spraying without";
  JAMBLINE_TRY(scene.car(command.job, doing));
  if (!scene.world.shop.find(command.booth)) return fail(Code::Unknown, doing, "booth");
  std::vector<job::GunItem> items;
  for (const auto item : command.items) {
    if (job::class_of(item) != job::CheckClass::Stop)
      return fail(Code::OutOfRange, doing, std::string(word_of(item)));
    if (std::find(items.begin(), items.end(), item) == items.end()) items.push_back(item);
  }
  if (items.empty()) return fail(Code::Missing, doing, "what was missing");
  std::sort(items.begin(), items.end());
  // The booth has to clear like after any other spray, and only once its exhaust is on fresh air.
  std::vector<Draft> out{
      {command.job, entries::SprayedWithout{command.booth, items}},
      {{}, entries::BoothSaid{command.booth, job::BoothWord::GunDown, {}, command.job, {}}}};
  if (std::find(items.begin(), items.end(), job::GunItem::ExhaustFreshAir) != items.end())
    out.push_back({{}, entries::BoothSaid{command.booth, job::BoothWord::FanStopped, {}, {}, {}}});
  return out;
}

Drafts decide_one(const Scene& scene, const MixProduct& command) {
  const char* const doing = "log a mix";
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, doing));
  const auto* product = scene.world.shop.air.find(command.product);
  if (!product || product->said.retired) return fail(Code::Unknown, doing, "product");
  if (command.batch.size() > most_text_bytes)
    return fail(Error{Code::TooLarge, doing, "batch", {{"limit", "200"}}});
  JAMBLINE_TRY(not_to_come(command.mixed_ms, scene, doing));
  MixId id;
  std::vector<Hash> heads;
  if (command.changes) {
    const auto& mixes = car->air.mixes;
    const auto known = std::find_if(mixes.begin(), mixes.end(),
                                    [&](const auto& one) { return one.mix == *command.changes; });
    if (known == mixes.end()) return fail(Code::Unknown, doing, "mix");
    id = known->mix;
    heads = known->heads;
  } else {
    id = scene.context.random.make<MixId>();
  }
  return std::vector<Draft>{
      {command.job, entries::Mixed{id, command.product, command.batch, command.color_approved,
                                   command.mixed_ms, std::move(heads)}}};
}

Drafts decide_one(const Scene& scene, const SayCoats& command) {
  const char* const doing = "log coats";
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, doing));
  if (std::none_of(car->air.mixes.begin(), car->air.mixes.end(),
                   [&](const auto& one) { return one.mix == command.mix; }))
    return fail(Code::Unknown, doing, "mix");
  if (command.panels.empty()) return fail(Code::Missing, doing, "panels");
  for (const auto panel : command.panels) JAMBLINE_TRY(scene.panel(*car, panel, doing));
  JAMBLINE_TRY(in_range(command.coats, 1, 10, doing, "coats"));
  for (const double flash : command.flash_min)
    JAMBLINE_TRY(in_range(flash, 0, 600, doing, "flash"));
  if (command.gun.size() > most_text_bytes)
    return fail(Error{Code::TooLarge, doing, "gun", {{"limit", "200"}}});
  return std::vector<Draft>{
      {command.job, entries::Coated{command.mix, command.panels, command.coats, command.flash_min,
                                    command.gun, command.heavy_film}}};
}

Drafts decide_one(const Scene& scene, const ReadBakeLimit& command) {
  const char* const doing = "read the bake limit";
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, doing));
  JAMBLINE_TRY(in_range(command.most_c, 20, 150, doing, "temperature"));
  JAMBLINE_TRY(in_range(command.most_min, 1, 600, doing, "minutes"));
  JAMBLINE_ASSIGN(std::string source, typed(command.source, doing, "source", most_text_bytes));
  return std::vector<Draft>{
      {command.job, entries::BakeLimitRead{
                        command.most_c, command.most_min, std::move(source),
                        car->air.bake_limit ? car->air.bake_limit->heads : std::vector<Hash>{}}}};
}

Drafts decide_one(const Scene& scene, const SayBake& command) {
  const char* const doing = command.on ? "start the bake" : "end the bake";
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, doing));
  const bool on = !car->air.bakes.empty() && car->air.bakes.back().on;
  if (on == command.on)
    return fail(command.on ? Code::AlreadyRunning : Code::NotRunning, doing, car->plate);
  if (command.on && car->drive != job::Drive::Combustion && !car->air.bake_limit)
    return fail(Error{Code::NotYet, doing, car->plate, {{"what", "bake limit"}}});
  return std::vector<Draft>{{command.job, entries::BakeSaid{command.on}}};
}

Drafts decide_one(const Scene& scene, const ReadPanelTemperature& command) {
  const char* const doing = "read a panel's temperature";
  JAMBLINE_TRY(scene.car(command.job, doing));
  JAMBLINE_TRY(in_range(command.surface_c, -20, 150, doing, "temperature"));
  return std::vector<Draft>{
      {command.job, entries::PanelTemperatureRead{command.group, command.surface_c}}};
}

Drafts decide_one(const Scene& scene, const CheckThumbnail& command) {
  JAMBLINE_ASSIGN(const auto* car, scene.car(command.job, "check with the thumbnail"));
  entries::ThumbnailChecked said{command.group, command.firm};
  const auto cures = folds::cure_of_car(*car, scene.world.shop, scene.context.now);
  if (const auto* film = folds::film_of_group(cures, command.group)) {
    said.product = film->product;
    said.sheet_percent = folds::touch_percent(*film);
  }
  return std::vector<Draft>{{command.job, said}};
}

Drafts decide_one(const Scene& scene, const SayBonded& command) {
  const char* const doing = "log what was bonded";
  JAMBLINE_TRY(scene.car(command.job, doing));
  const auto* product = scene.world.shop.air.find(command.product);
  if (!product || product->said.retired) return fail(Code::Unknown, doing, "product");
  const bool glass = product->said.kind == job::ProductKind::GlassUrethane;
  if (!glass && product->said.kind != job::ProductKind::PanelAdhesive)
    return fail(Code::NotAllowed, doing, product->said.product_name);
  JAMBLINE_ASSIGN(std::string what, typed(command.what, doing, "what", most_text_bytes));
  if (glass && std::none_of(product->said.drive_away.begin(), product->said.drive_away.end(),
                            [&](const auto& one) { return one.case_name == command.case_name; }))
    return fail(Code::Missing, doing, "airbag and belt case");
  JAMBLINE_TRY(not_to_come(command.set_ms, scene, doing));
  return std::vector<Draft>{{command.job, entries::Bonded{scene.context.random.make<BondId>(),
                                                          command.product,
                                                          std::move(what),
                                                          glass ? command.case_name : std::string(),
                                                          command.set_ms,
                                                          {}}}};
}

Drafts decide_one(const Scene& scene, const ReadClimate& command) {
  const char* const doing = "read the air";
  JAMBLINE_TRY(scene.car(command.job, doing));
  if (command.booth && !scene.world.shop.find(command.booth))
    return fail(Code::Unknown, doing, "booth");
  JAMBLINE_TRY(in_range(command.air_c, -45, 60, doing, "air"));
  JAMBLINE_TRY(in_range(command.surface_c, -45, 60, doing, "surface"));
  JAMBLINE_TRY(in_range(command.humidity_percent, 0.1, 100, doing, "humidity"));
  return std::vector<Draft>{
      {command.job, entries::ClimateRead{command.booth, command.air_c, command.surface_c,
                                         command.humidity_percent}}};
}

Drafts decide_one(const Scene& scene, const SetProduct& command) {
  const char* const doing = "set a product";
  job::Product said = command.said;
  JAMBLINE_ASSIGN(said.product_name, typed(said.product_name, doing, "name", most_text_bytes));
  if (!scene.may_say<entries::ProductSet>())
    return fail(Code::NotAllowed, doing, said.product_name);
  // The clock itself says whether the points hang together.
  if (!said.steps.empty()) {
    trade::CureClock probe;
    probe.kind = said.cure;
    probe.steps = said.steps;
    probe.minimum_c = said.minimum_c;
    probe.surface_max_c = said.surface_max_c;
    probe.rest_after_bake_min = said.rest_after_bake_min;
    probe.heavy_factor = said.heavy_factor;
    probe.readings = {{0, 20}};
    JAMBLINE_TRY(trade::cure_clock(probe));
  }
  for (const auto& table : said.drive_away) {
    if (table.case_name.empty()) return fail(Code::Missing, doing, "airbag and belt case");
    JAMBLINE_TRY(trade::drive_away({table.rows, {}, {}}));
  }
  if (said.air_min_c && said.air_max_c && *said.air_min_c > *said.air_max_c)
    return fail(Code::OutOfRange, doing, "air");
  if (said.humidity_min_percent && said.humidity_max_percent &&
      *said.humidity_min_percent > *said.humidity_max_percent)
    return fail(Code::OutOfRange, doing, "humidity");
  ProductId id;
  std::vector<Hash> heads;
  if (command.product) {
    const auto* known = scene.world.shop.air.find(*command.product);
    if (!known) return fail(Code::Unknown, doing, "product");
    if (known->said == said) return fail(Code::AlreadyDone, doing, said.product_name);
    id = known->product;
    heads = known->heads;
  } else {
    for (const auto& one : scene.world.shop.air.products)
      if (one.said.product_name == said.product_name && !one.said.retired)
        return fail(Code::AlreadyDone, doing, said.product_name);
    id = scene.context.random.make<ProductId>();
  }
  return std::vector<Draft>{{{}, entries::ProductSet{id, std::move(said), std::move(heads)}}};
}

}  // namespace jambline::acts
