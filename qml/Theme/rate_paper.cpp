#include "rate_paper.h"

#include <QFontMetricsF>
#include <QPainterPath>
#include <algorithm>
#include <cmath>

#include "face.h"

using namespace jambline::theme;

namespace {
constexpr int most_lanes = 3;
constexpr double flag_width = 12;
constexpr double finger = 24;

std::vector<double> numbers(const QList<qreal>& list, int count) {
  return {list.begin(), list.begin() + count};
}
}  // namespace

QFont RatePaper::font(bool bold) const {
  QFont out;
  out.setFamilies(faceFamilies(family_));
  out.setPixelSize(std::max(1, size_));
  out.setBold(bold);
  return out;
}

int RatePaper::count() const {
  return static_cast<int>(std::min(
      {days_.size(), rates_.size(), lows_.size(), highs_.size(), centers_.size(), looks_.size()}));
}

void RatePaper::refresh() {
  const DayView before = all_;
  const bool was_near = near();
  const int points = count();
  all_ = {};
  if (points > 0) {
    const double edge = std::max(0.5, (days_[points - 1] - days_[0]) * 0.015);
    all_ = {days_[0] - edge, days_[points - 1] + edge};
  }
  if (all_ != before) {
    view_ = was_near ? moved(view_, all_, 0) : all_;
    emit viewChanged();
  }
  lay_out();
  Paper::refresh();
}

void RatePaper::lay_out() {
  const int points = count();
  const QFontMetricsF thin(font(false));
  const QFontMetricsF bold(font(true));
  const double line = std::ceil(thin.height());
  top_ = chart_top(numbers(rates_, points), numbers(highs_, points));
  const double rough = height() - 2 * line;
  ticks_ = round_ticks(top_, std::clamp(static_cast<int>(rough / (2.2 * line)), 2, 6));
  top_ = ticks_.back();
  const double step = ticks_.size() > 1 ? ticks_[1] : 1;
  double left = 0;
  for (const double tick : ticks_)
    left = std::max(left, thin.horizontalAdvance(tick_words(tick, step)));
  plot_ = QRectF(QPointF(std::ceil(left) + 8, 0), QPointF(width() - 6, height() - line - 8));

  labels_.clear();
  std::vector<LabelWish> wishes;
  const auto flags = std::min({flag_days_.size(), flag_words_.size(), flag_strong_.size()});
  for (qsizetype i = 0; i < flags; ++i) {
    if (flag_days_[i] < view_.from_day || flag_days_[i] > view_.to_day) continue;
    const bool strong = flag_strong_[i] != 0;
    const double words = (strong ? bold : thin).horizontalAdvance(flag_words_[i]);
    labels_.push_back({flag_words_[i], x_of(flag_days_[i]), flag_width + words + 6, strong, {}});
    wishes.push_back({labels_.back().at - plot_.left(), labels_.back().width, strong});
  }
  const int lanes_for = std::clamp(static_cast<int>((height() / line - 7) / 2), 1, most_lanes);
  const auto places = place_labels(wishes, lanes_for, plot_.width(), 4);
  int lanes = labels_.empty() ? 0 : 1;
  for (std::size_t i = 0; i < places.size(); ++i) {
    labels_[i].place = places[i];
    lanes = std::max(lanes, places[i].lane + 1);
  }
  plot_.setTop(lanes * (line + 2) + line / 2);
  emit laidOut();
}

void RatePaper::set_view(const DayView& view) {
  if (view == view_) return;
  view_ = view;
  lay_out();
  update();
  emit viewChanged();
}

void RatePaper::zoomBy(double factor, double x) {
  if (plot_.width() <= 0 || !(factor > 0)) return;
  const double at = view_.from_day + (x - plot_.left()) / plot_.width() * view_.length_days();
  set_view(zoomed(view_, all_, factor, std::clamp(at, view_.from_day, view_.to_day)));
}

void RatePaper::moveBy(double dx) {
  if (plot_.width() > 0) set_view(moved(view_, all_, -dx / plot_.width() * view_.length_days()));
}

void RatePaper::whole() {
  set_view(all_);
}

void RatePaper::show(int point) {
  if (point < 0 || point >= count()) return;
  const double day = days_[point];
  const double edge = view_.length_days() * 0.05;
  if (day < view_.from_day + edge)
    set_view(moved(view_, all_, day - edge - view_.from_day));
  else if (day > view_.to_day - edge)
    set_view(moved(view_, all_, day + edge - view_.to_day));
}

