// screens/shot_rows.h: wanted pictures as people read them.
//
// Shape:   a row's key is unique in its stage: shot, and panel or kind of mark if it has one.
// Threads: pure.
#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "folds/shots_of_car.h"

namespace jambline::screens {

QString key_of(const folds::WantedShot& wanted);
// "Left door, jamb"; "Nib, before"; "Front left corner".
QString title_of(const folds::WantedShot& wanted, job::BodyShape body);
// "missing", "taken, 2", "poor, kept anyway", "edges not looked at yet".
QString state_words(const folds::WantedShot& wanted, const folds::CarView& car, job::Stage stage);
int shape_of(folds::ShotState state);

// Edges and jambs of a panel are looked at on their picture.
bool asks_edges(const folds::WantedShot& wanted, job::Stage stage);
// The newest of its pictures on which that was not done yet; null: none.
const folds::PictureView* not_looked_at(const folds::WantedShot& wanted, const folds::CarView& car,
                                        job::Stage stage);

// Those that are missing stand first, then those kept though poor, offered, taken.
std::vector<folds::WantedShot> in_order_of_need(std::vector<folds::WantedShot> shots);
// The first that is missing, else nothing.
const folds::WantedShot* next_missing(const std::vector<folds::WantedShot>& shots);

// Stages of the car that want pictures or have some, in their order.
std::vector<job::Stage> stages_with_shots(const folds::CarView& car, const folds::ShopView& shop);
// The one that the car is at, else the first that misses some, else the first.
std::optional<job::Stage> stage_to_take(const folds::CarView& car, const folds::ShopView& shop);
// Where a picture goes that nobody wanted: there, else where the car is, else to check-in.
job::Stage stage_of_free_picture(const folds::CarView& car, const folds::ShopView& shop);

QString missing_words(int missing);  // "1 picture is missing", "3 pictures are missing"; "" none

}  // namespace jambline::screens
