#include "job/shot.h"

#include <map>

namespace jambline::job {

namespace {

struct Row {
  Stage stage;
  const char* name;
  ShotView view;
  ShotWanted wanted;
};

constexpr Row rows[] = {
    {Stage::CheckIn, "front left corner", ShotView::FrontLeftCorner, ShotWanted::OnceACar},
    {Stage::CheckIn, "front right corner", ShotView::FrontRightCorner, ShotWanted::OnceACar},
    {Stage::CheckIn, "rear right corner", ShotView::RearRightCorner, ShotWanted::OnceACar},
    {Stage::CheckIn, "rear left corner", ShotView::RearLeftCorner, ShotWanted::OnceACar},
    {Stage::CheckIn, "dash lit", ShotView::Inside, ShotWanted::OnceACar},
    {Stage::CheckIn, "VIN", ShotView::PlateOrLabel, ShotWanted::OnceACar},
    {Stage::CheckIn, "old damage", ShotView::PanelClose, ShotWanted::AsFound},
    {Stage::CheckIn, "interior", ShotView::Inside, ShotWanted::OnceACar},
    {Stage::Teardown, "hidden damage", ShotView::PanelClose, ShotWanted::AsFound},
    {Stage::Teardown, "missing clips", ShotView::PanelClose, ShotWanted::AsFound},
    {Stage::Teardown, "labelled bags", ShotView::PlateOrLabel, ShotWanted::OnceACar},
    {Stage::BodyAndTrialFit, "gaps", ShotView::Gap, ShotWanted::EachOpening},
    {Stage::BodyAndTrialFit, "hinge and latch marks", ShotView::Jamb, ShotWanted::EachOpening},
    {Stage::BodyAndTrialFit, "welds before sealer", ShotView::PanelClose, ShotWanted::AsFound},
    {Stage::Corrosion, "seam", ShotView::AlongEdge, ShotWanted::AsFound},
    {Stage::Corrosion, "flange", ShotView::AlongEdge, ShotWanted::AsFound},
    {Stage::Corrosion, "back", ShotView::Underneath, ShotWanted::AsFound},
    {Stage::Prep, "guide coat", ShotView::PanelWide, ShotWanted::EachPanel},
    {Stage::Prep, "blocked primer", ShotView::PanelWide, ShotWanted::EachPanel},
    {Stage::Color, "spray-out on the car, daylight", ShotView::PanelClose, ShotWanted::OnceACar},
    {Stage::Mask, "edge run", ShotView::AlongEdge, ShotWanted::EachPanel},
    {Stage::Mask, "jamb", ShotView::Jamb, ShotWanted::EachOpening},
    {Stage::Mask, "opening", ShotView::Jamb, ShotWanted::AsFound},
    {Stage::Mask, "glass edge", ShotView::AlongEdge, ShotWanted::AsFound},
    {Stage::Mask, "lamp pocket", ShotView::PanelClose, ShotWanted::AsFound},
    {Stage::BeforeTheGun, "booth gauge", ShotView::PlateOrLabel, ShotWanted::OnceACar},
    {Stage::BeforeTheGun, "mix label", ShotView::PlateOrLabel, ShotWanted::OnceACar},
    {Stage::Cure, "thermometer on the panel", ShotView::PlateOrLabel, ShotWanted::AsFound},
    {Stage::Unmask, "edge run", ShotView::AlongEdge, ShotWanted::AsFound},
    {Stage::Unmask, "jamb", ShotView::Jamb, ShotWanted::AsFound},
    {Stage::Inspect, "mark", ShotView::PanelClose, ShotWanted::EachMarkKind},
    {Stage::Inspect, "worst mark", ShotView::PanelClose, ShotWanted::AsFound},
    {Stage::Inspect, "redo evidence", ShotView::PanelClose, ShotWanted::AsFound},
    {Stage::Correct, "before", ShotView::PanelClose, ShotWanted::EachMarkKind},
    {Stage::Correct, "after leveling, dull", ShotView::PanelClose, ShotWanted::AsFound},
    {Stage::Correct, "after the finish", ShotView::SideLight, ShotWanted::EachMarkKind},
    {Stage::Correct, "side light", ShotView::SideLight, ShotWanted::AsFound},
    {Stage::EdgesAndJambs, "edge run", ShotView::AlongEdge, ShotWanted::EachPanel},
    {Stage::EdgesAndJambs, "jamb", ShotView::Jamb, ShotWanted::EachOpening},
    {Stage::EdgesAndJambs, "opening", ShotView::Jamb, ShotWanted::AsFound},
    {Stage::EdgesAndJambs, "glass edge", ShotView::AlongEdge, ShotWanted::AsFound},
    {Stage::EdgesAndJambs, "lamp pocket", ShotView::PanelClose, ShotWanted::AsFound},
    {Stage::CavityWax, "probe marks", ShotView::Underneath, ShotWanted::OnceACar},
    {Stage::Assemble, "weatherstrip seat", ShotView::AlongEdge, ShotWanted::EachOpening},
    {Stage::Assemble, "clips", ShotView::PanelClose, ShotWanted::AsFound},
    {Stage::Assemble, "connectors", ShotView::PanelClose, ShotWanted::AsFound},
    {Stage::Glass, "flange primed", ShotView::AlongEdge, ShotWanted::OnceACar},
    {Stage::Glass, "bead", ShotView::AlongEdge, ShotWanted::OnceACar},
    {Stage::Glass, "set glass", ShotView::PanelWide, ShotWanted::OnceACar},
    {Stage::Fit, "gap and flush, scale at the edge", ShotView::Gap, ShotWanted::EachOpening},
    {Stage::SensorsAndScan, "report", ShotView::PlateOrLabel, ShotWanted::OnceACar},
    {Stage::SensorsAndScan, "target setup", ShotView::PanelWide, ShotWanted::AsFound},
    {Stage::LastPolish, "sun or side light", ShotView::SideLight, ShotWanted::EachPanel},
    {Stage::Wash, "jambs", ShotView::Jamb, ShotWanted::OnceACar},
    {Stage::Wash, "seams", ShotView::AlongEdge, ShotWanted::AsFound},
    {Stage::Wash, "glass", ShotView::PanelWide, ShotWanted::OnceACar},
    {Stage::WalkAround, "front left corner", ShotView::FrontLeftCorner, ShotWanted::OnceACar},
    {Stage::WalkAround, "front right corner", ShotView::FrontRightCorner, ShotWanted::OnceACar},
    {Stage::WalkAround, "rear right corner", ShotView::RearRightCorner, ShotWanted::OnceACar},
    {Stage::WalkAround, "rear left corner", ShotView::RearLeftCorner, ShotWanted::OnceACar},
    {Stage::WalkAround, "repaired panel", ShotView::PanelWide, ShotWanted::EachPanel},
    {Stage::WalkAround, "odometer", ShotView::Inside, ShotWanted::OnceACar},
    {Stage::Comeback, "complaint", ShotView::PanelClose, ShotWanted::AsFound},
};

// The stage and the place in its list; a row's place is never used again for another shot.
ShotId id_of(Stage stage, std::size_t place) {
  ShotId id;
  id.bytes[14] = static_cast<std::uint8_t>(static_cast<int>(stage) + 1);
  id.bytes[15] = static_cast<std::uint8_t>(place);
  return id;
}

std::map<Stage, std::vector<Shot>> by_stage() {
  std::map<Stage, std::vector<Shot>> out;
  for (const Row& row : rows) {
    auto& shots = out[row.stage];
    shots.push_back({id_of(row.stage, shots.size()), row.name, row.view, row.wanted});
  }
  return out;
}

}  // namespace

const std::vector<Shot>& usual_shots(Stage stage) {
  static const auto all = by_stage();
  static const std::vector<Shot> none;
  const auto found = all.find(stage);
  return found == all.end() ? none : found->second;
}

bool opens(Panel panel) {
  switch (panel) {
    case Panel::Hood:
    case Panel::LeftFrontDoor:
    case Panel::RightFrontDoor:
    case Panel::LeftRearDoor:
    case Panel::RightRearDoor:
    case Panel::Decklid:
    case Panel::Hatch:
    case Panel::Liftgate:
    case Panel::Tailgate:
    case Panel::FuelDoor:
    case Panel::SlidingDoor:
    case Panel::LeftCargoDoor:
    case Panel::RightCargoDoor:
      return true;
    default:
      return false;
  }
}

}  // namespace jambline::job
