#include "folds/assembly_of_car.h"

#include <algorithm>

#include "folds/cure_of_car.h"
#include "folds/fit_of_panel.h"
#include "job/shot.h"

namespace jambline::folds {

namespace {
using job::Panel;
using job::Stage;
using job::Step;

class Steps {
 public:
  Steps(const CarView& car, const ShopView& shop, const Moment& now)
      : car_(car), shop_(shop), now_(now) {}

  std::vector<StepOfCar> all() {
    std::vector<StepOfCar> out;
    for (std::size_t i = 0; i < enum_words<Step>.size(); ++i) {
      StepOfCar one{static_cast<Step>(i)};
      if (!applies(one.step)) continue;
      if (const auto* said = car_.assembly.find(one.step)) one.done = said->done;
      look_at(one);
      out.push_back(one);
    }
    return out;
  }

 private:
  bool planned(Stage stage) const {
    return std::any_of(car_.stages.begin(), car_.stages.end(),
                       [&](const auto& one) { return one.stage == stage; });
  }
  bool stage_done(Stage stage) const {
    return std::any_of(car_.stages.begin(), car_.stages.end(),
                       [&](const auto& one) { return one.stage == stage && one.done; });
  }
  bool loose(std::initializer_list<Panel> panels) const {
    return std::any_of(car_.panels.begin(), car_.panels.end(), [&](const PanelView& one) {
      return !one.plan.on_car &&
             std::find(panels.begin(), panels.end(), one.plan.panel) != panels.end();
    });
  }
  bool any_loose() const {
    return std::any_of(car_.panels.begin(), car_.panels.end(),
                       [](const PanelView& one) { return !one.plan.on_car; });
  }
  bool opens_loose() const {
    return std::any_of(car_.panels.begin(), car_.panels.end(), [](const PanelView& one) {
      return !one.plan.on_car && job::opens(one.plan.panel);
    });
  }
  bool doors_loose() const {
    return loose({Panel::LeftFrontDoor, Panel::RightFrontDoor, Panel::LeftRearDoor,
                  Panel::RightRearDoor, Panel::SlidingDoor});
  }
  bool bonded(job::ProductKind kind) const {
    return std::any_of(car_.air.bonds.begin(), car_.air.bonds.end(), [&](const BondView& one) {
      const auto* product = shop_.air.find(one.product);
      return product && product->said.kind == kind;
    });
  }
  bool glass() const { return planned(Stage::Glass) || bonded(job::ProductKind::GlassUrethane); }
  bool applies(Step step) const {
    switch (step) {
      case Step::TrialFit:
        return planned(Stage::BodyAndTrialFit);
      case Step::BaseColor:
        return planned(Stage::Spray);
      case Step::BondingFlangeReady:
      case Step::GlassSet:
      case Step::MoldingsAndCowl:
      case Step::DriveAwayTime:
      case Step::MovedByDriving:
        return glass();
      case Step::SealerAndLastBake:
      case Step::CavityWax:
      case Step::TrimPanels:
        return planned(Stage::CavityWax);
      case Step::HandleFrom:
      case Step::HangAndFit:
        return any_loose();
      case Step::PartsCompounded:
      case Step::MountedToCar:
        return any_loose() && planned(Stage::Correct);
      case Step::SeamsWashed:
      case Step::WeatherstripTrimLamps:
        return planned(Stage::Correct) && planned(Stage::Assemble);
      case Step::LampsPolished:
      case Step::LampsInstalled:
      case Step::BatteryAndRestraints:
      case Step::IgnitionOn:
        return planned(Stage::Assemble);
      case Step::WeatherstripSeated:
      case Step::PanelClosedOnIt:
      case Step::HingesFixed:
      case Step::StrikerAndLatch:
        return opens_loose();
      case Step::RearDoorFit:
        return loose({Panel::LeftRearDoor, Panel::RightRearDoor});
      case Step::FrontDoorFit:
        return loose({Panel::LeftFrontDoor, Panel::RightFrontDoor});
      case Step::FenderFit:
        return loose({Panel::LeftFender, Panel::RightFender});
      case Step::HoodFit:
        return loose({Panel::Hood});
      case Step::BumperLampsGrille:
        return loose({Panel::FrontBumper});
      case Step::DoorGlassAndBarrier:
      case Step::DoorPanel:
        return doors_loose();
      case Step::RearLidFit:
        return loose({Panel::Decklid, Panel::Hatch, Panel::Liftgate, Panel::Tailgate});
      case Step::TailLampsRearBumper:
        return loose({Panel::RearBumper});
      case Step::AdhesiveHandling:
      case Step::ClampsReleased:
      case Step::AdhesiveFull:
      case Step::LoadedOrDriven:
        return bonded(job::ProductKind::PanelAdhesive);
      case Step::BumperAndRadarFinal:
        return planned(Stage::SensorsAndScan) && loose({Panel::FrontBumper, Panel::RearBumper});
      case Step::Calibration:
      case Step::ScanClear:
      case Step::LampsAimed:
        return planned(Stage::SensorsAndScan);
      case Step::TiresAndAlignment:
        return std::any_of(
            car_.visit.sublets.begin(), car_.visit.sublets.end(),
            [](const auto& one) { return one.said.kind == job::SubletKind::Alignment; });
      case Step::LatchAndCatchChecked:
      case Step::RoadTest:
        return opens_loose() || latch_to_check(car_) || car_.assembly.find(step);
      case Step::Delivery:
        return true;
      case Step::FilmInWindow:
      case Step::LastPolish:
        return planned(Stage::LastPolish);
      case Step::FinalWash:
      case Step::FilmWashSafe:
        return planned(Stage::Wash);
    }
    return false;
  }

