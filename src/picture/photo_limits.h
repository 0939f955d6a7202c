// picture/photo_limits.h: where a picture stops being good enough to prove something.
#pragma once

namespace jambline::picture {

inline constexpr int working_px = 640;  // longest side of the gray picture that is judged
inline constexpr double least_sharpness = 60;
inline constexpr double least_mean = 40;
inline constexpr double most_mean = 225;
inline constexpr double most_clipped_percent = 20;
inline constexpr int least_long_side_px = 1200;

}  // namespace jambline::picture
