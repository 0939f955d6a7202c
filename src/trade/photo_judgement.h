// trade/photo_judgement.h: is a picture good enough to prove something?
//
// Sharp:   variance of the Laplacian (kernel 0 1 0 / 1 -4 1 / 0 1 0, edges mirrored without
//          repeating the edge, population variance), Pech-Pacheco et al. 2000, on gray at one
//          working size: never compared across sizes.
// Light:   mean gray; share of pixels black or white.
// Limits:  thresholds are of a measured set of pictures and are passed in; there is no standard.
// Shape:   gray values row by row, 0 to 255.
// Errors:  OutOfRange, Missing, Malformed (count is not width x height). Threads: pure.
#pragma once

#include <array>
#include <string_view>

#include "base/error.h"
#include "trade/basis.h"

namespace jambline::trade {

enum class PhotoWord : std::uint8_t { Good, Blurred, TooDark, TooBright, Clipped, TooSmall };

struct GrayPicture {
  int width{};
  int height{};
  std::vector<double> gray;  // 0 to 255

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "width", .unit = "px", .min = 3, .max = 20000}, self.width);
    visit(Field{.name = "height", .unit = "px", .min = 3, .max = 20000}, self.height);
    visit(Field{.name = "gray", .doc = "row by row", .min = 0, .max = 255}, self.gray);
  }
};

// width and height of 3 at least, gray of their product.
double laplacian_variance(const GrayPicture& picture);

struct PhotoJudgement {
  GrayPicture picture;  // scaled to the working size
  int taken_width{};    // of the picture as it was taken
  int taken_height{};
  double least_sharpness = 60;
  double least_mean = 40;
  double most_mean = 225;
  double most_clipped_percent = 20;
  int least_long_side = 1200;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "picture"}, self.picture);
    visit(Field{.name = "taken_width", .unit = "px", .min = 1, .max = 100000}, self.taken_width);
    visit(Field{.name = "taken_height", .unit = "px", .min = 1, .max = 100000}, self.taken_height);
    visit(Field{.name = "least_sharpness", .min = 0, .max = 1e6}, self.least_sharpness);
    visit(Field{.name = "least_mean", .min = 0, .max = 255}, self.least_mean);
    visit(Field{.name = "most_mean", .min = 0, .max = 255}, self.most_mean);
    visit(Field{.name = "most_clipped_percent", .unit = "%", .min = 0, .max = 100},
          self.most_clipped_percent);
    visit(Field{.name = "least_long_side", .unit = "px", .min = 1, .max = 100000},
          self.least_long_side);
  }
};

struct PhotoJudgementResult {
  PhotoWord word{};  // the first that is wrong, in the order: size, light, clipping, sharpness
  double sharpness{};
  double mean{};
  double clipped_percent{};
  Basis basis;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "word"}, self.word);
    visit(Field{.name = "sharpness"}, self.sharpness);
    visit(Field{.name = "mean"}, self.mean);
    visit(Field{.name = "clipped_percent", .unit = "%"}, self.clipped_percent);
    visit(Field{.name = "basis"}, self.basis);
  }
};

Result<PhotoJudgementResult> judge_photo(const PhotoJudgement& judgement);

}  // namespace jambline::trade

template <>
inline constexpr auto jambline::enum_words<jambline::trade::PhotoWord> =
    std::to_array<std::string_view>({"good", "blurred", "too dark", "too bright", "clipped",
                                     "too small"});
