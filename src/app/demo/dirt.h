// app/demo/dirt.h: how much dirt falls on a panel of the demo shop, and why.
//
// The causes below are nowhere in the entries; screens that look for causes have to find them.
// Rates:   nibs per m2 of a clean booth: common practice, no source.
#pragma once

#include <vector>

#include "acts/commands.h"
#include "base/random.h"
#include "job/body_shape.h"

namespace jambline::demo {

// Days before the shop is looked at.
inline constexpr int filter_changed_days_ago = 233;  // ceiling filter: less dirt from then on
inline constexpr int hose_bad_from_days_ago = 484;   // a hose sheds its skin where it is pulled
inline constexpr int hose_bad_until_days_ago = 396;  // over a panel
inline constexpr int hose_lane = 2;                  // only cars of the early afternoon meet it

inline constexpr double flat_per_m2 = 1.9;  // what lies flat catches more than what stands
inline constexpr double sloped_per_m2 = 1.3;
inline constexpr double upright_per_m2 = 0.7;
inline constexpr double nib_share = 0.86;  // of all that falls; the rest are other defects
inline constexpr double before_filter_change = 1.6;
inline constexpr double after_filter_change = 0.7;
inline constexpr double hose_more_per_m2 = 2.6;  // nearly all of it in the reach-over strips
inline constexpr double hose_in_strip = 0.85;
inline constexpr int most_single_marks = 9;  // beyond that a person says "dirt all over"

struct Booth {
  double days_ago{};  // of the day of painting
  int lane{};
  bool causes = true;  // false: neither filter nor hose matters
  bool hose_is_bad() const {
    return causes && lane == hose_lane && days_ago <= hose_bad_from_days_ago &&
           days_ago > hose_bad_until_days_ago;
  }
  bool under_ceiling_filters() const { return causes && lane != hose_lane; }
  bool filters_are_old() const {
    return under_ceiling_filters() && days_ago > filter_changed_days_ago;
  }
};

struct Dirt {
  std::vector<acts::PlaceMark> marks;  // `job` is left empty
  job::DirtClass all_over{};           // over most_single_marks
};

Dirt dirt_on(const job::PatternPanel& panel, const Booth& booth, SeededRandom& random);

double per_m2(trade::Attitude attitude);

// A place strictly inside the panel, to a tenth of a millimetre.
trade::Point_mm place_on(const trade::PanelShape& shape, SeededRandom& random);

}  // namespace jambline::demo
