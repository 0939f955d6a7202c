// app/demo_pictures/painting.h: a picture of a car in a shop, drawn.
//
// Same wish, same picture, on every machine with the same Qt. Threads: any.
#pragma once

#include <QImage>

#include "app/demo/camera.h"

namespace jambline::demo {

QImage painting_of(const PictureWish& wish);

}  // namespace jambline::demo
