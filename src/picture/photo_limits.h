// picture/photo_limits.h: where a picture stops being good enough to prove something.
//
// Measured: on 64 source pictures (50 rendered panels of our own, 14 photographs of the Debian 12
//           package lomiri-wallpapers-16.04), each good, blurred at three strengths, moved, five
//           stops too dark, and burnt out by a third: 448 pictures. There is no standard.
// Chosen:   on one half, in the gap between its good and its bad pictures: sharpness 31 to 54,
//           crispness 4.3 to 5.3, mean gray 42 to 55 (nearer to 42: black paint is no fault of the
//           light), burnt or black 4 to 33 %.
// Held:     on the other half: false alarms 0 % of 32 good pictures, misses 0.5 % of 192 bad ones;
//           on the half they were chosen on 0 % and 1.0 %. All misses are moved pictures.
//           tests/picture/photo_limits_test.cpp prints them again.
// Not seen: a picture that is sharp, but not where it should be; blur finer than two pixels of 640;
//           a dark or grainy picture of more grain than a sensor's usual one.
#pragma once

namespace jambline::picture {

inline constexpr int working_px = 640;  // longest side of the gray picture that is judged
inline constexpr double least_sharpness = 40;
inline constexpr double least_crispness = 4.6;
inline constexpr double least_mean = 45;
inline constexpr double most_mean = 225;
inline constexpr double most_clipped_percent = 20;
inline constexpr int least_long_side_px = 1200;

}  // namespace jambline::picture
