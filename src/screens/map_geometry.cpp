#include "screens/map_geometry.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace jambline::screens {

using trade::Box_mm;
using trade::Point_mm;
using trade::Polygon;

double distance_px(Point_px a, Point_px b) {
  return std::hypot(a.x_px - b.x_px, a.y_px - b.y_px);
}

MapFrame::MapFrame(Box_mm content, double width_px, double height_px, double inset_px)
    : content_(content), width_px_(width_px), height_px_(height_px), inset_px_(inset_px) {
  const double room_x_px = std::max(1.0, width_px - 2 * inset_px);
  const double room_y_px = std::max(1.0, height_px - 2 * inset_px);
  const double across_mm = std::max(1.0, content.width_mm());
  const double up_mm = std::max(1.0, content.height_mm());
  fit_px_per_mm_ = std::min(room_x_px / across_mm, room_y_px / up_mm);
  px_per_mm_ = fit_px_per_mm_;
  middle_ = {(content.low.x_mm + content.high.x_mm) / 2,
             (content.low.y_mm + content.high.y_mm) / 2};
}

double MapFrame::zoom() const {
  return px_per_mm_ / fit_px_per_mm_;
}

Point_px MapFrame::to_px(Point_mm point) const {
  return {width_px_ / 2 + (point.x_mm - middle_.x_mm) * px_per_mm_,
          height_px_ / 2 - (point.y_mm - middle_.y_mm) * px_per_mm_};
}

Point_mm MapFrame::to_mm(Point_px point) const {
  return {middle_.x_mm + (point.x_px - width_px_ / 2) / px_per_mm_,
          middle_.y_mm - (point.y_px - height_px_ / 2) / px_per_mm_};
}

MapFrame MapFrame::held() const {
  MapFrame out = *this;
  const auto hold = [&](double middle, double low, double high, double view_px) {
    const double half_mm = (view_px / 2 - inset_px_) / px_per_mm_;
    const double least = low + half_mm;
    const double most = high - half_mm;
    return least > most ? (low + high) / 2 : std::clamp(middle, least, most);
  };
  out.middle_.x_mm = hold(middle_.x_mm, content_.low.x_mm, content_.high.x_mm, width_px_);
  out.middle_.y_mm = hold(middle_.y_mm, content_.low.y_mm, content_.high.y_mm, height_px_);
  return out;
}

MapFrame MapFrame::zoomed(double factor, Point_px about) const {
  MapFrame out = *this;
  const Point_mm under = to_mm(about);
  out.px_per_mm_ = std::clamp(px_per_mm_ * factor, fit_px_per_mm_, fit_px_per_mm_ * most_zoom);
  out.middle_ = {under.x_mm - (about.x_px - width_px_ / 2) / out.px_per_mm_,
                 under.y_mm + (about.y_px - height_px_ / 2) / out.px_per_mm_};
  return out.held();
}

MapFrame MapFrame::moved(double dx_px, double dy_px) const {
  MapFrame out = *this;
  out.middle_.x_mm -= dx_px / px_per_mm_;
  out.middle_.y_mm += dy_px / px_per_mm_;
  return out.held();
}

MapFrame MapFrame::fitted() const {
  return {content_, width_px_, height_px_, inset_px_};
}

MapFrame MapFrame::resized(double width_px, double height_px) const {
  MapFrame out(content_, width_px, height_px, inset_px_);
  out.px_per_mm_ = out.fit_px_per_mm_ * zoom();
  out.middle_ = middle_;
  return out.held();
}

MapFrame MapFrame::shown(Box_mm part) const {
  const MapFrame close(part, width_px_, height_px_, inset_px_);
  MapFrame out = *this;
  out.px_per_mm_ = std::clamp(close.px_per_mm_, fit_px_per_mm_, fit_px_per_mm_ * most_zoom);
  out.middle_ = close.middle_;
  return out.held();
}

