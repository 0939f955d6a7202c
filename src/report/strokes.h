// report/strokes.h: a signature as an image. Pure.
#pragma once

#include <QImage>
#include <vector>

#include "job/check_in.h"

namespace jambline::report {

QImage drawn(const std::vector<job::Stroke>& strokes);

}  // namespace jambline::report
