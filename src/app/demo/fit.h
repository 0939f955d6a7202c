// app/demo/fit.h: the gaps of a car's panels as they are set before paint.
//
// Shape:  every panel of the car that hangs at slots is measured at its usual points. Set: within a
//         few tenths of what is wanted; not yet: it hangs too far forward and too low. Invented,
//         the same each time.
#pragma once

#include "app/demo/correction.h"

namespace jambline::demo {

CarAct trial_fit(bool is_set);

}  // namespace jambline::demo