Point_px middle_of(const std::vector<Point_px>& marks, const std::vector<std::size_t>& group) {
  Point_px sum;
  for (const std::size_t index : group) {
    sum.x_px += marks[index].x_px;
    sum.y_px += marks[index].y_px;
  }
  const auto count = static_cast<double>(std::max<std::size_t>(1, group.size()));
  return {sum.x_px / count, sum.y_px / count};
}

std::vector<std::vector<std::size_t>> merged(const std::vector<Point_px>& marks, double apart_px) {
  std::vector<std::vector<std::size_t>> groups;
  std::vector<Point_px> middles;
  for (std::size_t i = 0; i < marks.size(); ++i) {
    groups.push_back({i});
    middles.push_back(marks[i]);
  }
  for (;;) {
    double best_px = apart_px;
    std::size_t into = 0;
    std::size_t from = 0;
    for (std::size_t a = 0; a < groups.size(); ++a)
      for (std::size_t b = a + 1; b < groups.size(); ++b)
        if (const double apart = distance_px(middles[a], middles[b]); apart < best_px) {
          best_px = apart;
          into = a;
          from = b;
        }
    if (from == 0) break;
    groups[into].insert(groups[into].end(), groups[from].begin(), groups[from].end());
    std::sort(groups[into].begin(), groups[into].end());
    middles[into] = middle_of(marks, groups[into]);
    groups.erase(groups.begin() + static_cast<std::ptrdiff_t>(from));
    middles.erase(middles.begin() + static_cast<std::ptrdiff_t>(from));
  }
  std::sort(groups.begin(), groups.end());
  return groups;
}

std::optional<std::size_t> nearest(const std::vector<Point_px>& marks, Point_px touch,
                                   double within_px) {
  std::optional<std::size_t> best;
  double best_px = within_px;
  for (std::size_t i = 0; i < marks.size(); ++i)
    if (const double away = distance_px(marks[i], touch);
        away < best_px || (away == best_px && !best)) {
      best = i;
      best_px = away;
    }
  return best;
}

namespace {

constexpr double unsure_px = 6;  // this near to a narrow neighbor nobody can tell

bool is_narrow(const Box_mm& box, double px_per_mm) {
  return std::min(box.width_mm(), box.height_mm()) * px_per_mm < panel_catch_px;
}

bool catches(const Box_mm& box, double px_per_mm, Point_mm point) {
  const double widened_mm = panel_catch_px / px_per_mm;
  const double half_x_mm = std::max(box.width_mm(), widened_mm) / 2;
  const double half_y_mm = std::max(box.height_mm(), widened_mm) / 2;
  return std::abs(point.x_mm - (box.low.x_mm + box.high.x_mm) / 2) <= half_x_mm &&
         std::abs(point.y_mm - (box.low.y_mm + box.high.y_mm) / 2) <= half_y_mm;
}

}  // namespace

std::optional<PickedPanel> pick_panel(const MapFrame& frame, const std::vector<Polygon>& outlines,
                                      Point_px touch) {
  const Point_mm point = frame.to_mm(touch);
  const double px_per_mm = frame.px_per_mm();
  std::optional<std::size_t> inside;
  for (std::size_t i = 0; i < outlines.size() && !inside; ++i)
    if (trade::contains(outlines[i], point)) inside = i;
  const bool wide = inside && !is_narrow(trade::bounds(outlines[*inside].corners), px_per_mm);

  std::optional<std::size_t> best;
  std::optional<std::size_t> second;
  double best_px = 0;
  double second_px = 0;
  for (std::size_t i = 0; i < outlines.size(); ++i) {
    if (inside == i) continue;
    const Box_mm box = trade::bounds(outlines[i].corners);
    if (!is_narrow(box, px_per_mm) || !catches(box, px_per_mm, point)) continue;
    const double away_px = trade::distance_to_edge_mm(point, outlines[i]) * px_per_mm;
    if (!best || away_px < best_px) {
      second = best;
      second_px = best_px;
      best = i;
      best_px = away_px;
    } else if (!second || away_px < second_px) {
      second = i;
      second_px = away_px;
    }
  }
  if (inside) {
    const bool rival = wide && best && best_px <= unsure_px;
    return PickedPanel{*inside, rival ? best : std::nullopt};
  }
  if (!best) return std::nullopt;
  const bool rival = second && second_px - best_px <= unsure_px;
  return PickedPanel{*best, rival ? second : std::nullopt};
}

