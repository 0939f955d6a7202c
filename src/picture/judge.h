// picture/judge.h: a decoded picture held against picture/photo_limits.h.
//
// Takes:   the picture upright, as large as it was decoded, and how large it was taken.
// Errors:  those of trade::judge_photo. Threads: any but the one that draws; pure.
#pragma once

#include <QImage>

#include "base/error.h"
#include "trade/photo_judgement.h"

namespace jambline::picture {

Result<trade::PhotoJudgementResult> judge(const QImage& image, int taken_width_px,
                                          int taken_height_px);

}  // namespace jambline::picture