double RatePaper::x_of(double day) const {
  return plot_.left() + (day - view_.from_day) / view_.length_days() * plot_.width();
}

double RatePaper::y_of(double rate) const {
  return plot_.bottom() - std::min(rate, top_) / top_ * plot_.height();
}

QPointF RatePaper::placeOf(int point) const {
  if (point < 0 || point >= count()) return {};
  return {x_of(days_[point]), y_of(rates_[point])};
}

int RatePaper::at(double x, double y) const {
  std::vector<double> xs;
  std::vector<double> ys;
  const auto [first, last] = in_view();
  for (int i = first; i < last; ++i) {
    const QPointF place = placeOf(i);
    xs.push_back(place.x());
    ys.push_back(place.y());
  }
  const int found = nearest(xs, ys, x, y, finger);
  return found < 0 ? -1 : first + found;
}

std::pair<int, int> RatePaper::in_view() const {
  const auto end = days_.begin() + count();
  const auto low = std::lower_bound(days_.begin(), end, view_.from_day);
  const auto high = std::upper_bound(low, end, view_.to_day);
  return {std::max(0, static_cast<int>(low - days_.begin()) - 1),
          std::min(count(), static_cast<int>(high - days_.begin()) + 1)};
}

void RatePaper::paint(QPainter* painter) {
  painter->setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
  if (count() == 0 || plot_.width() <= 0 || plot_.height() <= 0) return;
  paint_edges(*painter);
  paint_axes(*painter);
  paint_flags(*painter);
  paint_points(*painter);
}

RatePaper::Steps RatePaper::steps() const {
  Steps out;
  if (count() == 0 || plot_.width() <= 0 || plot_.height() <= 0) return out;
  const auto [first, last] = in_view();
  double center = -1;
  for (int i = first; i < last; ++i) {
    const auto inside = [&](double x) { return std::clamp(x, plot_.left(), plot_.right()); };
    const double here = x_of(days_[i]);
    const double left = inside(i > first ? (x_of(days_[i - 1]) + here) / 2 : plot_.left());
    const double right = inside(i + 1 < last ? (here + x_of(days_[i + 1])) / 2 : plot_.right());
    out.low << QPointF(left, y_of(lows_[i])) << QPointF(right, y_of(lows_[i]));
    out.high << QPointF(left, y_of(highs_[i])) << QPointF(right, y_of(highs_[i]));
    const double y = y_of(centers_[i]);
    if (out.middle.empty() || centers_[i] != center)
      out.middle.push_back(QPolygonF() << QPointF(left, y));
    out.middle.back() << QPointF(right, y);
    center = centers_[i];
  }
  return out;
}

QVariant RatePaper::bandOutline() const {
  Steps outline = steps();
  std::for_each(outline.low.rbegin(), outline.low.rend(),
                [&](const QPointF& point) { outline.high << point; });
  return QVariant::fromValue(outline.high);
}

QVariantList RatePaper::middleLines() const {
  QVariantList out;
  for (const QPolygonF& one : steps().middle) out << QVariant::fromValue(one);
  return out;
}

// Dashes where one can see them as such.
void RatePaper::paint_edges(QPainter& painter) const {
  const auto [first, last] = in_view();
  if (last - first > 120) return;
  const Steps outline = steps();
  QPen edge(edge_, 1);
  edge.setDashPattern({4, 3});
  painter.setPen(edge);
  painter.setBrush(Qt::NoBrush);
  painter.drawPolyline(outline.high);
  painter.drawPolyline(outline.low);
}

void RatePaper::paint_axes(QPainter& painter) const {
  painter.setFont(font(false));
  const QFontMetricsF metrics(painter.font());
  const double step = ticks_.size() > 1 ? ticks_[1] : 1;
  for (const double tick : ticks_) {
    const double y = std::round(y_of(tick)) + 0.5;
    painter.setPen(QPen(tick > 0 ? grid_ : pencil_, 1));
    painter.drawLine(QPointF(plot_.left(), y), QPointF(plot_.right(), y));
    painter.setPen(pencil_);
    const QString words = tick_words(tick, step);
    const double base = std::max(metrics.ascent(), y + metrics.ascent() / 2 - 2);
    painter.drawText(QPointF(plot_.left() - 6 - metrics.horizontalAdvance(words), base), words);
  }
  const double wide = metrics.horizontalAdvance(QStringLiteral("Nov 24")) + 20;
  const int most = std::max(1, static_cast<int>(plot_.width() / wide));
  for (const auto& tick : day_ticks(view_.from_day, view_.to_day, most)) {
    const double x = std::round(x_of(tick.day)) + 0.5;
    painter.setPen(QPen(pencil_, 1));
    painter.drawLine(QPointF(x, plot_.bottom()), QPointF(x, plot_.bottom() + 5));
    const double words = metrics.horizontalAdvance(tick.words);
    const double left = std::clamp(x - words / 2, 0.0, std::max(0.0, width() - words));
    painter.drawText(QPointF(left, plot_.bottom() + 7 + metrics.ascent()), tick.words);
  }
}

