// app/demo_pictures/drawn_camera.h: a camera that draws what the demo shop asks it for.
//
// Shape:   JPEG files of 1200 x 900 in `folder`/blobs, each judged like any other picture; their
//          Exif holds the time and now and then an invented place far out at sea.
// Errors:  those of blobs/blob_store.h and picture/read.h. Threads: one at a time.
#pragma once

#include <filesystem>

#include "app/demo/camera.h"

namespace jambline::demo {

Result<Camera> drawn_camera(const std::filesystem::path& folder);

// The JPEG alone.
Result<std::vector<std::uint8_t>> drawn_picture(const PictureWish& wish);

}  // namespace jambline::demo
