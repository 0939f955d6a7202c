#include "booth_screens.h"

#include "acts.h"
#include "folds/booth_state.h"
#include "rules.h"
#include "screens/clearance_view_model.h"

namespace jambline::walk {

namespace {
using folds::BoothWordNow;
using job::BoothReading;
using job::BoothWord;

PersonId manager(Shop& shop) {
  if (const auto known = manager_of(shop)) return *known;
  act(shop, acts::AddPerson{"Rosa", job::Role::Manager}, {});
  return shop_of(shop).people.back().person;
}

std::optional<RespiratorId> hood(Shop& shop) {
  const auto& all = shop_of(shop).air.respirators;
  for (const auto& one : all)
    if (one.said.kind == job::RespiratorKind::SuppliedHood) return one.respirator;
  const bool good =
      act(shop,
          acts::SetRespirator{{},
                              {"hood 7", job::RespiratorKind::SuppliedHood, trade::FactorScheme::Us,
                               25, "29 CFR 1910.134", 2006, "", false}},
          manager(shop));
  return good ? std::optional(shop_of(shop).air.respirators.back().respirator) : std::nullopt;
}

BoothId booth_of(Shop& shop, job::BoothKind kind, const char* name) {
  for (const auto& one : shop_of(shop).booths)
    if (one.name == name) return one.booth;
  act(shop, acts::AddBooth{name, kind}, manager(shop));
  return shop_of(shop).booths.back().booth;
}

folds::BoothState state_of(Shop& shop, const BoothId& booth) {
  return folds::booth_state(*shop_of(shop).find(booth), shop_of(shop).air.find(booth),
                            shop.program().session().now());
}

// The gun is up in it: every must of the empty register is passed over.
bool spray(Shop& shop, const BoothId& booth, const PersonId& by) {
  using job::GunItem;
  const auto respirator = hood(shop);
  if (!respirator) return false;
  acts::StartSpray start{*shop.program().session().job(), booth, *respirator, true, {}};
  for (std::size_t i = 0; i < enum_words<GunItem>.size(); ++i) {
    const auto item = static_cast<GunItem>(i);
    if (job::is_of_now(item))
      start.checks.push_back({item, job::CutAnswer::Yes, {}, {}});
    else if (job::class_of(item) == job::CheckClass::Must)
      start.checks.push_back({item, job::CutAnswer::No, job::GunReason::RecordNotHere, {}});
  }
  return act(shop, start, by);
}

bool open_now(Shop& shop, const BoothId& booth) {
  shop.program().clearance().open(QString::fromStdString(booth.hex()));
  return place(shop, "Booth", "BoothNow");
}

PersonId another(Shop& shop) {
  const PersonId mine = shop.program().session().person();
  for (const auto& person : shop_of(shop).people)
    if (!person.left && person.person != mine) return person.person;
  return manager(shop);
}

// A booth in the state that is wanted, and its page. Who sprays still can spray nowhere else: that
// comes last.
bool booth_now(Shop& shop, BoothWordNow wanted, bool of_another) {
  const bool open = wanted == BoothWordNow::NoTime;
  const bool over = wanted == BoothWordNow::TimeOver;
  const BoothId booth = booth_of(shop, open ? job::BoothKind::PrepDeck : job::BoothKind::CrossDraft,
                                 open                               ? "prep deck 3"
                                 : over                             ? "booth 5"
                                 : wanted != BoothWordNow::Spraying ? "booth 4"
                                 : of_another                       ? "booth 8"
                                                                    : "booth 7");
  const PersonId mine = shop.program().session().person();
  if (!open && !shop_of(shop).air.find(booth) &&
      !act(shop, acts::ReadBooth{booth, BoothReading::SmokeTest, {over ? 0.1 : 12.0}}, mine))
    return false;
  auto now = state_of(shop, booth);
  if (now.word == BoothWordNow::Idle && !spray(shop, booth, of_another ? another(shop) : mine))
    return false;
  if (wanted == BoothWordNow::Spraying) return open_now(shop, booth);
  now = state_of(shop, booth);
  if (now.word == BoothWordNow::Spraying && !act(shop, acts::GunDown{booth, now.up[0].spray}, mine))
    return false;
  if (wanted == BoothWordNow::NotCounting && state_of(shop, booth).word != wanted &&
      !act(shop, acts::SayExhaust{booth, BoothWord::FanStopped}, mine))
    return false;
  if (over) shop.wait_min(0.2);
  settle(shop.window());
  return state_of(shop, booth).word == wanted && open_now(shop, booth);
}

// The booths with all that can stand on a tape: facts, readings of two months, a test.
bool known_booths(Shop& shop) {
  const PersonId boss = manager(shop);
  const BoothId booth = booth_of(shop, job::BoothKind::Downdraft, "booth 6");
  const std::int64_t day_ms = 86'400'000;
  const std::int64_t now_ms = shop.program().session().now().wall_ms;
  if (!shop_of(shop).air.find(booth)) {
    acts::SetBoothFacts facts{booth, {}};
    facts.facts.volume_m3 = 98;
    facts.facts.rated_exhaust_m3_h = 20'000;
    facts.facts.wanted_m_s = 0.508;
    facts.facts.wanted_from = "the booth's maker";
    facts.facts.most_pressure_pa = 150;
    bool good = act(shop, facts, boss);
    for (int i = 0; i < 6; ++i)
      good = act(shop,
                 acts::ReadBooth{booth,
                                 BoothReading::FilterPressure,
                                 {70.0 + 9 * i + i % 2},
                                 5,
                                 now_ms - (50 - 10 * i) * day_ms},
                 boss) &&
             good;
    good =
        act(shop, acts::ReadBooth{booth, BoothReading::Velocity, {0.52, 0.5, 0.51}}, boss) && good;
    good = act(shop, acts::ReadBooth{booth, BoothReading::SmokeTest, {5}, 5, now_ms - 20 * day_ms},
               boss) &&
           good;
    if (!good) return false;
  }
  return place(shop, "Booth", "None");
}
}  // namespace

std::vector<Screen> booth_screens() {
  const auto now = [](BoothWordNow wanted, bool of_another = false) {
    return [=](Shop& shop) { return booth_now(shop, wanted, of_another); };
  };
  const auto over_booths = [](std::vector<const char*> buttons) {
    return [=](Shop& shop) {
      if (!known_booths(shop)) return false;
      press(shop, "boothNumbers");  // they may stand open
      for (const char* button : buttons)
        if (!press(shop, button)) return false;
      return true;
    };
  };
  return {
      {"booth-known", true, known_booths},
      {"booth-numbers", true, over_booths({})},
      {"booth-facts", true, over_booths({"boothTape", "boothFacts"})},
      {"booth-facts-wrong", true,
       [=](Shop& shop) {
         if (!over_booths({"boothTape", "boothFacts"})(shop)) return false;
         auto* facts = shop.window()
                           .property("models")
                           .value<QObject*>()
                           ->property("boothFacts")
                           .value<QObject*>();
         for (const char* key : {"mixing_factor", "most_pressure_pa", "fixed_clear_min"})
           QMetaObject::invokeMethod(facts, "type", Q_ARG(QString, QString::fromLatin1(key)),
                                     Q_ARG(QString, QStringLiteral("0.02")));
         return press(shop, "factsKeep");
       }},
      {"booth-reading", true, over_booths({"boothRead"})},
      {"booth-reading-air", true,
       over_booths({"boothRead", "reading_0", "key_9", "key_8", "key_unit", "key_1", "key_0",
                    "key_4", "readingEarlier"})},
      {"booth-counting", true, now(BoothWordNow::Counting)},
      {"booth-counting-sum", true,
       [=](Shop& shop) {
         return now(BoothWordNow::Counting)(shop) && press(shop, "clearanceSum");
       }},
      {"booth-stopped", true, now(BoothWordNow::NotCounting)},
      {"booth-no-time", true, now(BoothWordNow::NoTime)},
      {"booth-over", true, now(BoothWordNow::TimeOver)},
      {"booth-over-row", true,
       [=](Shop& shop) {
         return now(BoothWordNow::TimeOver)(shop) && place(shop, "Floor", "None");
       }},
      {"booth-spraying", true, now(BoothWordNow::Spraying)},
      {"booth-spraying-other", true, now(BoothWordNow::Spraying, true)},
  };
}

}  // namespace jambline::walk
