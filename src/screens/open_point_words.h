// screens/open_point_words.h: what is still open on a car before it goes, in words: for the people
// of the shop and for the customer.
//
// Customer: only what the customer gets to feel: a part that is still to come, work outside, a
// panel
//           or a stage that is not ready. "" it is the shop's own: pictures, approvals, the latch.
#pragma once

#include <QString>

#include "folds/open_points.h"

namespace jambline::screens {

QString words_of(const folds::OpenPoint& point, job::BodyShape body);
QString customer_words(const folds::OpenPoint& point, job::BodyShape body);
QString open_points_words(int count);  // "no open points", "1 open point", "3 open points"

}  // namespace jambline::screens
