// app/record/picture_lines.h: a car's pictures in plain lines, for the command line.
//
// Shape:   plain US English, never more than one line each; what a person needs to find the file.
// Threads: any.
#pragma once

#include <cstdint>
#include <string>

#include "folds/car_view.h"
#include "folds/shop_view.h"

namespace jambline::app {

// "check-in, front left corner"; of a shot that is not wanted any more only stage and panel.
std::string place_of(const folds::PictureView& picture, const folds::ShopView& shop);
// "812,345 bytes".
std::string bytes_of(std::uint64_t size_bytes);
std::string ending_of(const folds::PictureView& picture);  // ".jpg" or ".png"

}  // namespace jambline::app
