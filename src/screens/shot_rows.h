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
QString state_words(const folds::WantedShot& wanted);  // "missing", "taken, 2", "kept though poor"
int shape_of(folds::ShotState state);

// Those that are missing stand first, then those kept though poor, offered, taken.
std::vector<folds::WantedShot> in_order_of_need(std::vector<folds::WantedShot> shots);
// The first that is missing, else nothing.
const folds::WantedShot* next_missing(const std::vector<folds::WantedShot>& shots);

QString missing_words(int missing);  // "1 picture is missing", "3 pictures are missing"; "" none

}  // namespace jambline::screens
