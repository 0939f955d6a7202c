// app/demo/camera.h: what the demo shop's camera is asked for; whoever can draw hands one in.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "base/error.h"
#include "job/body_shape.h"
#include "job/car.h"
#include "job/mark.h"
#include "job/picture.h"
#include "job/shot.h"

namespace jambline::demo {

enum class Surface : std::uint8_t { Damaged, Primed, Fresh, Finished };

struct PictureWish {
  job::ShotView view{};
  std::optional<job::Panel> panel;
  job::BodyShape body{};
  job::Color color;
  std::string vin;
  Surface surface{};
  std::vector<job::DefectKind> seen;  // marks and edge finds in the picture
  trade::PhotoWord word{};            // Good, or what it is spoilt by
  std::string camera_time;            // "2026-11-24T15:40:12"
  int offset_min{};
  bool says_place = false;
  std::uint64_t seed{};
};

// Takes the picture, keeps its file, says what it is like.
using Camera = std::function<Result<job::PictureFacts>(const PictureWish& wish)>;

}  // namespace jambline::demo
