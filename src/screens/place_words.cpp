#include "screens/place_words.h"

#include <QCoreApplication>
#include <array>

namespace jambline::screens {

namespace {

QString place_tr(const char* text) {
  return QCoreApplication::translate("jambline::screens::PlaceWords", text);
}

enum class Facing { LeftSide, RightSide, Front, Rear, Top };

Facing facing(job::Panel panel) {
  using job::Panel;
  switch (panel) {
    case Panel::Hood:
    case Panel::Roof:
      return Facing::Top;
    case Panel::FrontBumper:
      return Facing::Front;
    case Panel::Decklid:
    case Panel::Hatch:
    case Panel::Liftgate:
    case Panel::Tailgate:
    case Panel::RearBumper:
    case Panel::LeftCargoDoor:
    case Panel::RightCargoDoor:
      return Facing::Rear;
    case Panel::RightFender:
    case Panel::RightFrontDoor:
    case Panel::RightRearDoor:
    case Panel::RightQuarter:
    case Panel::RightRocker:
    case Panel::RightMirror:
    case Panel::RightCabCorner:
    case Panel::RightBedSide:
    case Panel::SlidingDoor:
    case Panel::RightSide:
      return Facing::RightSide;
    default:
      return Facing::LeftSide;
  }
}

}  // namespace

QString place_words(job::Panel panel, Ninth where) {
  const Facing side = facing(panel);
  const bool across = side == Facing::Front || side == Facing::Rear || side == Facing::Top;
  const bool turned = side == Facing::RightSide || side == Facing::Front;
  const int column = turned ? 2 - where.column : where.column;
  const QString level = side == Facing::Top
                            ? std::array{place_tr("rear"), place_tr("middle"),
                                         place_tr("front")}[static_cast<std::size_t>(where.rise)]
                            : std::array{place_tr("lower"), place_tr("middle"),
                                         place_tr("upper")}[static_cast<std::size_t>(where.rise)];
  const QString along = across ? std::array{place_tr("left"), place_tr("middle"),
                                            place_tr("right")}[static_cast<std::size_t>(column)]
                               : std::array{place_tr("front"), place_tr("middle"),
                                            place_tr("rear")}[static_cast<std::size_t>(column)];
  if (column == 1 && where.rise == Rise::Middle) return place_tr("middle");
  if (side == Facing::Top)
    return QCoreApplication::translate("jambline::screens::PlaceWords", "%1 %2", "left front")
        .arg(along, level);
  return QCoreApplication::translate("jambline::screens::PlaceWords", "%1 %2", "upper rear")
      .arg(level, along);
}

}  // namespace jambline::screens
