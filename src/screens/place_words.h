// screens/place_words.h: where on a panel, in words: "upper rear", "left front".
//
// The ninth is of the panel drawn upright (screens/map_geometry.h). Words follow the car, not the
// viewer: the left of a front bumper cover is the car's left.
#pragma once

#include <QString>

#include "job/panel.h"
#include "screens/map_geometry.h"

namespace jambline::screens {

QString place_words(job::Panel panel, Ninth where);

}  // namespace jambline::screens
