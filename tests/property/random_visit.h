// tests/property/random_visit.h: what a person could say about a car's visit, its assembly and fit,
// and about the shop's calendar and rules, drawn at random.
#pragma once

#include "job/fit.h"
#include "tests/property/random_air.h"

namespace jambline::property {

inline acts::Command any_shop_rule(const folds::ShopView& shop, SeededRandom& random) {
  using namespace acts;
  if (random.below(3) == 0) {
    auto calendar = job::usual_calendar();
    for (auto& day : calendar.week) {
      day.from_min = demo::between(random, 0, 600);
      day.to_min = day.from_min + demo::between(random, 0, 800);
    }
    calendar.holidays = {demo::between(random, 20'000, 20'400)};
    return SetCalendar{calendar};
  }
  if (random.below(3) == 0)
    return SetRetention{any_word<job::RecordClass>(random),
                        random.below(3) == 0
                            ? std::nullopt
                            : std::optional(demo::between(random, 1, job::most_kept_years))};
  if (random.below(2) == 0 || shop.rules.empty())
    return SetRule{{},
                   {any_word<job::Step>(random), any_word<job::Step>(random),
                    any_word<job::RuleKind>(random), "shop's own", false}};
  auto rule = one_of(shop.rules, random);
  rule.said.retired = !rule.said.retired;
  return SetRule{rule.rule, rule.said};
}

inline acts::Command any_fit_act(const folds::CarView& car, job::Panel panel,
                                 SeededRandom& random) {
  using namespace acts;
  if (random.below(3)) {
    MeasureFit fit{car.job, panel, any_word<job::FitRound>(random), {}};
    for (int i = demo::between(random, 1, 5); i > 0; --i)
      fit.points.push_back({100.0 * i, 100, 90, 2 + random.unit() * 6, 4});
    return fit;
  }
  const auto& fasteners = job::fasteners_of(car.body, panel);
  if (fasteners.empty()) return SayStep{car.job, job::Step::LatchAndCatchChecked};
  return MoveFasteners{
      car.job,
      panel,
      {{one_of(fasteners, random).fastener_name, random.unit() * 2 - 1, random.unit(), 0}}};
}

inline acts::Command any_visit_act(const folds::ShopView& shop, const folds::CarView& car,
                                   job::Panel panel, const PersonId& worker, SeededRandom& random) {
  using namespace acts;
  const auto& visit = car.visit;
  const std::int64_t later_ms =
      Device::start_ms + static_cast<std::int64_t>(random.below(1'000'000'000));
  const std::optional<std::int64_t> expected =
      random.below(2) ? std::optional(later_ms) : std::nullopt;
  switch (random.below(14)) {
    case 0: {
      job::CheckIn said;
      said.odometer = demo::between(random, 0, 200'000);
      said.keys = demo::between(random, 0, 3);
      said.old_damage = random.below(2) ? "chip" : "";
      return SayCheckIn{car.job, said};
    }
    case 1:
      return SayPart{
          car.job,
          visit.parts.empty() || random.below(2) ? std::nullopt
                                                 : std::optional(one_of(visit.parts, random).part),
          {"part " + std::to_string(random.below(9)), any_word<job::PartState>(random), expected}};
    case 2:
      return SaySublet{car.job,
                       visit.sublets.empty() || random.below(2)
                           ? std::nullopt
                           : std::optional(one_of(visit.sublets, random).sublet),
                       {any_word<job::SubletKind>(random), "the glass house",
                        any_word<job::SubletState>(random), expected}};
    case 3:
    case 4:
      return SayWait{car.job, any_word<job::WaitReason>(random), random.below(2) == 0, expected};
    case 5:
      return Sign{car.job,
                  any_word<job::SignedFor>(random),
                  "N. Weller",
                  {{{{random.unit(), random.unit()}, {random.unit(), random.unit()}}}}};
    case 6:
      return SayCameBack{car.job, "wind noise",
                         random.below(2) ? std::optional(panel) : std::nullopt, "the shop"};
    case 7:
    case 8:
      if (!visit.clock_acts.empty()) {
        const auto& act = one_of(visit.clock_acts, random);
        return AmendClock{car.job, act.entry,
                          act.at_ms + demo::between(random, -3'600'000, 3'600'000), "forgot"};
      }
      [[fallthrough]];
    case 9:
      return SayStep{
          car.job, any_word<job::Step>(random), random.below(4) != 0,
          random.below(2) ? std::optional(any_word<job::RuleReason>(random)) : std::nullopt};
    case 10:
      return any_fit_act(car, panel, random);
    case 11: {
      const auto* view = car.find(panel);
      return SettleRelease{
          car.job, view && random.below(2) ? view->release.release : car.car_release.release,
          worker};
    }
    case 12:
      if (!car.operations.empty()) {
        const auto operation = one_of(car.operations, random).operation;
        return random.below(2)
                   ? Command(FinishOperation{car.job, operation, random.below(4) != 0})
                   : Command(AnswerSupplement{car.job, operation, any_word<job::Approval>(random)});
      }
      [[fallthrough]];
    default:
      return random.below(2)
                 ? any_shop_rule(shop, random)
                 : Command(PlanOperation{
                       car.job,
                       {any_word<job::Stage>(random), "more", 30, any_word<job::WorkKind>(random),
                        "found at teardown", std::nullopt, any_word<job::Approval>(random)}});
  }
}

}  // namespace jambline::property
