#include "protection_screens.h"

#include "acts.h"
#include "base/spans.h"
#include "rules.h"
#include "screens/exposure_view_model.h"
#include "screens/register_view_model.h"

namespace jambline::walk {

namespace {

// What a shop with a manager has kept: what is in date, what is due, what is over.
bool fill(Shop& shop) {
  auto& session = shop.program().session();
  const PersonId manager = manager_of(shop).value_or(PersonId{});
  if (!manager || !session.shop().air.samples.empty()) return true;
  const std::int64_t now_ms = session.now().wall_ms;
  const int today = static_cast<int>(now_ms / day_ms);
  bool good = true;
  const auto respirator = [&](const char* model, job::RespiratorKind kind) {
    good =
        act(shop,
            acts::SetRespirator{{},
                                {model, kind, trade::FactorScheme::Us, job::usual_us_factor(kind),
                                 "OSHA, 29 CFR 1910.134 table 1", 2006, "", false}},
            manager) &&
        good;
    return session.shop().air.respirators.back().respirator;
  };
  const RespiratorId hood =
      respirator("supplied-air hood by the north door", job::RespiratorKind::SuppliedHood);
  const RespiratorId full =
      respirator("full face on the airline", job::RespiratorKind::SuppliedFull);
  const RespiratorId mask =
      respirator("full face with cartridges", job::RespiratorKind::FullAirPurifying);
  good = act(shop, acts::CheckBreathingAir{{true, false, true, today - 20, 90}}, manager) && good;
  const auto people = session.shop().people;
  for (std::size_t i = 0; i < people.size() && i < 4; ++i) {
    if (people[i].left) continue;
    const PersonId person = people[i].person;
    job::FitTest test{
        "M",  job::FitMethod::Quantitative,          {812, 640, 705, 590, 733, 668, 701},
        true, today - 100 * static_cast<int>(i + 1), 365};
    if (i == 1) test.exercise_factors.back() = 40;
    good = act(shop, acts::RecordFitTest{person, full, test, {}}, manager) && good;
    good = act(shop,
               acts::SetDue{person, job::DueKind::HealthSurveillance,
                            today + 20 - 15 * static_cast<int>(i)},
               manager) &&
           good;
    good = act(shop,
               acts::ChangeCartridge{person, mask, 16,
                                     "maker's service life at 50 ppm and 70 % humidity, 2024"},
               manager) &&
           good;
  }
  if (people.size() > 2)
    good = act(shop, acts::SayDoNotSpray{people[2].person, true}, manager) && good;
  const auto sample = [&](const char* substance, double value, double from_h, double to_h,
                          std::optional<RespiratorId> worn) {
    acts::LogSample said;
    said.person = people.front().person;
    said.substance = substance;
    said.value = value;
    said.unit = "ppm";
    said.from_ms = now_ms - 30 * hour_ms + static_cast<std::int64_t>(from_h * hour_ms);
    said.to_ms = now_ms - 30 * hour_ms + static_cast<std::int64_t>(to_h * hour_ms);
    said.respirator = worn;
    good = act(shop, said, manager) && good;
  };
  sample("HDI", 0.0042, 0, 3.5, hood);
  sample("HDI", 0.21, 3.5, 3.75, hood);
  sample("IPDI", 0.0011, 0, 6, std::nullopt);
  sample("a solvent without a limit", 12, 0, 6, full);
  return good;
}

bool shown(Shop& shop, const char* work, bool as_manager = true) {
  if (!fill(shop)) return false;
  if (const PersonId manager = manager_of(shop).value_or(PersonId{}); manager && as_manager)
    shop.program().session().choosePerson(QString::fromStdString(manager.hex()));
  return place(shop, "Booth", work);
}

// A sheet of the person's page; an empty shop has nobody.
bool person(Shop& shop, const char* button, const char* next = nullptr) {
  if (!shown(shop, "Protection")) return false;
  if (shop.program().protection().person().isEmpty()) return true;
  return press(shop, button) && (!next || press(shop, next));
}

bool fit_typed(Shop& shop) {
  if (!person(shop, "recordFit")) return false;
  for (const int factor : {812, 640, 40}) shop.program().protection().fitTest()->typeFactor(factor);
  shop.program().protection().fitTest()->keep({}, QStringLiteral("2/30/2026"), {});
  settle(shop.window());
  return true;
}

bool in_register(Shop& shop, const char* button) {
  if (!shown(shop, "Register")) return false;
  return press(shop, button) || !manager_of(shop);
}

bool exposure(Shop& shop, const char* button) {
  if (!shown(shop, "Exposure")) return false;
  settle_until(shop, [&] { return !shop.program().exposure().working(); });
  settle(shop.window());
  if (!button) return true;
  return press(shop, button) || shop.program().exposure().shiftCount() == 0;
}
}  // namespace

std::vector<Screen> protection_screens() {
  return {
      {"register", false, [](Shop& shop) { return shown(shop, "Register"); }},
      {"register-air", false, [](Shop& shop) { return in_register(shop, "registerAir"); }},
      {"register-respirator", false,
       [](Shop& shop) { return in_register(shop, "registerRespirator0"); }},
      {"protection", false, [](Shop& shop) { return shown(shop, "Protection"); }},
      {"protection-sum", false, [](Shop& shop) { return person(shop, "registerRow0") || true; }},
      {"protection-fit-typed", false, fit_typed},
      {"protection-cartridge", false, [](Shop& shop) { return person(shop, "changeCartridge"); }},
      {"protection-flag", false,
       [](Shop& shop) { return person(shop, "doNotSpray") || press(shop, "flagCard"); }},
      {"limits", false, [](Shop& shop) { return shown(shop, "Limits"); }},
      {"limit", false, [](Shop& shop) { return shown(shop, "Limits") && press(shop, "limit0"); }},
      {"exposure", false, [](Shop& shop) { return exposure(shop, nullptr); }},
      {"exposure-sum", false, [](Shop& shop) { return exposure(shop, "result0"); }},
      {"exposure-sample", false, [](Shop& shop) { return exposure(shop, "logSample"); }},
  };
}

}  // namespace jambline::walk
