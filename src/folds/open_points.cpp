#include "folds/open_points.h"

#include <algorithm>

#include "folds/assembly_of_car.h"
#include "folds/shots_of_car.h"

namespace jambline::folds {

namespace {
// A person said that nothing is missing, really.
bool settled(const std::optional<job::WithoutShots>& why) {
  return why == job::WithoutShots::NotNeeded || why == job::WithoutShots::TakenElsewhere;
}
}  // namespace

std::vector<OpenPoint> open_points(const CarView& car, const ShopView& shop, const Moment& now) {
  std::vector<OpenPoint> out;
  for (const auto& panel : car.panels)
    if (panel.verdict != job::Verdict::Clean || panel.disputed)
      out.push_back({OpenPointKind::PanelNotClean, panel.plan.panel, {}, {}, panel.open_marks()});
  for (const auto& stage : car.stages) {
    // The walk-around ends with the delivery itself; what it still wants are its pictures.
    const bool now_walked = stage.stage == job::Stage::WalkAround && !stage.done;
    if (!stage.done && !now_walked) {
      out.push_back({OpenPointKind::StageOpen, {}, stage.stage, {}, 0});
    } else if (now_walked || (stage.shots_missing && !settled(stage.without_shots))) {
      if (const int missing = missing_shots(car, shop, stage.stage); missing > 0)
        out.push_back({OpenPointKind::ShotsMissing, {}, stage.stage, {}, missing});
    }
  }
  for (const auto& part : car.visit.parts)
    if (part.said.state == job::PartState::Ordered || part.said.state == job::PartState::Wrong)
      out.push_back({OpenPointKind::PartNotHere, {}, {}, part.said.part_name, 0});
  for (const auto& sublet : car.visit.sublets)
    if (sublet.said.state != job::SubletState::Back)
      out.push_back({OpenPointKind::SubletNotBack, {}, {}, sublet.said.who, 0});
  for (const auto& operation : car.operations)
    if (operation.approval == job::Approval::Asked)
      out.push_back({OpenPointKind::ApprovalOpen, {}, operation.stage, operation.title, 0});
  for (const auto& step : steps_of_car(car, shop, now))
    if (step.step == job::Step::LatchAndCatchChecked && !step.done)
      out.push_back({OpenPointKind::LatchNotChecked, {}, {}, {}, 0});
  return out;
}

}  // namespace jambline::folds
