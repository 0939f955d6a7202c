// picture/crispness.h: how much a picture loses when it is blurred a little more.
//
// Means:   a crisp picture loses nearly all of its finest differences, a blurred one has few to
// lose.
//          Taken along rows and along columns, the lower of the two: a hand that moved blurs one
//          direction and leaves the other crisp, which the variance of the Laplacian does not see.
// Shape:   no unit; below 0 to about 30. What a sensor's grain leaves at 640 px is taken off first.
// Source:  the idea of F. Crete et al., "The blur effect", SPIE 6492 (2007), with squared second
//          differences in place of their sums.
// Threads: pure.
#pragma once

#include "trade/photo_judgement.h"

namespace jambline::picture {

// width and height of 3 at least, gray of their product.
double crispness(const trade::GrayPicture& picture);

}  // namespace jambline::picture