trade::Placement upright(const job::PatternPanel& panel) {
  trade::Placement place;
  if (panel.panel == job::Panel::Hood || panel.panel == job::Panel::Roof) {
    place = panel.place;
    place.shift = {};
    const Box_mm box = trade::bounds(place.apply(panel.shape.outline).corners);
    place.shift = {-box.low.x_mm, -box.low.y_mm};
  }
  return place;
}

LabelSpot label_spot(const Polygon& outline, const std::vector<Polygon>& glass) {
  constexpr int steps = 24;
  const Box_mm box = trade::bounds(outline.corners);
  const auto is_free = [&](Point_mm point) {
    if (!trade::contains(outline, point)) return false;
    return std::none_of(glass.begin(), glass.end(),
                        [&](const Polygon& pane) { return trade::contains(pane, point); });
  };
  const auto room_mm = [&](Point_mm point) {
    double room = trade::distance_to_edge_mm(point, outline);
    for (const Polygon& pane : glass)
      room = std::min(room, trade::distance_to_edge_mm(point, pane));
    return room;
  };
  LabelSpot best{{(box.low.x_mm + box.high.x_mm) / 2, (box.low.y_mm + box.high.y_mm) / 2}, 0};
  double most_mm = -1;
  for (int row = 1; row < steps; ++row)
    for (int column = 1; column < steps; ++column) {
      const Point_mm point{box.low.x_mm + box.width_mm() * column / steps,
                           box.low.y_mm + box.height_mm() * row / steps};
      if (!is_free(point)) continue;
      const double off_middle_mm = trade::distance_mm(
          point, {(box.low.x_mm + box.high.x_mm) / 2, (box.low.y_mm + box.high.y_mm) / 2});
      if (const double room = room_mm(point) - 0.12 * off_middle_mm; room > most_mm) {
        most_mm = room;
        best.middle = point;
      }
    }
  const double step_mm = std::max(1.0, box.width_mm() / 100);
  double half_mm = 0;
  while (half_mm < box.width_mm() &&
         is_free({best.middle.x_mm - half_mm - step_mm, best.middle.y_mm}) &&
         is_free({best.middle.x_mm + half_mm + step_mm, best.middle.y_mm}))
    half_mm += step_mm;
  best.width_mm = 2 * half_mm;
  return best;
}

Ninth ninth(Box_mm box, Point_mm point) {
  const auto third = [](double at, double low, double size) {
    return size <= 0 ? 1 : std::clamp(static_cast<int>(std::floor(3 * (at - low) / size)), 0, 2);
  };
  return {third(point.x_mm, box.low.x_mm, box.width_mm()),
          static_cast<Rise>(third(point.y_mm, box.low.y_mm, box.height_mm()))};
}

double scale_bar_mm(double px_per_mm, double most_px, bool metric) {
  constexpr std::array metric_mm{1.0,   2.0,   5.0,   10.0,  20.0,   30.0,  50.0,
                                 100.0, 200.0, 300.0, 500.0, 1000.0, 2000.0};
  constexpr std::array inches{0.125, 0.25, 0.5, 1.0, 2.0, 3.0, 6.0, 12.0, 24.0, 48.0, 96.0};
  double best = 0;
  if (metric) {
    for (const double mm : metric_mm)
      if (best == 0 || mm * px_per_mm <= most_px) best = mm;
  } else {
    for (const double inch : inches)
      if (best == 0 || inch * 25.4 * px_per_mm <= most_px) best = inch * 25.4;
  }
  return best;
}

}  // namespace jambline::screens
