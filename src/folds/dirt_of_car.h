// folds/dirt_of_car.h: the dirt of a car as the test against chance asks for it.
//
// Dirt:    nibs and craters found when the car was looked over; those of handling and of later
//          stages are not among them. How the work on a mark ended changes nothing. Craters count
//          as dirt after the trade's table of defects; common practice, no source.
// Panels:  those whose face was sprayed and that were looked at, in walking order, marks by their
//          place: the same dirt gives the same pattern in whatever order it was found. A mark off
//          its panel as drawn is left out. With a dirt class: all over, and without marks.
// Sprayed: the order of spraying is not known (0).
// Seed:    from the job, so that a car has the same chances on every device.
// Threads: pure.
#pragma once

#include <optional>
#include <vector>

#include "folds/lesson.h"
#include "job/body_shape.h"
#include "trade/dirt_pattern.h"

namespace jambline::folds {

bool is_dirt(const MarkView& mark);
bool face_was_sprayed(const job::PanelPlan& plan);

// Of the shop's counted cars but one; none without any.
std::optional<trade::FlatHistory> flat_history(const std::vector<Lesson>& lessons,
                                               const JobId& but);

trade::DirtPattern dirt_of_car(const CarView& car, const job::CarPattern& body,
                               std::optional<trade::FlatHistory> history);

}  // namespace jambline::folds
