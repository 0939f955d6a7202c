// job/picture.h: a picture as the record keeps it: what the file is, when its camera says it was
// taken, how good it is as proof, and what was drawn on it.
//
// Shape:   width and height as it is looked at, turned upright. Notes lie in parts of the picture:
//          0, 0 is its upper left corner and 1, 1 the lower right.
// Words:   stand in entries for ever; new ones are added at the end only.
#pragma once

#include <optional>
#include <string>

#include "base/describe.h"
#include "trade/photo_judgement.h"

namespace jambline::job {

enum class PictureFormat : std::uint8_t { Jpeg, Png };
enum class PictureFrom : std::uint8_t { Camera, File, WatchedFolder };
enum class PictureNoteShape : std::uint8_t { Circle, Arrow, Text };

struct PictureFacts {
  Hash file;  // SHA-256 of its bytes: the blob's name
  std::int64_t size_bytes{};
  PictureFormat format{};
  int width_px{};
  int height_px{};
  std::optional<std::string> camera_time = {};  // "2026-11-24T15:40:12", the camera's own clock
  std::optional<int> camera_offset_min = {};    // from UTC, where the camera says so
  bool has_location = false;
  trade::PhotoWord word{};
  double sharpness{};
  double mean{};
  double clipped_percent{};
  std::optional<Hash> preview = {};  // a small JPEG of it, also kept as a blob; travels first
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "file", .doc = "SHA-256 of the file, which is kept as it came"}, self.file);
    visit(Field{.name = "size_bytes", .unit = "byte", .min = 1, .max = 1e12}, self.size_bytes);
    visit(Field{.name = "format"}, self.format);
    visit(Field{.name = "width_px", .unit = "px", .min = 1, .max = 100000}, self.width_px);
    visit(Field{.name = "height_px", .unit = "px", .min = 1, .max = 100000}, self.height_px);
    visit(Field{.name = "camera_time", .doc = "by the camera's own clock"}, self.camera_time);
    visit(Field{.name = "camera_offset_min",
                .unit = "min",
                .doc = "of camera_time from UTC; absent: not said",
                .min = -1080,
                .max = 1080},
          self.camera_offset_min);
    visit(Field{.name = "has_location", .doc = "the file says where it was taken"},
          self.has_location);
    visit(Field{.name = "word", .doc = "how good it is as proof"}, self.word);
    visit(Field{.name = "sharpness", .min = 0, .max = 1e9}, self.sharpness);
    visit(Field{.name = "mean", .doc = "gray, 0 to 255", .min = 0, .max = 255}, self.mean);
    visit(Field{.name = "clipped_percent", .unit = "%", .min = 0, .max = 100},
          self.clipped_percent);
    visit(Field{.name = "preview", .doc = "SHA-256 of a small JPEG of it; absent: there is none"},
          self.preview);
  }
  friend bool operator==(const PictureFacts&, const PictureFacts&) = default;
};

struct PictureNote {
  PictureNoteShape shape{};
  double x{};  // a circle's middle, an arrow's tip, where a text begins
  double y{};
  double to_x{};  // a point on the circle, the arrow's tail; of a text: as x and y
  double to_y{};
  std::string text;  // of a text
  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "shape"}, self.shape);
    visit(Field{.name = "x", .doc = "part of the width", .min = 0, .max = 1}, self.x);
    visit(Field{.name = "y", .doc = "part of the height", .min = 0, .max = 1}, self.y);
    visit(Field{.name = "to_x", .doc = "part of the width", .min = 0, .max = 1}, self.to_x);
    visit(Field{.name = "to_y", .doc = "part of the height", .min = 0, .max = 1}, self.to_y);
    visit(Field{.name = "text"}, self.text);
  }
  friend bool operator==(const PictureNote&, const PictureNote&) = default;
};

}  // namespace jambline::job

template <>
inline constexpr auto jambline::enum_words<jambline::job::PictureFormat> =
    std::to_array<std::string_view>({"jpeg", "png"});
template <>
inline constexpr auto jambline::enum_words<jambline::job::PictureFrom> =
    std::to_array<std::string_view>({"camera", "file", "watched folder"});
template <>
inline constexpr auto jambline::enum_words<jambline::job::PictureNoteShape> =
    std::to_array<std::string_view>({"circle", "arrow", "text"});