void RatePaper::paint_flags(QPainter& painter) const {
  const double line = std::ceil(QFontMetricsF(font(false)).height()) + 2;
  const double foot = plot_.top() - (line - 2) / 2;  // of the lowest lane
  for (const Label& label : labels_) {
    const double x = std::round(label.at);
    const int lane = std::max(0, label.place.lane);
    const double top = foot - (lane + 1) * line;
    const double from = plot_.left() + label.place.left;
    const bool rightwards = from >= label.at - 0.5;
    const bool leftwards = from + label.width <= label.at + 0.5;
    const bool over = !rightwards && !leftwards;
    painter.setPen(QPen(label.strong ? ink_ : pencil_, label.strong ? 2 : 1));
    painter.drawLine(QPointF(x, label.place.lane < 0 ? foot
                                : over               ? top + line
                                                     : top + 1),
                     QPointF(x, plot_.bottom()));
    if (label.place.lane < 0) continue;
    if (!over) {
      const double out = rightwards ? flag_width - 2 : -(flag_width - 2);
      painter.setBrush(label.strong ? flag_ : ground_);
      painter.drawPolygon(
          QPolygonF({QPointF(x, top + 2), QPointF(x + out, top + 2),
                     QPointF(x + out * 0.7, top + line / 2 - 1), QPointF(x + out, top + line - 4),
                     QPointF(x, top + line - 4)}));
    }
    painter.setFont(font(label.strong));
    painter.setPen(label.strong ? ink_ : pencil_);
    const double left = from + (rightwards ? flag_width + 3 : 3);
    painter.drawText(QPointF(left, top + QFontMetricsF(painter.font()).ascent()), label.words);
  }
}

void RatePaper::paint_points(QPainter& painter) const {
  const auto [first, last] = in_view();
  const LookColors colors{pencil_, more_, less_, ground_};
  const double dot = last - first <= 120 ? 6 : last - first <= 500 ? 4.4 : 3.2;
  QPainterPath dots;
  dots.setFillRule(Qt::WindingFill);
  for (int i = first; i < last; ++i)
    if (looks_[i] == static_cast<int>(ChartLook::Value::Plain) && rates_[i] <= top_)
      dots.addEllipse(placeOf(i), dot / 2, dot / 2);
  painter.save();
  painter.setClipRect(plot_.adjusted(-1, -8, 1, 8));
  painter.fillPath(dots, pencil_);
  for (int i = first; i < last; ++i) {
    const QPointF place = placeOf(i);
    if (looks_[i] != static_cast<int>(ChartLook::Value::Plain))
      draw_look(painter, place, looks_[i], last - first <= 120 ? 13 : 10, colors);
    if (rates_[i] > top_) {  // it is higher than the chart: an arrow
      painter.setPen(QPen(ink_, 1.6));
      painter.drawLine(place + QPointF(0, -6), place + QPointF(-4, -1));
      painter.drawLine(place + QPointF(0, -6), place + QPointF(4, -1));
    }
  }
  painter.restore();
  if (chosen_ < 0 || chosen_ >= count() || days_[chosen_] < view_.from_day ||
      days_[chosen_] > view_.to_day)
    return;
  const QPointF place = placeOf(chosen_);
  painter.setPen(QPen(here_, 1));
  const double ring = 9;
  painter.drawLine(QPointF(place.x(), plot_.top()), place - QPointF(0, ring));
  painter.drawLine(place + QPointF(0, ring), QPointF(place.x(), plot_.bottom()));
  painter.setPen(QPen(here_, 2.5));
  painter.setBrush(Qt::NoBrush);
  painter.drawEllipse(place, ring, ring);
}
