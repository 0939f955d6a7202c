// trade/dirt_pattern.h: is the dirt of a car there by chance, or does it point to something?
//
// Signs:   per panel: spacing and tightest cluster (Monte Carlo over the panel's own outline, so
//          that edges need no correction; circles centred on marks, radii 50 to 400 mm by 50,
//          Kulldorff's likelihood ratio 1997), share within 50 mm of masked edges, of seams and
//          gaps, and in the reach-over strips (exact binomial against their share of area). Per
//          car: flat against upright, against this shop's own history and never against even
//          chance (the history is a count too: Fisher's exact test); plastic against metal, first
//          half of the panels sprayed against the second: flat among flat, upright among upright,
//          then added (exact sum of binomials).
// Chances: Holm over all signs of the car. A panel with fewer than 6 marks, and a car with fewer
//          than 8, is "too few to say". Panels with a dirt class instead of marks stay out of the
//          scan.
// Words:   a sign points to something and is no proof; what it points to is worded by the screens.
// Seed:    passed in, with each panel's name mixed in: the same seed gives the same chances
//          everywhere, in whatever order panels and marks stand.
// Errors:  OutOfRange, Malformed (an outline that crosses itself, a mark off its panel), TooLarge
//          (over 500 marks a panel), Missing. Threads: pure.
#pragma once

#include <array>
#include <string_view>

#include "base/error.h"
#include "trade/basis.h"
#include "trade/geometry.h"
#include "trade/outline.h"
#include "trade/probability.h"

namespace jambline::trade {

enum class Lie : std::uint8_t { Flat, Sloped, Upright };
enum class DirtSign : std::uint8_t {
  Spacing,
  Cluster,
  MaskedEdge,
  Seam,
  ReachStrip,
  FlatOverUpright,
  PlasticOverMetal,
  FirstPanels,
  LastPanels,
};
enum class DirtWord : std::uint8_t { TooFew, LooksLikeChance, Points };

struct DirtPanel {
  std::string panel;
  std::vector<Point_mm> outline;
  Lie lie{};
  bool plastic = false;
  int sprayed = 0;  // 1, 2, 3 ... in the order of spraying; 0: not known
  std::vector<PanelLine> masked_edges;
  std::vector<PanelLine> seams;
  std::vector<PanelLine> reach_strips;  // outlines; a hood has one a side
  std::vector<Point_mm> marks;
  bool all_over = false;  // a dirt class was given instead of marks

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "panel"}, self.panel);
    visit(Field{.name = "outline", .doc = "corners, mm on the panel laid flat"}, self.outline);
    visit(Field{.name = "lie"}, self.lie);
    visit(Field{.name = "plastic"}, self.plastic);
    visit(Field{.name = "sprayed", .doc = "1, 2, 3 in order; 0 not known", .min = 0, .max = 100},
          self.sprayed);
    visit(Field{.name = "masked_edges"}, self.masked_edges);
    visit(Field{.name = "seams", .doc = "seams, gaps and trim"}, self.seams);
    visit(Field{.name = "reach_strips", .doc = "outlines of what is leaned over"},
          self.reach_strips);
    visit(Field{.name = "marks"}, self.marks);
    visit(Field{.name = "all_over"}, self.all_over);
  }
};

struct FlatHistory {  // of this shop
  std::int64_t flat_marks{};
  double flat_m2{};
  std::int64_t upright_marks{};
  double upright_m2{};

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "flat_marks", .min = 0, .max = 1e9}, self.flat_marks);
    visit(Field{.name = "flat_m2", .unit = "m2", .min = 0, .max = 1e9}, self.flat_m2);
    visit(Field{.name = "upright_marks", .min = 0, .max = 1e9}, self.upright_marks);
    visit(Field{.name = "upright_m2", .unit = "m2", .min = 0, .max = 1e9}, self.upright_m2);
  }
};

struct DirtPattern {
  std::vector<DirtPanel> panels;
  std::optional<FlatHistory> history;
  std::uint64_t seed = 1;
  int patterns = 999;
  double edge_band_mm = 50;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "panels"}, self.panels);
    visit(Field{.name = "history", .doc = "of this shop; none: flat is not compared"},
          self.history);
    visit(Field{.name = "seed"}, self.seed);
    visit(Field{.name = "patterns", .doc = "drawn at random", .min = 99, .max = 99999},
          self.patterns);
    visit(Field{.name = "edge_band_mm", .unit = "mm", .min = 5, .max = 300}, self.edge_band_mm);
  }
};

struct DirtCluster {
  Point_mm center;
  double radius_mm{};
  int marks{};

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "center"}, self.center);
    visit(Field{.name = "radius_mm", .unit = "mm"}, self.radius_mm);
    visit(Field{.name = "marks"}, self.marks);
  }
};

struct DirtEvidence {
  DirtSign sign{};
  std::string panel;     // empty: of the whole car
  double chance{};       // p, one sign alone
  double holm_chance{};  // over all signs of the car
  double seen{};         // marks (spacing: mean distance, mm)
  double expected{};
  std::optional<DirtCluster> cluster;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "sign"}, self.sign);
    visit(Field{.name = "panel"}, self.panel);
    visit(Field{.name = "chance"}, self.chance);
    visit(Field{.name = "holm_chance"}, self.holm_chance);
    visit(Field{.name = "seen"}, self.seen);
    visit(Field{.name = "expected"}, self.expected);
    visit(Field{.name = "cluster"}, self.cluster);
  }
};

struct DirtPanelGroups {
  std::string panel;
  int marks{};
  bool too_few = false;
  double clark_evans{};     // without correction; 0 under two marks
  std::vector<int> groups;  // a mark, -1 none; DBSCAN with 120 mm and 3 marks

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "panel"}, self.panel);
    visit(Field{.name = "marks"}, self.marks);
    visit(Field{.name = "too_few"}, self.too_few);
    visit(Field{.name = "clark_evans"}, self.clark_evans);
    visit(Field{.name = "groups"}, self.groups);
  }
};

struct DirtPatternResult {
  DirtWord word{};
  std::vector<DirtEvidence> evidence;  // all signs, the least likely first
  std::vector<DirtPanelGroups> panels;
  bool flat_compared = false;  // false: no history yet
  Basis basis;

  template <class Self, class Visit>
  static void describe(Self& self, Visit& visit) {
    visit(Field{.name = "word"}, self.word);
    visit(Field{.name = "evidence"}, self.evidence);
    visit(Field{.name = "panels"}, self.panels);
    visit(Field{.name = "flat_compared"}, self.flat_compared);
    visit(Field{.name = "basis"}, self.basis);
  }
};

inline constexpr double dirt_level = 0.05;  // a Holm chance under it points
inline constexpr int dirt_least_on_panel = 6;
inline constexpr int dirt_least_on_car = 8;

Result<DirtPatternResult> dirt_pattern(const DirtPattern& pattern);

}  // namespace jambline::trade

template <>
inline constexpr auto jambline::enum_words<jambline::trade::Lie> =
    std::to_array<std::string_view>({"flat", "sloped", "upright"});
template <>
inline constexpr auto jambline::enum_words<jambline::trade::DirtSign> =
    std::to_array<std::string_view>({"spacing", "cluster", "masked edge", "seam", "reach strip",
                                     "flat over upright", "plastic over metal", "first panels",
                                     "last panels"});
template <>
inline constexpr auto jambline::enum_words<jambline::trade::DirtWord> =
    std::to_array<std::string_view>({"too few to say", "looks like chance", "points to something"});
