// app/jambline/pictures.h: the screens of the main job as PNG files, at the sizes they are judged
// at.
//
// 412 x 892 light and dark, 412 x 892 with large text for the busiest ones, and the floor and the
// inspection at 900 x 1200 and 1440 x 900. GUI thread; runs its own event loop meanwhile.
#pragma once

#include <filesystem>

#include "app/jambline/program.h"

namespace jambline::app {

// Every screen once, without a file; false when one did not come.
bool visit_screens(Program& program);
// The number of pictures, or which one could not be made.
Result<int> draw_pictures(Program& program, const std::filesystem::path& folder);

}  // namespace jambline::app
