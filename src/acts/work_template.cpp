#include "acts/work_template.h"

#include <algorithm>

#include "job/body_shape.h"

namespace jambline::acts {

namespace {
using job::Panel;
using job::Stage;

std::vector<Panel> wanted(WorkTemplate work) {
  switch (work) {
    case WorkTemplate::BumperAndFender:
      return {Panel::LeftFender, Panel::FrontBumper};
    case WorkTemplate::OneSide:
      return {Panel::LeftFender,    Panel::LeftFrontDoor, Panel::LeftRearDoor, Panel::LeftQuarter,
              Panel::LeftCabCorner, Panel::LeftBedSide,   Panel::LeftSide,     Panel::LeftRocker};
    case WorkTemplate::WholeFront:
      return {Panel::LeftFender, Panel::RightFender, Panel::FrontBumper, Panel::Hood};
    case WorkTemplate::SinglePanel:
      return {Panel::LeftFender};
    case WorkTemplate::OwnChoice:
      break;
  }
  return {};
}

// Minutes: once a job, for every panel, and for every panel painted off the car.
struct Share {
  Stage stage;
  int once_min;
  int panel_min;
  int loose_min;
};
constexpr Share shares[] = {
    {Stage::CheckIn, 20, 0, 0},  {Stage::Prep, 15, 50, 10},       {Stage::Mask, 30, 15, -10},
    {Stage::Spray, 40, 18, 6},   {Stage::Unmask, 10, 6, -4},      {Stage::Inspect, 10, 6, 3},
    {Stage::Correct, 10, 18, 0}, {Stage::EdgesAndJambs, 6, 6, 0}, {Stage::Assemble, 15, 0, 30},
    {Stage::Fit, 10, 8, 0},      {Stage::WalkAround, 18, 0, 0}};

std::string title_of(Stage stage) {
  std::string title(word_of(stage));
  title[0] = static_cast<char>(title[0] - 'a' + 'A');
  return title;
}
}  // namespace

job::PanelPlan usual_plan(Panel panel, job::BodyShape body) {
  job::PanelPlan plan;
  plan.panel = panel;
  if (const auto* drawn = job::pattern(body).find(panel)) {
    plan.on_car = !drawn->often_off;
    plan.substrate = drawn->shape.substrate;
  }
  return plan;
}

std::vector<job::PanelPlan> panels_of(WorkTemplate work, job::BodyShape body) {
  const std::vector<Panel> names = wanted(work);
  std::vector<job::PanelPlan> out;
  for (const auto& drawn : job::pattern(body).panels)
    if (std::find(names.begin(), names.end(), drawn.panel) != names.end())
      out.push_back(usual_plan(drawn.panel, body));
  return out;
}

std::vector<PlannedOperation> operations_of(const std::vector<job::PanelPlan>& panels) {
  const auto all = static_cast<int>(panels.size());
  const auto loose = static_cast<int>(
      std::count_if(panels.begin(), panels.end(), [](const auto& plan) { return !plan.on_car; }));
  std::vector<PlannedOperation> out;
  if (all == 0) return out;
  for (const auto& share : shares)
    out.push_back({share.stage, title_of(share.stage),
                   share.once_min + all * share.panel_min + loose * share.loose_min});
  return out;
}

}  // namespace jambline::acts
