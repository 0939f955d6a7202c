#include "app/demo/dirt.h"

#include <cmath>

#include "app/demo/invented.h"

namespace jambline::demo {

namespace {
constexpr double edge_mm = 8;  // nobody marks a nib on the very edge
constexpr int most_tries = 400;

double dirt_tenth(double mm) {
  return std::round(mm * 10) / 10;
}

trade::Point_mm point_in(const trade::Polygon& area, const trade::PanelShape& shape,
                         SeededRandom& random) {
  const auto box = trade::bounds(area.corners);
  trade::Point_mm point;
  for (int i = 0; i < most_tries; ++i) {
    point = {dirt_tenth(box.low.x_mm + random.unit() * box.width_mm()),
             dirt_tenth(box.low.y_mm + random.unit() * box.height_mm())};
    if (trade::contains(area, point) && trade::contains(shape.outline, point) &&
        trade::distance_to_edge_mm(point, shape.outline) >= edge_mm)
      return point;
  }
  return point;
}

int poisson(double mean, SeededRandom& random) {
  const double limit = std::exp(-mean);
  int count = 0;
  for (double product = random.unit(); product > limit; product *= random.unit()) ++count;
  return count;
}

job::DefectKind defect(SeededRandom& random) {
  const double part = random.unit();
  if (part < nib_share) return job::DefectKind::Nib;
  if (part < 0.91) return job::DefectKind::RunOrSag;
  if (part < 0.94) return job::DefectKind::Fisheye;
  if (part < 0.96) return job::DefectKind::SolventPop;
  if (part < 0.98) return job::DefectKind::OversprayOnFinish;
  return job::DefectKind::TapeLine;
}

int size(SeededRandom& random) {
  const double part = random.unit();
  return part < 0.55 ? 1 : part < 0.85 ? 2 : part < 0.96 ? 3 : 4;
}

job::Layer layer(SeededRandom& random) {
  const double part = random.unit();
  if (part < 0.7) return job::Layer::NotSaid;
  return part < 0.82   ? job::Layer::OnTop
         : part < 0.95 ? job::Layer::InClear
                       : job::Layer::UnderClear;
}
}  // namespace

double per_m2(trade::Attitude attitude) {
  switch (attitude) {
    case trade::Attitude::Flat:
      return flat_per_m2;
    case trade::Attitude::Sloped:
      return sloped_per_m2;
    case trade::Attitude::Upright:
      return upright_per_m2;
  }
  return upright_per_m2;
}

trade::Point_mm place_on(const trade::PanelShape& shape, SeededRandom& random) {
  return point_in(shape.outline, shape, random);
}

Dirt dirt_on(const job::PatternPanel& panel, const Booth& booth, SeededRandom& random) {
  const auto& shape = panel.shape;
  const double area_m2 = trade::area_mm2(shape.outline) / 1e6;
  const double filters = !booth.under_ceiling_filters() ? 1
                         : booth.filters_are_old()      ? before_filter_change
                                                        : after_filter_change;
  const int usual = poisson(per_m2(shape.attitude) * area_m2 * filters, random);
  const int from_hose = booth.hose_is_bad() && !shape.reach_over.empty()
                            ? poisson(hose_more_per_m2 * area_m2, random)
                            : 0;
  Dirt out;
  const int all = usual + from_hose;
  if (all > most_single_marks) {
    out.all_over = all > 20 ? job::DirtClass::From20To50 : job::DirtClass::From10To20;
    return out;
  }
  for (int i = 0; i < all; ++i) {
    const bool in_strip = i >= usual && chance(random, hose_in_strip);
    const auto& area =
        in_strip ? shape.reach_over[random.below(shape.reach_over.size())] : shape.outline;
    const auto point = point_in(area, shape, random);
    if (!trade::contains(shape.outline, point)) continue;
    out.marks.push_back(
        {{}, panel.panel, point.x_mm, point.y_mm, defect(random), size(random), layer(random)});
  }
  return out;
}

}  // namespace jambline::demo
