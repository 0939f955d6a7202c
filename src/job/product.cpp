#include "job/product.h"

namespace jambline::job {

PanelGroup group_of(Panel panel, trade::Substrate substrate) {
  if (substrate == trade::Substrate::Plastic) return PanelGroup::Plastic;
  switch (panel) {
    case Panel::Hood:
    case Panel::Roof:
    case Panel::Decklid:
    case Panel::Hatch:
    case Panel::Liftgate:
      return PanelGroup::Roof;
    case Panel::LeftRocker:
    case Panel::RightRocker:
    case Panel::FrontBumper:
    case Panel::RearBumper:
      return PanelGroup::Low;
    default:
      return PanelGroup::Sides;
  }
}

}  // namespace jambline::job
