// app/demo/customers.h: what is said when a car of the demo shop comes, and who signs when it goes;
// all made up by us. The same car is always the same: by its plate, no random stream is used up.
#pragma once

#include "acts/commands.h"
#include "folds/car_view.h"

namespace jambline::demo {

job::CheckIn invented_check_in(const folds::CarView& car);
acts::Sign signed_by_customer(const folds::CarView& car, job::SignedFor what);

}  // namespace jambline::demo
