// screens/map_geometry.h: millimetres of a pattern or a panel on a screen, and what a finger means.
//
// Shape:   map millimetres have y up, pixels (dp) have y down. A MapFrame is a scale and the
//          millimetre that lies in the middle of the view; both are doubles, so that
//          to_mm(to_px(p)) is p within 1e-9 mm at any zoom.
// Touch:   a touch means the nearest mark within 36 dp, else the panel under it. Panels narrower
//          than 72 dp catch 72 dp around their middle. Where two panels compete, both are given and
//          nobody guesses.
// Threads: plain values, pure functions, no Qt.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

#include "job/body_shape.h"
#include "trade/geometry.h"

namespace jambline::screens {

inline constexpr double mark_catch_px = 36;
inline constexpr double panel_catch_px = 72;
inline constexpr double ring_apart_px = 24;
inline constexpr double most_zoom = 40;

struct Point_px {
  double x_px{};
  double y_px{};
  friend bool operator==(const Point_px&, const Point_px&) = default;
};

double distance_px(Point_px a, Point_px b);

class MapFrame {
 public:
  MapFrame() = default;
  // The content as large as it goes into the view with `inset_px` on every side.
  MapFrame(trade::Box_mm content, double width_px, double height_px, double inset_px);

  double px_per_mm() const { return px_per_mm_; }
  double zoom() const;  // 1 = fitted
  Point_px to_px(trade::Point_mm point) const;
  trade::Point_mm to_mm(Point_px point) const;

  // The millimetre under `about` stays where it is, as far as the content stays in view.
  MapFrame zoomed(double factor, Point_px about) const;
  MapFrame moved(double dx_px, double dy_px) const;
  MapFrame fitted() const;
  // The same middle and zoom in a view of another size.
  MapFrame resized(double width_px, double height_px) const;
  MapFrame shown(trade::Box_mm part) const;  // that part as large as it goes

 private:
  MapFrame held() const;

  trade::Box_mm content_;
  double width_px_ = 0;
  double height_px_ = 0;
  double inset_px_ = 0;
  double fit_px_per_mm_ = 1;
  double px_per_mm_ = 1;
  trade::Point_mm middle_;
};

// Rings that would lie closer than `apart_px` become one, at the middle of what it holds. Gives
// groups of indices, each ascending, in order of their first index.
std::vector<std::vector<std::size_t>> merged(const std::vector<Point_px>& marks,
                                             double apart_px = ring_apart_px);
Point_px middle_of(const std::vector<Point_px>& marks, const std::vector<std::size_t>& group);

std::optional<std::size_t> nearest(const std::vector<Point_px>& marks, Point_px touch,
                                   double within_px = mark_catch_px);

struct PickedPanel {
  std::size_t index{};
  std::optional<std::size_t> rival;  // zoom to both
};
// `outlines` in map millimetres.
std::optional<PickedPanel> pick_panel(const MapFrame& frame,
                                      const std::vector<trade::Polygon>& outlines, Point_px touch);

// How a panel is shown alone: as one stands before it; hood and roof with the front at the top.
trade::Placement upright(const job::PatternPanel& panel);

// Where a word fits best: inside the outline, far from its edge and from the glass.
struct LabelSpot {
  trade::Point_mm middle;
  double width_mm{};  // free to both sides at that height
};
LabelSpot label_spot(const trade::Polygon& outline, const std::vector<trade::Polygon>& glass);

// The ninth of a panel, 0 to 2 from what one calls low to high in the words below.
enum class Rise : std::uint8_t { Lower, Middle, Upper };
struct Ninth {
  int column{};  // of the upright drawing, from the left
  Rise rise{};
  friend bool operator==(const Ninth&, const Ninth&) = default;
};
Ninth ninth(trade::Box_mm box, trade::Point_mm point);

// A round length not longer than `most_px`: 300 mm, or whole inches.
double scale_bar_mm(double px_per_mm, double most_px, bool metric);

}  // namespace jambline::screens
