#include "job/body_shape.h"

#include "job/body_shape_cars.h"

namespace jambline::job {

const PatternPanel* CarPattern::find(Panel panel) const {
  for (const PatternPanel& one : panels)
    if (one.panel == panel) return &one;
  return nullptr;
}

const CarPattern& pattern(BodyShape shape) {
  switch (shape) {
    case BodyShape::TwoDoorHatchback: {
      static const CarPattern car = draw::two_door_hatchback();
      return car;
    }
    case BodyShape::SuvWagon: {
      static const CarPattern car = draw::suv_wagon();
      return car;
    }
    case BodyShape::CrewCabPickup: {
      static const CarPattern car = draw::crew_cab_pickup();
      return car;
    }
    case BodyShape::CargoVan: {
      static const CarPattern car = draw::cargo_van();
      return car;
    }
    case BodyShape::FourDoorSedan:
      break;
  }
  static const CarPattern car = draw::four_door_sedan();
  return car;
}

}  // namespace jambline::job
