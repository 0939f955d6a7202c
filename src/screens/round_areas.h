// screens/round_areas.h: the areas of a round as they are drawn on a map or a panel, in its
// millimetres, y up: circles round the marks, clipped at the outline and kept off edges and body
// lines; by hand: at the outline only; a whole panel: its outline.
//
// Threads: GUI thread. Given by the view model of a screen, drawn by AreaItem.
#pragma once

#include <QObject>
#include <QtQml/qqmlregistration.h>

#include "folds/plan_of_car.h"
#include "job/body_shape.h"

namespace jambline::screens {

struct RoundArea {
  struct Spot {
    trade::Point_mm at;
    double radius_mm{};
    bool by_hand = false;
    friend bool operator==(const Spot&, const Spot&) = default;
  };
  std::vector<trade::Point_mm> outline;
  std::vector<trade::Polyline> body_lines;
  double keep_off_mm{};
  bool whole = false;
  std::vector<Spot> spots;
  friend bool operator==(const RoundArea&, const RoundArea&) = default;
};

RoundArea round_area(const folds::CarView& car, const folds::PlanOfCar& of,
                     const folds::WalkStation& station, job::Round round,
                     const job::PatternPanel& drawn, const trade::Placement& place);

class RoundAreas : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Given by a view model")

 public:
  using QObject::QObject;
  const std::vector<RoundArea>& now() const { return now_; }
  const std::vector<RoundArea>& next() const { return next_; }
  void set(std::vector<RoundArea> now, std::vector<RoundArea> next);

 signals:
  void changed();

 private:
  std::vector<RoundArea> now_;
  std::vector<RoundArea> next_;
};

}  // namespace jambline::screens