  void by_stage(StepOfCar& one, Stage stage) const {
    if (!stage_done(stage)) return;
    one.done = true;
    one.by_itself = true;
  }

  void look_at(StepOfCar& one) const {
    switch (one.step) {
      case Step::TrialFit:
        return by_stage(one, Stage::BodyAndTrialFit);
      case Step::BaseColor:
        return by_stage(one, Stage::Spray);
      case Step::GlassSet:
        if (bonded(job::ProductKind::GlassUrethane)) one.done = one.by_itself = true;
        return;
      case Step::DriveAwayTime:
        return drive_away(one);
      case Step::HandleFrom:
        return milestone(one, trade::CureMilestone::Handle);
      case Step::FilmInWindow:
        return milestone(one, trade::CureMilestone::LastPolish);
      case Step::AdhesiveHandling:
        return adhesive(one, trade::CureMilestone::HandlingStrength);
      case Step::AdhesiveFull:
        return adhesive(one, trade::CureMilestone::FullStrength);
      case Step::LastPolish:
        return by_stage(one, Stage::LastPolish);
      case Step::FinalWash:
        return by_stage(one, Stage::Wash);
      case Step::Delivery:
        one.done = car_.delivered_ms.has_value();
        one.by_itself = true;
        return;
      case Step::LatchAndCatchChecked:
        one.done = one.done && !latch_to_check(car_);
        return;
      default:
        return;
    }
  }

  // Nobody taps what the maker's table says.
  void drive_away(StepOfCar& one) const {
    one.by_itself = true;
    one.done = false;
    const auto wait = do_not_drive(car_, shop_, now_);
    if (wait)
      one.until_ms = wait->until_ms;
    else
      one.done = bonded(job::ProductKind::GlassUrethane);
  }

  void hold(StepOfCar& one, const std::vector<trade::CureStanding>& standings,
            trade::CureMilestone milestone, std::int64_t from_ms, bool& asked, bool& all) const {
    for (const auto& standing : standings) {
      if (standing.milestone != milestone) continue;
      asked = true;
      if (standing.word == trade::CureWord::Reached) continue;
      all = false;
      if (!standing.reached_min) continue;
      const std::int64_t at_ms =
          from_ms +
          static_cast<std::int64_t>(
              std::max(*standing.reached_min, standing.gate_until_min.value_or(0)) * 60'000);
      one.until_ms = std::max(one.until_ms.value_or(at_ms), at_ms);
    }
  }

  // Where no sheet has that milestone, a person says it.
  void milestone(StepOfCar& one, trade::CureMilestone milestone) const {
    bool asked = false;
    bool all = true;
    for (const auto& clock : cure_of_car(car_, shop_, now_))
      if (clock.result && *clock.result)
        hold(one, (*clock.result)->standings, milestone, clock.coated.wall_ms, asked, all);
    settle(one, asked, all);
  }
  void adhesive(StepOfCar& one, trade::CureMilestone milestone) const {
    bool asked = false;
    bool all = true;
    for (const auto& bond : bonds_of_car(car_, shop_, now_))
      if (!bond.glass && bond.strength && *bond.strength)
        hold(one, (*bond.strength)->standings, milestone, bond.set_ms, asked, all);
    settle(one, asked, all);
  }
  static void settle(StepOfCar& one, bool asked, bool all) {
    if (!asked) return;
    one.by_itself = true;
    one.done = all;
    if (all) one.until_ms.reset();
  }

  const CarView& car_;
  const ShopView& shop_;
  const Moment& now_;
};
}  // namespace

std::vector<StepOfCar> steps_of_car(const CarView& car, const ShopView& shop, const Moment& now) {
  return Steps(car, shop, now).all();
}

std::vector<StepOfCar> in_order(std::vector<StepOfCar> steps, const ShopView& shop) {
  std::stable_sort(steps.begin(), steps.end(), [](const auto& a, const auto& b) {
    return std::pair(a.step == Step::Delivery, a.step) <
           std::pair(b.step == Step::Delivery, b.step);
  });
  std::vector<StepOfCar> out;
  while (!steps.empty()) {
    // Rules that go in a circle hold nobody up here.
    auto next = steps.begin();
    for (auto one = steps.begin(); one != steps.end(); ++one) {
      const bool waits =
          std::any_of(shop.rules.begin(), shop.rules.end(), [&](const RuleView& rule) {
            return !rule.said.retired && rule.said.after == one->step &&
                   std::any_of(steps.begin(), steps.end(), [&](const StepOfCar& other) {
                     return other.step == rule.said.before;
                   });
          });
      if (waits) continue;
      next = one;
      break;
    }
    out.push_back(*next);
    steps.erase(next);
  }
  return out;
}

std::vector<RuleInTheWay> in_the_way(const CarView& car, const ShopView& shop, job::Step step,
                                     const Moment& now) {
  return in_the_way(steps_of_car(car, shop, now), shop, step);
}

std::vector<RuleInTheWay> in_the_way(const std::vector<StepOfCar>& steps, const ShopView& shop,
                                     job::Step step) {
  std::vector<RuleInTheWay> out;
  for (const auto& rule : shop.rules) {
    if (rule.said.retired || rule.said.after != step) continue;
    const auto before = std::find_if(steps.begin(), steps.end(),
                                     [&](const auto& one) { return one.step == rule.said.before; });
    if (before != steps.end() && !before->done)
      out.push_back({rule.rule, rule.said, before->until_ms});
  }
  std::stable_sort(out.begin(), out.end(),
                   [](const auto& a, const auto& b) { return a.said.kind > b.said.kind; });
  return out;
}

}  // namespace jambline::folds
