#include "job/shot.h"

#include <map>

namespace jambline::job {

namespace {

struct StageShot {
  const char* name;
  Stage stage;
  ShotView view;
  ShotWanted wanted;
};

constexpr StageShot rows[] = {
    {"front left corner", Stage::CheckIn, ShotView::FrontLeftCorner, ShotWanted::OnceACar},
    {"front right corner", Stage::CheckIn, ShotView::FrontRightCorner, ShotWanted::OnceACar},
    {"rear right corner", Stage::CheckIn, ShotView::RearRightCorner, ShotWanted::OnceACar},
    {"rear left corner", Stage::CheckIn, ShotView::RearLeftCorner, ShotWanted::OnceACar},
    {"dash lit", Stage::CheckIn, ShotView::Inside, ShotWanted::OnceACar},
    {"VIN", Stage::CheckIn, ShotView::PlateOrLabel, ShotWanted::OnceACar},
    {"old damage", Stage::CheckIn, ShotView::PanelClose, ShotWanted::AsFound},
    {"interior", Stage::CheckIn, ShotView::Inside, ShotWanted::OnceACar},
    {"hidden damage", Stage::Teardown, ShotView::PanelClose, ShotWanted::AsFound},
    {"missing clips", Stage::Teardown, ShotView::PanelClose, ShotWanted::AsFound},
    {"labelled bags", Stage::Teardown, ShotView::PlateOrLabel, ShotWanted::OnceACar},
    {"gaps", Stage::BodyAndTrialFit, ShotView::Gap, ShotWanted::EachOpening},
    {"hinge and latch marks", Stage::BodyAndTrialFit, ShotView::Jamb, ShotWanted::EachOpening},
    {"welds before sealer", Stage::BodyAndTrialFit, ShotView::PanelClose, ShotWanted::AsFound},
    {"seam", Stage::Corrosion, ShotView::AlongEdge, ShotWanted::AsFound},
    {"flange", Stage::Corrosion, ShotView::AlongEdge, ShotWanted::AsFound},
    {"back", Stage::Corrosion, ShotView::Underneath, ShotWanted::AsFound},
    {"guide coat", Stage::Prep, ShotView::PanelWide, ShotWanted::EachPanel},
    {"blocked primer", Stage::Prep, ShotView::PanelWide, ShotWanted::EachPanel},
    {"spray-out on the car, daylight", Stage::Color, ShotView::PanelClose, ShotWanted::OnceACar},
    {"edge run", Stage::Mask, ShotView::AlongEdge, ShotWanted::EachPanel},
    {"jamb", Stage::Mask, ShotView::Jamb, ShotWanted::EachOpening},
    {"opening", Stage::Mask, ShotView::Jamb, ShotWanted::AsFound},
    {"glass edge", Stage::Mask, ShotView::AlongEdge, ShotWanted::AsFound},
    {"lamp pocket", Stage::Mask, ShotView::PanelClose, ShotWanted::AsFound},
    {"booth gauge", Stage::BeforeTheGun, ShotView::PlateOrLabel, ShotWanted::OnceACar},
    {"mix label", Stage::BeforeTheGun, ShotView::PlateOrLabel, ShotWanted::OnceACar},
    {"thermometer on the panel", Stage::Cure, ShotView::PlateOrLabel, ShotWanted::AsFound},
    {"edge run", Stage::Unmask, ShotView::AlongEdge, ShotWanted::AsFound},
    {"jamb", Stage::Unmask, ShotView::Jamb, ShotWanted::AsFound},
    {"mark", Stage::Inspect, ShotView::PanelClose, ShotWanted::EachMarkKind},
    {"worst mark", Stage::Inspect, ShotView::PanelClose, ShotWanted::AsFound},
    {"redo evidence", Stage::Inspect, ShotView::PanelClose, ShotWanted::AsFound},
    {"before", Stage::Correct, ShotView::PanelClose, ShotWanted::EachMarkKind},
    {"after leveling, dull", Stage::Correct, ShotView::PanelClose, ShotWanted::AsFound},
    {"after the finish", Stage::Correct, ShotView::SideLight, ShotWanted::EachMarkKind},
    {"side light", Stage::Correct, ShotView::SideLight, ShotWanted::AsFound},
    {"edge run", Stage::EdgesAndJambs, ShotView::AlongEdge, ShotWanted::EachPanel},
    {"jamb", Stage::EdgesAndJambs, ShotView::Jamb, ShotWanted::EachOpening},
    {"opening", Stage::EdgesAndJambs, ShotView::Jamb, ShotWanted::AsFound},
    {"glass edge", Stage::EdgesAndJambs, ShotView::AlongEdge, ShotWanted::AsFound},
    {"lamp pocket", Stage::EdgesAndJambs, ShotView::PanelClose, ShotWanted::AsFound},
    {"probe marks", Stage::CavityWax, ShotView::Underneath, ShotWanted::OnceACar},
    {"weatherstrip seat", Stage::Assemble, ShotView::AlongEdge, ShotWanted::EachOpening},
    {"clips", Stage::Assemble, ShotView::PanelClose, ShotWanted::AsFound},
    {"connectors", Stage::Assemble, ShotView::PanelClose, ShotWanted::AsFound},
    {"flange primed", Stage::Glass, ShotView::AlongEdge, ShotWanted::OnceACar},
    {"bead", Stage::Glass, ShotView::AlongEdge, ShotWanted::OnceACar},
    {"set glass", Stage::Glass, ShotView::PanelWide, ShotWanted::OnceACar},
    {"gap and flush, scale at the edge", Stage::Fit, ShotView::Gap, ShotWanted::EachOpening},
    {"report", Stage::SensorsAndScan, ShotView::PlateOrLabel, ShotWanted::OnceACar},
    {"target setup", Stage::SensorsAndScan, ShotView::PanelWide, ShotWanted::AsFound},
    {"sun or side light", Stage::LastPolish, ShotView::SideLight, ShotWanted::EachPanel},
    {"jambs", Stage::Wash, ShotView::Jamb, ShotWanted::OnceACar},
    {"seams", Stage::Wash, ShotView::AlongEdge, ShotWanted::AsFound},
    {"glass", Stage::Wash, ShotView::PanelWide, ShotWanted::OnceACar},
    {"front left corner", Stage::WalkAround, ShotView::FrontLeftCorner, ShotWanted::OnceACar},
    {"front right corner", Stage::WalkAround, ShotView::FrontRightCorner, ShotWanted::OnceACar},
    {"rear right corner", Stage::WalkAround, ShotView::RearRightCorner, ShotWanted::OnceACar},
    {"rear left corner", Stage::WalkAround, ShotView::RearLeftCorner, ShotWanted::OnceACar},
    {"repaired panel", Stage::WalkAround, ShotView::PanelWide, ShotWanted::EachPanel},
    {"odometer", Stage::WalkAround, ShotView::Inside, ShotWanted::OnceACar},
    {"complaint", Stage::Comeback, ShotView::PanelClose, ShotWanted::AsFound},
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
  for (const StageShot& row : rows) {
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
