// Where things stand on a chart: ticks, the view, labels, what is under a finger.
//
// Units:   days since 1970-01-01 (local, with parts), dp. Words by the locale.
// Threads: pure functions.
#pragma once

#include <QString>
#include <vector>

namespace jambline::theme {

// From 0 to the first step at or over `high`, in steps of 1, 2 or 5 times a power of ten; `most`
// ticks at most (2 or more). high 0 or less counts as 1.
std::vector<double> round_ticks(double high, int most);
QString tick_words(double value, double step);  // as many decimals as the step has

struct DayTick {
  double day{};
  QString words;
  friend bool operator==(const DayTick&, const DayTick&) = default;
};
// On whole days, Mondays, first days of months or of years; `most` at most, first tick within.
// January of a row of months says the year.
std::vector<DayTick> day_ticks(double from_day, double to_day, int most);

// The height of a chart: one far-off value does not press the others flat.
double chart_top(std::vector<double> values, std::vector<double> limits);

struct DayView {
  double from_day{};
  double to_day{};
  double length_days() const { return to_day - from_day; }
  friend bool operator==(const DayView&, const DayView&) = default;
};
// Never outside of `whole`, never shorter than 3 days (or the whole).
DayView zoomed(const DayView& view, const DayView& whole, double factor, double at_day);
DayView moved(const DayView& view, const DayView& whole, double by_days);

struct LabelWish {
  double at{};     // where its line is
  double width{};  // of the words
  bool first = false;
};
struct LabelPlace {
  int lane = -1;  // 0 is nearest to the chart; -1: no room, no label
  double left{};
  friend bool operator==(const LabelPlace&, const LabelPlace&) = default;
};
// Labels stand right of their line, or left of it where the room ends, or over it where neither is
// room enough; none lies on another and none crosses the line of one that stands higher. Those that
// wish to be first choose first.
std::vector<LabelPlace> place_labels(const std::vector<LabelWish>& wishes, int lanes, double room,
                                     double gap);

// The number of the nearest within `reach`; -1: none. Of two as near, the later one.
int nearest(const std::vector<double>& xs, const std::vector<double>& ys, double x, double y,
            double reach);

// 0 to 1 on a line from 1/reach to reach, 1 in the middle; outside at the ends, 0 at the low end.
double log_place(double value, double reach);

}  // namespace jambline::theme
