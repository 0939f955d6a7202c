#include "screens/stage_roles.h"

namespace jambline::screens {

using job::Role;
using job::Stage;

Role usual_role(Stage stage) {
  switch (stage) {
    case Stage::CheckIn:
    case Stage::WalkAround:
    case Stage::Comeback:
      return Role::Manager;
    case Stage::Teardown:
    case Stage::BodyAndTrialFit:
    case Stage::Corrosion:
    case Stage::CavityWax:
    case Stage::Assemble:
    case Stage::Fit:
    case Stage::SensorsAndScan:
      return Role::BodyTechnician;
    case Stage::Glass:
      return Role::GlassTech;
    case Stage::LastPolish:
    case Stage::Wash:
      return Role::Detailer;
    default:
      return Role::Painter;
  }
}

bool usually_does(Role role, Stage stage) {
  if (role == usual_role(stage)) return true;
  switch (role) {
    case Role::Helper:
      return stage == Stage::Mask || stage == Stage::Unmask || stage == Stage::Wash;
    case Role::Detailer:
      return stage == Stage::Correct;
    case Role::Painter:
      return stage == Stage::LastPolish;
    case Role::BodyTechnician:
      return stage == Stage::CheckIn;
    default:
      return false;
  }
}

}  // namespace jambline::screens
