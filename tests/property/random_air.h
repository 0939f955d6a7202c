// tests/property/random_air.h: what a person could say about the air, protection and cure, drawn at
// random.
#pragma once

#include "app/demo/invented.h"
#include "tests/property/devices.h"

namespace jambline::property {

template <class T>
const T& one_of(const std::vector<T>& list, SeededRandom& random) {
  return list[random.below(list.size())];
}

template <class E>
E any_word(SeededRandom& random) {
  return static_cast<E>(random.below(enum_words<E>.size()));
}

inline job::Product any_product(SeededRandom& random) {
  job::Product out;
  out.product_name = "product " + std::to_string(random.below(20));
  out.kind = any_word<job::ProductKind>(random);
  out.activated = random.below(2) == 0;
  out.steps = {{trade::CureMilestone::Handle, {{20, 60}}},
               {trade::CureMilestone::PolishFrom, {{20, 960}, {60, 30}}}};
  if (out.kind == job::ProductKind::GlassUrethane)
    out.drive_away = {{"two bags", {{5, 30, 480}, {20, 50, 60}}}};
  return out;
}

inline acts::Command any_register_act(const folds::ShopView& shop, const PersonId& worker,
                                      SeededRandom& random) {
  using namespace acts;
  const int day = static_cast<int>(Device::start_ms / 86'400'000) - demo::between(random, 0, 500);
  const auto& air = shop.air;
  if (air.respirators.empty() || random.below(6) == 0) {
    const auto kind = any_word<job::RespiratorKind>(random);
    return SetRespirator{{},
                         {"model " + std::to_string(random.below(20)), kind,
                          trade::FactorScheme::Us, job::usual_us_factor(kind), "29 CFR 1910.134",
                          2006, random.below(4) ? "" : "written program", false}};
  }
  const RespiratorId worn = one_of(air.respirators, random).respirator;
  switch (random.below(9)) {
    case 0: {
      auto said = one_of(air.respirators, random);
      said.said.retired = !said.said.retired;
      return SetRespirator{said.respirator, said.said};
    }
    case 1:
      return RecordFitTest{worker,
                           worn,
                           {"M",
                            any_word<job::FitMethod>(random),
                            {200.0 + demo::between(random, 0, 900), 800},
                            random.below(2) == 0,
                            day,
                            365}};
    case 2:
      return ChangeCartridge{worker, worn, 0.1 + demo::between(random, 0, 8), "maker's data"};
    case 3:
      return CheckBreathingAir{{true, random.below(2) == 0, true, day, 90}};
    case 4:
      return SayDoNotSpray{worker, random.below(3) == 0};
    case 5:
      return SetDue{worker, any_word<job::DueKind>(random), day + 300};
    case 6:
      return SetLimit{{},
                      {"HDI", any_word<trade::LimitKind>(random), 0.001 * (1 + random.below(40)),
                       "ppm", "the shop", 2026, "its own", random.below(3) == 0}};
    case 7:
      return LogSample{
          worker,          "HDI", 0.001 * random.below(30), "ppm", Device::start_ms - 3'600'000,
          Device::start_ms};
    default:
      return OpenFirstAid{any_word<job::FirstAid>(random)};
  }
}

inline acts::Command any_spray(const folds::ShopView& shop, const JobId& job, const BoothId& booth,
                               SeededRandom& random) {
  acts::StartSpray out{
      job, booth, one_of(shop.air.respirators, random).respirator, random.below(2) == 0, {}};
  for (std::size_t i = 0; i < enum_words<job::GunItem>.size(); ++i) {
    const auto item = static_cast<job::GunItem>(i);
    const auto kind = job::class_of(item);
    if (kind == job::CheckClass::Should) continue;
    if (job::is_of_now(item) && (kind == job::CheckClass::Stop || random.below(4)))
      out.checks.push_back({item, job::CutAnswer::Yes, {}, {}});
    else if (kind == job::CheckClass::Must)
      out.checks.push_back({item, job::CutAnswer::No, any_word<job::GunReason>(random), "note"});
  }
  return out;
}

inline acts::Command any_air_act(const folds::ShopView& shop, const folds::CarView& car,
                                 const job::Panel panel, const PersonId& worker,
                                 SeededRandom& random) {
  using namespace acts;
  if (shop.booths.empty()) return AddBooth{"booth 1", any_word<job::BoothKind>(random)};
  if (shop.air.products.empty()) return SetProduct{{}, any_product(random)};
  if (shop.air.respirators.empty()) return any_register_act(shop, worker, random);
  const BoothId booth = one_of(shop.booths, random).booth;
  const auto group = any_word<job::PanelGroup>(random);
  const auto& product = one_of(shop.air.products, random);
  switch (random.below(18)) {
    case 0: {
      job::BoothFacts facts;
      facts.volume_m3 = 40.0 + random.below(100);
      facts.fixed_clear_min = 1.0 + random.below(30);
      return SetBoothFacts{booth, facts};
    }
    case 1:
      return ReadBooth{booth, any_word<job::BoothReading>(random), {1.0 + random.below(9), 2}};
    case 2:
    case 3:
    case 4:
      return any_spray(shop, car.job, booth, random);
    case 5:
    case 6:
      return GunDown{booth};
    case 7:
      return SayExhaust{booth, any_word<job::BoothWord>(random)};
    case 8:
      return LogClearanceOver{booth};
    case 9:
      return ReportSprayedWithout{car.job, booth, {any_word<job::GunItem>(random)}};
    case 10:
      return MixProduct{car.job,
                        product.product,
                        "batch " + std::to_string(random.below(99)),
                        random.below(2) == 0,
                        random.below(2) ? std::nullopt : std::optional(Device::start_ms - 60'000),
                        car.air.mixes.empty() || random.below(2)
                            ? std::nullopt
                            : std::optional(one_of(car.air.mixes, random).mix)};
    case 11:
      if (!car.air.mixes.empty())
        return SayCoats{car.job,
                        one_of(car.air.mixes, random).mix,
                        {panel},
                        demo::between(random, 1, 3),
                        {8},
                        "1.3 mm",
                        random.below(4) == 0};
      [[fallthrough]];
    case 12:
      return ReadPanelTemperature{car.job, group, demo::between(random, 5, 70) + 0.5};
    case 13:
      return CheckThumbnail{car.job, group, random.below(2) == 0};
    case 14:
      return random.below(2) ? Command(SayBake{car.job, random.below(2) == 0})
                             : Command(ReadBakeLimit{car.job, 60, 30, "repair manual"});
    case 15:
      return SayBonded{car.job, product.product, "windshield",
                       product.said.drive_away.empty() ? "" : product.said.drive_away[0].case_name};
    case 16:
      return ReadClimate{car.job, booth, 20, 19, 1.0 + random.below(99)};
    default:
      return random.below(3) ? any_register_act(shop, worker, random)
                             : Command(SetProduct{{}, any_product(random)});
  }
}

}  // namespace jambline::property
